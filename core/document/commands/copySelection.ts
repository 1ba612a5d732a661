/** Copies with ids and names of their own, within a site or from another one. */
import type { Finish } from '../../../shared/document/materials'
import type { JointWish } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { type Command, type Edit, editSite, nothingChosen } from './editSite'
import { freshName } from './freshName'
import { moveEntities } from './moveEntities'
import { shiftBy } from './rigidMotion'
import { chosenEntities, type Entity, siteEntities } from './siteEntities'

/** Free text is never an id. */
const textKeys = new Set(['color', 'kind', 'text'])

const namesOn = (site: Site): Set<string> =>
  new Set(siteEntities(site).flatMap(({ row }) => ('name' in row && row.name !== undefined ? [row.name] : [])))

/** A deep copy; every id and every name in it is new, and every mention of one of the ids goes along. */
const cloneRow = <T>(row: T, edit: Edit, renamed: Map<Id, Id>, names: Set<string>): T => {
  const learn = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    for (const [key, entry] of Object.entries(value)) {
      if (key === 'id' && typeof entry === 'string') renamed.set(entry, edit.mint(entry.replace(/\d+$/, '')))
      else learn(entry)
    }
  }
  const copy = (value: unknown, key: string): unknown => {
    if (typeof value === 'string') {
      if (key === 'name') {
        const name = freshName(value, names)
        names.add(name)
        return name
      }
      if (textKeys.has(key)) return value
      return value.endsWith('~')
        ? `${renamed.get(value.slice(0, -1)) ?? value.slice(0, -1)}~`
        : (renamed.get(value) ?? value)
    }
    if (Array.isArray(value)) return value.map(entry => copy(entry, key))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(Object.entries(value).map(([name, entry]) => [name, copy(entry, name)]))
  }
  learn(row)
  return copy(row, '') as T
}

/** The finish of another site here: the one that looks and is called the same, else a new one. */
const bringFinish = (draft: Site, source: Site, edit: Edit, id: Id): Id => {
  const finish = source.finishes.find(each => each.id === id)
  if (finish === undefined) return id
  const alike = (other: Finish) =>
    other.name === finish.name &&
    other.pattern === finish.pattern &&
    other.color === finish.color &&
    other.patternDeg === finish.patternDeg &&
    String(other.patternAt) === String(finish.patternAt)
  const here = draft.finishes.find(alike)
  if (here !== undefined) return here.id
  const made = { ...finish, id: edit.mint('f') }
  draft.finishes.push(made)
  return made.id
}

/** Joints are not copied: a wish that ended on one ends in the open. */
const looseFromJoints = (wish: JointWish): JointWish => {
  if (wish.kind !== 'required') return wish
  const [a, b] = wish.line.map(end => (end.anchor.on === 'joint' ? { ...end, anchor: { on: 'free' as const } } : end))
  return { ...wish, line: [a!, b!] }
}

/** False of what follows an edge, and so is nothing without it: it can't be copied. */
export const standsAlone = (entity: Entity): entity is Exclude<Entity, { kind: 'border' | 'steps' }> =>
  entity.kind !== 'border' && entity.kind !== 'steps'

interface Copying {
  readonly source: Site
  readonly draft: Site
  readonly edit: Edit
  readonly renamed: Map<Id, Id>
  /** Names that are taken. */
  readonly names: Set<string>
  /** The slab that parts drawn on another slab go to. */
  readonly slabFor: (ownerId: Id) => Id | undefined
}

/** Adds a copy; false where there is no slab to put it on. */
const copyEntity = (entity: Entity, { source, draft, edit, renamed, names, slabFor }: Copying): boolean => {
  if (!standsAlone(entity)) return false
  const copyOf = <T>(row: T): T => cloneRow(row, edit, renamed, names)
  const target = (ownerId: Id) => draft.slabs.find(({ id }) => id === slabFor(ownerId))
  const finished = <T extends { finishId: Id }>(row: T): T => ({
    ...row,
    finishId: bringFinish(draft, source, edit, row.finishId),
  })
  switch (entity.kind) {
    case 'slab': {
      const slab = finished(copyOf(entity.row))
      slab.borders = slab.borders.map(finished)
      slab.bands = slab.bands.map(finished)
      slab.insets = slab.insets.map(finished)
      draft.slabs.push(slab)
      for (const point of source.points) if (point.slabId === entity.row.id) draft.points.push(copyOf(point))
      for (const wish of source.wishes)
        if (wish.slabId === entity.row.id) draft.wishes.push(copyOf(looseFromJoints(wish)))
      return true
    }
    case 'opening':
    case 'band':
    case 'inset':
    case 'obstacle': {
      const slab = target(entity.owner.id)
      if (slab === undefined) return false
      if (entity.kind === 'opening') slab.openings.push(copyOf(entity.row))
      else if (entity.kind === 'band') slab.bands.push(finished(copyOf(entity.row)))
      else if (entity.kind === 'inset') slab.insets.push(finished(copyOf(entity.row)))
      else slab.obstacles.push(copyOf(entity.row))
      return true
    }
    case 'point':
    case 'wish': {
      const slab = target(entity.row.slabId)
      if (slab === undefined) return false
      if (entity.kind === 'point') draft.points.push({ ...copyOf(entity.row), slabId: slab.id })
      else if (source !== draft && slab.id !== entity.row.slabId && entity.row.kind === 'required')
        draft.wishes.push({ ...freed(copyOf(entity.row)), slabId: slab.id })
      else draft.wishes.push({ ...copyOf(looseFromJoints(entity.row)), slabId: slab.id })
      return true
    }
    case 'caster':
      draft.casters.push(copyOf(entity.row))
      return true
    case 'furnishing':
      draft.furnishings = [...(draft.furnishings ?? []), copyOf(entity.row)]
      return true
    case 'note':
      draft.notes = [...(draft.notes ?? []), copyOf(entity.row)]
      return true
    case 'tape': {
      // The copy is of the line; what it hung on stays with the first one.
      const [a, b] = entity.row.ends.map(({ last }) => ({ on: { on: 'free' as const }, last }))
      draft.tapes = [...(draft.tapes ?? []), { ...copyOf(entity.row), ends: [a!, b!] }]
      return true
    }
    default: {
      draft.access ??= { ...source.access!, truckSpots: [], pumpSpots: [], washouts: [], noGo: [], ways: [] }
      if (entity.kind === 'spot') draft.access[entity.spots].push(copyOf(entity.row))
      else if (entity.kind === 'noGo') draft.access.noGo.push(copyOf(entity.row))
      else draft.access.ways.push(copyOf(entity.row))
      return true
    }
  }
}

/** On another slab there is no edge to hold on to. */
const freed = (wish: Extract<JointWish, { kind: 'required' }>): Extract<JointWish, { kind: 'required' }> => {
  const [a, b] = wish.line
  return {
    ...wish,
    line: [
      { ...a, anchor: { on: 'free' } },
      { ...b, anchor: { on: 'free' } },
    ],
  }
}

const copyInto = (
  source: Site,
  draft: Site,
  edit: Edit,
  ids: readonly Id[],
  by: Pt,
  slabFor: (ownerId: Id) => Id | undefined,
): Finding | undefined => {
  const chosen = chosenEntities(source, ids)
  const slabs = new Set(chosen.flatMap(({ kind, row }) => (kind === 'slab' ? [row.id] : [])))
  const ownerOf = (entity: Entity): Id | undefined => {
    if ('owner' in entity) return entity.owner.id
    return entity.kind === 'point' || entity.kind === 'wish' ? entity.row.slabId : undefined
  }
  const renamed = new Map<Id, Id>()
  const names = namesOn(draft)
  for (const entity of chosen) {
    // What is drawn on a chosen slab is copied with it.
    if (slabs.has(ownerOf(entity) ?? '')) continue
    if (copyEntity(entity, { source, draft, edit, renamed, names, slabFor })) {
      const copied = renamed.get(entity.row.id)
      if (copied !== undefined) edit.made.push(copied)
    }
  }
  if (edit.made.length === 0) return nothingChosen('copied')
  return moveEntities(draft, edit, edit.made, shiftBy(by), 'copied')
}

/** Copies of the chosen entities, `by` from where they stand. Accepted pours stay with their own slab. */
export const copySelection =
  (ids: readonly Id[], by: Pt): Command =>
  site =>
    editSite(site, (draft, edit) => copyInto(site, draft, edit, ids, by, id => id))

/** Copies from another site, with the finishes they need; parts without their slab go onto `ontoSlabId`. */
export const pasteFrom =
  (other: Site, ids: readonly Id[], by: Pt, ontoSlabId?: Id): Command =>
  site =>
    editSite(site, (draft, edit) => copyInto(other, draft, edit, ids, by, () => ontoSlabId ?? draft.slabs[0]?.id))
