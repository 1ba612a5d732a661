/** What the sun stage draws and tells, worked out once for plan, ledger and rail. */
import { useMemo } from 'react'
import { type OtherDay, withLeaves } from '../../core/plan/deriveScreen'
import { createMemo } from '../../core/plan/memo'
import { printNumber } from '../../core/units/printNumber'
import { printHour } from '../app/printDate'
import { usePlan, useView } from '../app/session'
import { deriveHour, deriveLive, type LivePlan, type ShownHour } from '../store/livePlan'
import { type HourLine, hourLines } from './drawHourLines'
import { pinSun } from './pinSun'
import { chooseBands, type SunBands } from './sunBands'

const noMaps: never[] = []
const noBands: SunBands = { limitsH: [], names: [] }

export function useSunMap() {
  const maps = usePlan(({ parts }) => parts.sunMaps) ?? noMaps
  const bands = useMemo(() => (maps.length > 0 ? chooseBands(maps) : noBands), [maps])
  return useMemo(() => ({ maps, bands }), [maps, bands])
}

/** None but in the sun stage: an edit elsewhere must not work them out. */
export function useHourLines(live: LivePlan, isShown: boolean): readonly HourLine[] {
  const shadows = usePlan(({ parts }) => (isShown ? parts.shade?.shadows : undefined))
  return useMemo(() => {
    const { place, units } = live.site
    if (!shadows) return []
    const hour = (ms: number, isAlone = false) => printHour(ms, place.zone, units, isAlone)
    const lines = hourLines(shadows, live.slabs, place.zone, ms => hour(ms))
    // Where the day is so long that one clock time comes twice, the half of the day is said.
    const isTwice = (label: string) => new Set(lines.filter(each => each.label === label).map(({ ms }) => ms)).size > 1
    return lines.map(line => (isTwice(line.label) ? { ...line, label: hour(line.ms, true) } : line))
  }, [shadows, live])
}

export function usePin(live: LivePlan) {
  const pin = useView(state => state.pin)
  const sun = useMemo(() => pinSun(live, pin), [live, pin])
  return { pin, sun, words: sun ? `${printNumber(sun.directSunMin / 60, 1, 1)} h of sun here` : '' }
}

/** The other day's shade at the same minute of its day. */
export function useOtherHour(live: LivePlan, other: OtherDay): ShownHour | null {
  const minute = useView(state => state.minute)
  const memo = useMemo(createMemo, [])
  return useMemo(() => {
    const site = memo.part('otherSite', 'site', [live.site, other], () => withLeaves(live.site, other))
    const beside = deriveLive(site, other.date, memo)
    const hour = beside.day ? deriveHour(beside, beside.day.startMs + minute * 60_000, memo) : null
    memo.sweep()
    return hour
  }, [live.site, other, minute, memo])
}
