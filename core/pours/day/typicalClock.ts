/** When a typical pour is placed and printed by this crew in this weather: the clock that splits are weighed by. */
import { settingValue } from '../../../shared/settings'
import type { PourClock } from '../provisionalDay'
import { type CapacityInput, stripsOfArea } from './capacityOf'
import { isSetKnown } from './dayProblem'
import { solveDay } from './solveDay'

/**
 * The model of the day run on one pour of `areaM2` (> 0), twice as long as wide, in the strips its loads make, with the
 * retarder that serves it best. Splits are weighed before there are pours, and the day of a pour is planned after: this
 * pour stands for all of them, so that nothing goes in a circle. Null where the hands are too few or the weather's hours
 * end before it sets. Its own area is open by `openHours` exactly from its first concrete to its last print.
 */
export function typicalClock(input: CapacityInput, areaM2: number): PourClock | null {
  const strips = stripsOfArea(areaM2, input)
  const solved = strips.length === 0 ? null : solveDay({ ...input, strips })
  if (!solved?.ok || !isSetKnown(solved.value.run)) return null
  const { run, placed } = solved.value
  const stopMin = settingValue(input.settings, 'mixingStopMin')
  const spans = run.times.map(({ strip, stops, stampFromMin, stampToMin, borderToMin }) => ({
    placeMin: placed[strip]!.fromMin + stops * stopMin,
    placedMin: placed[strip]!.toMin + stops * stopMin,
    firstMatMin: stampFromMin,
    lastMatMin: strips[strip]!.borderM > 0 ? Math.max(stampToMin, borderToMin) : stampToMin,
  }))
  const most = (of: 'placedMin' | 'lastMatMin'): number => Math.max(...spans.map(span => span[of]))
  const placedMin = most('placedMin')
  if (!(placedMin > 0)) return null
  return {
    startMs: input.startMs,
    placeM2H: (60 * areaM2) / placedMin,
    firstMatH: Math.min(...spans.map(span => span.firstMatMin)) / 60,
    leastOpenH: Math.min(...spans.map(span => span.lastMatMin - span.placeMin)) / 60,
    lastMatH: (most('lastMatMin') - placedMin) / 60,
  }
}
