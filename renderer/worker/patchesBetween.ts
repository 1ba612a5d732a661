/** What turns one immutable document into another, as patches that leave every untouched branch its reference. */
import type { Patch } from 'immer'

type Path = readonly (string | number)[]

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const idOf = (value: unknown): unknown => (isPlain(value) ? value.id : undefined)

/** The same entity before and after: worth patching inside rather than replacing whole. */
const isSameEntity = (a: unknown, b: unknown): boolean =>
  (isPlain(a) && isPlain(b) && a.id === b.id) || (Array.isArray(a) && Array.isArray(b))

/**
 * Patches from `from` to `to`, two JSON values that share what did not change. Lists are matched from both ends, so
 * that an entry put in or taken out moves its neighbors without touching them.
 */
export function patchesBetween(from: unknown, to: unknown): Patch[] {
  const patches: Patch[] = []
  compare([], from, to, patches)
  return patches
}

function compare(path: Path, from: unknown, to: unknown, patches: Patch[]): void {
  if (Object.is(from, to)) return
  if (Array.isArray(from) && Array.isArray(to)) compareLists(path, from, to, patches)
  else if (isPlain(from) && isPlain(to) && idOf(from) === idOf(to)) compareRecords(path, from, to, patches)
  else patches.push({ op: 'replace', path: [...path], value: to })
}

function compareRecords(
  path: Path,
  from: Readonly<Record<string, unknown>>,
  to: Readonly<Record<string, unknown>>,
  patches: Patch[],
): void {
  for (const key of Object.keys(from)) {
    if (!(key in to)) patches.push({ op: 'remove', path: [...path, key] })
  }
  for (const key of Object.keys(to)) {
    if (!(key in from)) patches.push({ op: 'add', path: [...path, key], value: to[key] })
    else if (isSameEntity(from[key], to[key])) compare([...path, key], from[key], to[key], patches)
    else if (!Object.is(from[key], to[key])) patches.push({ op: 'replace', path: [...path, key], value: to[key] })
  }
}

function compareLists(path: Path, from: readonly unknown[], to: readonly unknown[], patches: Patch[]): void {
  const shorter = Math.min(from.length, to.length)
  let head = 0
  while (head < shorter && Object.is(from[head], to[head])) head++
  let tail = 0
  while (tail < shorter - head && Object.is(from[from.length - 1 - tail], to[to.length - 1 - tail])) tail++
  const paired = shorter - head - tail
  for (let i = head; i < head + paired; i++) {
    if (isSameEntity(from[i], to[i])) compare([...path, i], from[i], to[i], patches)
    else if (!Object.is(from[i], to[i])) patches.push({ op: 'replace', path: [...path, i], value: to[i] })
  }
  const at = head + paired
  for (let i = at; i < to.length - tail; i++) patches.push({ op: 'add', path: [...path, i], value: to[i] })
  for (let i = at; i < from.length - tail; i++) patches.push({ op: 'remove', path: [...path, at] })
}
