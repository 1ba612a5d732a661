import type { Site } from '../../shared/document/site'
import { fieldWord, rowWord } from '../problems/fieldWords'
import { printField } from '../problems/printField'
import { capitalize } from '../units/capitalize'
import type { Measures } from '../units/measures'
import type { Change } from './diffSites'
import { fromPointer, valueAt } from './jsonPointer'
import { openingNames } from './openingNames'

/** Counters and parts that only follow from other changes: nothing a reader would miss. */
const bookkeeping = new Set(['nextId'])

const casterWords: Readonly<Record<string, string>> = {
  building: 'building',
  wall: 'wall',
  tree: 'tree',
  cover: 'cover',
}

type Group = Readonly<Record<string, unknown>>

const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value)

/** The name behind an id, where the id is all that a field holds. */
const nameOf = (site: Site, id: string): string => {
  const named = [...site.finishes, ...site.slabs, ...(site.materials ?? [])].find(row => row.id === id)
  return named?.name ?? id
}

/** The name a person gave to a row, or what tells it from its neighbors. */
const nameRow = (site: Site, steps: readonly string[], list: string, index: number): string => {
  const row = valueAt(site, [...steps, list, index])
  const word = rowWord(list) ?? list
  if (!isGroup(row)) return `${word} ${index + 1}`
  if (list === 'casters') return `${casterWords[String(row.kind)] ?? word} ${row.name}`
  if (typeof row.name === 'string' && row.name !== '')
    return list === 'slabs' || row.name.toLowerCase().includes(word) ? row.name : `${word} ${row.name}`
  if (list === 'accepted' || list === 'stock') return `${word} of ${nameOf(site, String(row.slabId ?? row.materialId))}`
  if (typeof row.number === 'string') return `${word} ${row.number}`
  if (list === 'borders') {
    const slab = valueAt(site, steps)
    const openings = isGroup(slab) ? (slab.openings as Site['slabs'][number]['openings']) : []
    const place = openings.find(candidate => candidate.path.id === row.pathId)
    return `border ${place === undefined ? 'on the outline' : `around ${openingNames(openings).get(place.id)?.the}`}`
  }
  return `${word} ${index + 1}`
}

/** `Patio, border on the outline`, and the last key. */
const tellPlace = (site: Site, pointer: string): { readonly owner: string; readonly key: string } => {
  const steps = fromPointer(pointer)
  const told: string[] = []
  let key = ''
  for (let i = 0; i < steps.length; i++) {
    const step = steps[i] ?? ''
    const next = steps[i + 1]
    key = step
    if (next !== undefined && /^\d+$/.test(next) && rowWord(step) !== undefined) {
      told.push(nameRow(site, steps.slice(0, i), step, Number(next)))
      i++
      key = ''
    } else if (i < steps.length - 1) told.push(fieldWord(step) ?? step)
  }
  return { owner: told.join(', '), key }
}

const printValue = (site: Site, value: unknown, key: string, isSetting: boolean, print: Measures): string => {
  if (value === undefined) return 'none'
  if (typeof value === 'number') return printField(value, key, isSetting, print)
  if (typeof value === 'string') return key.endsWith('Id') ? nameOf(site, value) : value === '' ? '(empty)' : value
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) {
    if (value.length === 2 && value.every(entry => typeof entry === 'number'))
      return `(${print.length(Number(value[0]))}, ${print.length(Number(value[1]))})`
    if (value.length <= 6 && value.every(entry => typeof entry === 'string' || typeof entry === 'number'))
      return value.length === 0 ? 'none' : value.join(', ')
    return `${value.length} ${value.length === 1 ? 'entry' : 'entries'}`
  }
  if (isGroup(value) && typeof value.form === 'string') return value.form
  return isGroup(value) && typeof value.kind === 'string' ? value.kind : 'other'
}

const describeChange = (change: Change, before: Site, after: Site, print: Measures): string => {
  const site = change.kind === 'removed' ? before : after
  const { owner, key } = tellPlace(site, change.field)
  const isSetting = change.field.startsWith('/settings/')
  const word = (isSetting ? undefined : fieldWord(key)) ?? `“${key}”`
  const subject = owner === '' ? word : key === '' ? owner : `${owner}: ${word}`
  const show = (of: Site, value: unknown) => printValue(of, value, key, isSetting, print)
  switch (change.kind) {
    case 'reordered':
      return `${capitalize(subject)} in another order`
    case 'changed':
      return `${capitalize(subject)} ${show(before, change.before)} → ${show(after, change.after)}`
    case 'added':
    case 'removed': {
      const value = change.kind === 'added' ? change.after : change.before
      const told = key === '' || isGroup(value) ? '' : ` ${show(site, value)}`
      return `${capitalize(subject)}${told} ${change.kind}`
    }
  }
}

/** Changes in trade words, one line each, in the unit system that `print` prints: `Patio, border 12 in: width 12″ → 18″`. */
export const describeChanges = (
  changes: readonly Change[],
  before: Site,
  after: Site,
  print: Measures,
): readonly string[] =>
  changes
    .filter(change => !bookkeeping.has(change.field.slice(1)))
    .map(change => describeChange(change, before, after, print))
