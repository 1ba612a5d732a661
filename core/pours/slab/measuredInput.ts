import type { LogLoad } from '../../../shared/document/day'
import type { DayInput } from '../day/dayProblem'

/** The day with the concrete as warm as it was last measured; the same object where nothing was. */
export function measuredInput(day: DayInput, loads: readonly LogLoad[]): DayInput {
  const tempC = loads.findLast(load => load.tempC !== undefined)?.tempC
  return tempC === undefined || tempC === day.mix.placedTempC
    ? day
    : { ...day, mix: { ...day.mix, placedTempC: tempC } }
}
