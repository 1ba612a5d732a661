import { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { findExcess } from '../findExcess'
import { findingsFromIssues } from '../findingsFromIssues'
import { invariants } from '../invariants'

const checkBranch = (key: keyof Site, after: Site): readonly Finding[] => {
  const parsed = Site.shape[key].safeParse(after[key])
  if (parsed.success) return []
  return findingsFromIssues(
    parsed.error.issues.map(issue => ({ ...issue, path: [key, ...issue.path] })),
    after,
  )
}

/**
 * What an edit has broken. One that only moved things can break no id and no date: then the branches that changed and
 * the limits are enough, which a drag can afford at every step.
 */
export const checkEdit = (before: Site, after: Site, onlyMoved: boolean): readonly Finding[] => {
  if (!onlyMoved) return invariants(after)
  const broken = (Object.keys(after) as (keyof Site)[])
    .filter(key => after[key] !== before[key])
    .flatMap(key => checkBranch(key, after))
  if (broken.length > 0) return broken
  const excess = findExcess(after)
  return excess === undefined ? [] : [excess]
}
