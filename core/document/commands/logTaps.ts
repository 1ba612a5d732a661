/** The log of a pour: what was tapped at the slab, and what is corrected afterwards. */
import type { LogEntry, LogLoad, LogTap, PourBegun } from '../../../shared/document/day'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, type Edit, editSite, missing } from './editSite'

/** What a pour begins with: the date, the plan in words, and what that plan stood on. */
export interface PourStart {
  readonly date: string
  readonly planned: string
  readonly begun: PourBegun
}

/** The entry that is written on: the last one of the pour. */
export const openEntry = (site: Site, pourId: Id): LogEntry | undefined =>
  site.log?.findLast(entry => entry.pourId === pourId)

const newEntry = (draft: Site, edit: Edit, pourId: Id, start: PourStart): LogEntry => {
  const entry: LogEntry = {
    ...{ id: edit.make('l'), pourId, date: start.date, planned: start.planned },
    begun: structuredCopy(start.begun),
    ...{ taps: [], loads: [], strips: [], used: [], notes: '' },
  }
  draft.log = [...(draft.log ?? []), entry]
  return draft.log.at(-1)!
}

/** Drafts must own what is put into them. */
const structuredCopy = (begun: PourBegun): PourBegun => JSON.parse(JSON.stringify(begun)) as PourBegun

/**
 * Writes what happened into the log of an accepted pour; the first tap opens its entry with what the plan stood on. Taps
 * are kept in the order in which they happened.
 */
export const logTap =
  (pourId: Id, tap: Omit<LogTap, 'id'>, start: PourStart): Command =>
  site =>
    editSite(site, (draft, edit) => {
      if (!draft.accepted.some(part => part.pours.some(({ id }) => id === pourId))) return missing('pour', pourId)
      const entry = openEntry(draft, pourId) ?? newEntry(draft, edit, pourId, start)
      const taps = entry.taps ?? []
      const at = taps.findIndex(other => other.atUtc > tap.atUtc)
      taps.splice(at < 0 ? taps.length : at, 0, { ...tap, id: edit.make('t') })
      entry.taps = taps
      return undefined
    })

export type LoadReading = Patch<LogLoad, 'ticket' | 'tempC' | 'slumpMm' | 'airC' | 'waterL'>

/** Rows stand in the order of the loads; one that says nothing goes. */
function writeLoad(entry: LogEntry, no: number, reading: LoadReading): void {
  const row: LogLoad = entry.loads.find(load => load.no === no) ?? { no }
  applyPatch<LogLoad>(row, reading)
  const others = entry.loads.filter(load => load.no !== no)
  entry.loads = (Object.keys(row).length > 1 ? [...others, row] : others).sort((a, b) => a.no - b.no)
}

/** What was measured of a load of a pour under way; opens the entry of its log where there is none. */
export const logReading =
  (pourId: Id, no: number, reading: LoadReading, start: PourStart): Command =>
  site =>
    editSite(site, (draft, edit) => {
      if (!draft.accepted.some(part => part.pours.some(({ id }) => id === pourId))) return missing('pour', pourId)
      writeLoad(openEntry(draft, pourId) ?? newEntry(draft, edit, pourId, start), no, reading)
      return undefined
    })

const findTap = (site: Site, tapId: Id): { readonly entry: LogEntry; readonly tap: LogTap } | undefined => {
  for (const entry of site.log ?? []) {
    const tap = entry.taps?.find(({ id }) => id === tapId)
    if (tap) return { entry, tap }
  }
  return undefined
}

/** Types over what was tapped: the time, a note, a count. The tap then counts as typed. */
export const changeTap =
  (tapId: Id, patch: Patch<LogTap, Exclude<keyof LogTap, 'id' | 'what' | 'source'>>): Command =>
  site =>
    editSite(site, draft => {
      const found = findTap(draft, tapId)
      if (!found) return missing('tap', tapId)
      const { entry, tap } = found
      applyPatch<LogTap>(tap, { ...patch, source: 'typed' })
      if (patch.atUtc !== undefined)
        entry.taps = [...entry.taps!].sort((a, b) => (a.atUtc < b.atUtc ? -1 : a.atUtc > b.atUtc ? 1 : 0))
      return undefined
    })

const isEmpty = ({ taps, loads, strips, used, notes }: LogEntry): boolean =>
  (taps ?? []).length + loads.length + strips.length + used.length === 0 && notes === ''

/** Takes a tap out of the log; an entry that says nothing more goes with it, unless a poured shape stands on it. */
export const removeTap =
  (tapId: Id): Command =>
  site =>
    editSite(site, draft => {
      const found = findTap(draft, tapId)
      if (!found) return missing('tap', tapId)
      const { entry } = found
      entry.taps = entry.taps!.filter(({ id }) => id !== tapId)
      const isHeld = draft.accepted.some(part => part.pours.some(({ poured }) => poured?.logId === entry.id))
      if (isEmpty(entry) && !isHeld) draft.log = draft.log!.filter(({ id }) => id !== entry.id)
      if (draft.log?.length === 0) delete draft.log
      return undefined
    })

const changeEntry =
  (entryId: Id, change: (entry: LogEntry) => void): Command =>
  site =>
    editSite(site, draft => {
      const entry = draft.log?.find(({ id }) => id === entryId)
      if (!entry) return missing('log entry', entryId)
      change(entry)
      return undefined
    })

/** Types in or over what was read off a load. */
export const setLoadReading = (entryId: Id, no: number, reading: LoadReading): Command =>
  changeEntry(entryId, entry => writeLoad(entry, no, reading))

export const setLogNotes = (entryId: Id, notes: string): Command =>
  changeEntry(entryId, entry => {
    entry.notes = notes
  })

/** Whether the set of later pours is learned from this one. */
export const setLearnedFrom = (entryId: Id, isLearnedFrom: boolean): Command =>
  changeEntry(entryId, entry => {
    if (isLearnedFrom) delete entry.leftOut
    else entry.leftOut = true
  })
