import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { invariants, movedInvariants } from '../invariants'

/** What an edit has broken, in work a drag can afford at every step. `before` keeps the invariants. */
export const checkEdit = (before: Site, after: Site, onlyMoved: boolean): readonly Finding[] =>
  onlyMoved ? movedInvariants(after, before) : invariants(after, before)
