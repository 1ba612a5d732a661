import type { Site } from '../../shared/document/site'
import { type PointerStep, toPointer } from './jsonPointer'

/** One difference between two saves. `field` points into the later save; into the earlier one for what was removed. */
export interface Change {
  readonly kind: 'added' | 'removed' | 'changed' | 'reordered'
  readonly field: string
  readonly before?: unknown
  readonly after?: unknown
}

type Group = Readonly<Record<string, unknown>>

const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value)

/** What stays with an entry of a list while others come and go. */
const keyOf = (row: Group): string | undefined => {
  const { id, slabId, part, materialId } = row
  if (typeof id === 'string') return id
  if (typeof slabId === 'string' && typeof part === 'string') return `${slabId} ${part}`
  return typeof materialId === 'string' ? materialId : undefined
}

/** Lists whose entries tell themselves apart are matched entry by entry; all others are one value. */
const areRows = (value: unknown): value is readonly Group[] =>
  Array.isArray(value) && value.every(entry => isGroup(entry) && keyOf(entry) !== undefined)

const isSame = (a: unknown, b: unknown): boolean => {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((entry, i) => isSame(entry, b[i]))
  if (!isGroup(a) || !isGroup(b)) return a === b
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(key => isSame(a[key], b[key]))
}

const diffRows = (
  before: readonly Group[],
  after: readonly Group[],
  steps: readonly PointerStep[],
): readonly Change[] => {
  const earlier = new Map(before.map((row, i) => [keyOf(row), { row, i }]))
  const later = new Map(after.map((row, i) => [keyOf(row), { row, i }]))
  const removed = before.flatMap((row, i): readonly Change[] =>
    later.has(keyOf(row)) ? [] : [{ kind: 'removed', field: toPointer([...steps, i]), before: row }],
  )
  const kept = before.map(keyOf).filter(key => later.has(key))
  const order = after.map(keyOf).filter(key => earlier.has(key))
  const reordered: readonly Change[] = isSame(kept, order)
    ? []
    : [{ kind: 'reordered', field: toPointer(steps), before: kept, after: order }]
  const rest = after.flatMap((row, i): readonly Change[] => {
    const was = earlier.get(keyOf(row))
    return was === undefined
      ? [{ kind: 'added', field: toPointer([...steps, i]), after: row }]
      : diffValues(was.row, row, [...steps, i])
  })
  return [...removed, ...reordered, ...rest]
}

const diffValues = (before: unknown, after: unknown, steps: readonly PointerStep[]): readonly Change[] => {
  if (isSame(before, after)) return []
  if (before === undefined) return [{ kind: 'added', field: toPointer(steps), after }]
  if (after === undefined) return [{ kind: 'removed', field: toPointer(steps), before }]
  if (areRows(before) && areRows(after)) return diffRows(before, after, steps)
  // Groups of different kinds, such as a flat and a gable roof, have little in common: they are told as one value.
  if (isGroup(before) && isGroup(after) && before.form === after.form && ('id' in after || before.kind === after.kind))
    return [...new Set([...Object.keys(before), ...Object.keys(after)])]
      .sort()
      .flatMap(key => diffValues(before[key], after[key], [...steps, key]))
  return [{ kind: 'changed', field: toPointer(steps), before, after }]
}

/** What differs between two saves of a site, matched by id; empty for equal ones. */
export const diffSites = (before: Site, after: Site): readonly Change[] => diffValues(before, after, [])
