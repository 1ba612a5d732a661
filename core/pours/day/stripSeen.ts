/** What a log says of each strip, tapped at the slab or written in from the paper boxes. */
import type { LogEntry } from '../../../shared/document/day'
import type { LocalTime } from '../../../shared/document/primitives'
import { instantOf } from '../../sun/siteDay'

export interface SeenStrip {
  readonly placedFromMs?: number
  readonly placedMs?: number
  readonly readyMs?: number
  readonly tooHardMs?: number
  readonly batchedMs?: number
  readonly placedC?: number
  readonly doseMin: number
}

/** By the letter of the strip. Written times stand over tapped ones. */
export function stripSeen(entry: LogEntry, zone: string): ReadonlyMap<string, SeenStrip> {
  const at = (time: LocalTime | undefined): number | undefined => {
    if (!time) return undefined
    const found = instantOf(entry.date, time.time, time.fold, zone)
    return found.ok ? found.value.ms : undefined
  }
  const seen = new Map<string, { -readonly [K in keyof SeenStrip]: SeenStrip[K] }>()
  const of = (strip: string) => {
    const planned = entry.begun?.strips.find(({ name }) => name === strip)
    const known = seen.get(strip) ?? { doseMin: planned?.doseMin ?? 0 }
    seen.set(strip, known)
    return known
  }
  let load = entry.loads.find(({ no }) => no === 1)
  let batchedMs = at(load?.batched)
  let onSiteMs = at(load?.onSite)
  let doseMin: number | undefined = load?.doseMin
  let lastPlacedMs: number | undefined
  for (const tap of [...(entry.taps ?? [])].sort((a, b) => (a.atUtc < b.atUtc ? -1 : a.atUtc > b.atUtc ? 1 : 0))) {
    const atMs = Date.parse(tap.atUtc)
    if (tap.what === 'onSite') {
      load = entry.loads.find(({ no }) => no === tap.load)
      const batch = entry.taps!.find(other => other.what === 'batched' && other.load === tap.load)
      batchedMs = at(load?.batched) ?? (batch && Date.parse(batch.atUtc))
      onSiteMs = at(load?.onSite) ?? atMs
      doseMin = load?.doseMin
    } else if (tap.what === 'dosed') doseMin = Math.max(doseMin ?? 0, tap.minutes ?? 0)
    else if (tap.strip === undefined) continue
    else if (tap.what === 'placed') {
      const strip = of(tap.strip)
      const fromMs = Math.max(onSiteMs ?? Number.NEGATIVE_INFINITY, lastPlacedMs ?? Number.NEGATIVE_INFINITY)
      strip.placedMs = atMs
      if (Number.isFinite(fromMs) && fromMs < atMs) strip.placedFromMs = fromMs
      if (batchedMs !== undefined) strip.batchedMs = batchedMs
      if (load?.tempC !== undefined) strip.placedC = load.tempC
      if (doseMin !== undefined) strip.doseMin = doseMin
      lastPlacedMs = atMs
    } else if (tap.what === 'ready') of(tap.strip).readyMs = atMs
  }
  for (const row of entry.strips) {
    const strip = of(row.name)
    const [placedMs, readyMs, tooHardMs] = [at(row.placed), at(row.ready), at(row.tooHard)]
    if (placedMs !== undefined) {
      strip.placedMs = placedMs
      delete strip.placedFromMs
    }
    if (readyMs !== undefined) strip.readyMs = readyMs
    if (tooHardMs !== undefined) strip.tooHardMs = tooHardMs
  }
  return seen
}
