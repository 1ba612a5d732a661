/** One edit of the document: what every command goes through. */
import { createDraft, finishDraft } from 'immer'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { checkEdit } from './checkEdit'
import { settlePours } from './settlePours'
import { settleTapes } from './settleTapes'
import { turnRings } from './turnRings'

/** A `Result<Site>` that also tells what the edit did beside its purpose, and which entities it made. */
export type EditResult =
  | {
      readonly ok: true
      readonly value: Site
      /** Merges and losses: nothing goes in silence. */
      readonly findings: readonly Finding[]
      /** Ids of what was drawn, in order: what to choose next. */
      readonly made: readonly Id[]
    }
  | { readonly ok: false; readonly error: readonly Finding[] }

/** Pure: never changes the site it is given, and shares every branch it leaves alone. */
export type Command = (site: Site) => EditResult

export class Edit {
  readonly findings: Finding[] = []
  readonly made: Id[] = []
  /** For each edge or corner that was cut, merged, turned around or removed: the edges that took its place. */
  readonly successors = new Map<Id, readonly Id[]>()
  /** How whole slabs were carried along: joints and pours go with them. */
  readonly carried = new Map<Id, (at: Pt) => Pt>()

  /** Set by commands that change nothing but places and lengths. */
  onlyMoved = false

  constructor(private readonly site: Site) {}

  /** A new id; `kind` is the letter of its kind. */
  mint(kind: string): Id {
    const id = `${kind}${this.site.nextId}`
    this.site.nextId += 1
    return id
  }

  /** A new id of an entity that the user sees. */
  make(kind: string): Id {
    const id = this.mint(kind)
    this.made.push(id)
    return id
  }

  tell(code: Finding['code'], severity: Finding['severity'], entityId: Id, values: Finding['values']): void {
    this.findings.push({ code, severity, values, at: { entityId } })
  }
}

export const missing = (what: string, id: Id): Finding => ({
  code: 'entityMissing',
  severity: 'stop',
  values: { what, id },
  at: { entityId: id },
})

export const nothingChosen = (done: string): Finding => ({
  code: 'nothingChosen',
  severity: 'stop',
  values: { done },
})

const settle = (site: Site, drawn: Site, edit: Edit): EditResult => {
  if (drawn === site) return { ok: true, value: site, findings: [], made: [] }
  const turned = turnRings(site, drawn, edit)
  const value = settleTapes(settlePours(site, turned, edit), edit)
  const broken = checkEdit(site, value, edit.onlyMoved)
  if (broken.length > 0) return { ok: false, error: broken }
  return { ok: true, value, findings: edit.findings, made: edit.made }
}

/**
 * Runs a recipe on a draft. A finding it returns refuses the edit. Afterwards rings are made to run the right way
 * around, joints and seeds follow their edges, and an edit that would break an invariant is refused with what it broke.
 */
export const editSite = (site: Site, recipe: (draft: Site, edit: Edit) => Finding | undefined): EditResult => {
  const draft = createDraft(site) as Site
  const edit = new Edit(draft)
  const refusal = recipe(draft, edit)
  if (refusal !== undefined) return { ok: false, error: [refusal] }
  return settle(site, finishDraft(draft) as Site, edit)
}

/** The same where the edit, which moves things only, comes as a frozen copy that shares what it leaves alone. */
export const takeMoved = (site: Site, moved: Site): EditResult => {
  const edit = new Edit(moved)
  edit.onlyMoved = true
  return settle(site, moved, edit)
}
