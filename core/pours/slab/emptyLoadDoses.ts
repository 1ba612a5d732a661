import type { LogTap } from '../../../shared/document/day'
import type { Finding } from '../../../shared/problem'
import type { DayPlan } from '../day/dayPlan'

/** Doses that were logged into a load that is not of this pour, or whose strips were all down by then: slips of the pen. */
export function emptyLoadDoses(taps: readonly LogTap[], { strips }: Pick<DayPlan, 'strips'>): readonly Finding[] {
  return taps.flatMap((tap): Finding[] => {
    const { what, load = 0, minutes = 0, atUtc } = tap
    if (what !== 'dosed' || minutes === 0) return []
    const isDown = (id: string): boolean =>
      taps.some(other => other.what === 'placed' && other.strip === id && other.atUtc < atUtc)
    const isEmpty = strips.every(strip => strip.load !== load - 1 || isDown(strip.id))
    return isEmpty ? [{ code: 'doseOnEmptyLoad', severity: 'check', values: { load, doseMin: minutes } }] : []
  })
}
