/** The same day a little different: 10 °F hotter, windier, cloudier; for what-ifs and for draws of the forecast. */
import type { WeatherHour } from '../../shared/document/day'
import { dewPointFromHumidity } from './humidity'

export interface WeatherShift {
  readonly airK?: number
  readonly windFactor?: number
  /** Added to the share of sky covered; the cover ends at clear and at overcast. */
  readonly cloudAdd?: number
}

/**
 * Hours with their air moved and their dew point kept (held to the air where the air falls under it): the water in the
 * air stays, its relative humidity changes.
 */
export const shiftHours = (hours: readonly WeatherHour[], shift: WeatherShift): readonly WeatherHour[] =>
  hours.map(row => {
    const { humidity, ...kept } = row
    const airC = row.airC + (shift.airK ?? 0)
    const dewPointC =
      row.dewPointC ?? (humidity === undefined ? undefined : dewPointFromHumidity(row.airC, Math.max(humidity, 0.01)))
    return {
      ...kept,
      airC,
      ...(dewPointC === undefined ? {} : { dewPointC: Math.min(dewPointC, airC) }),
      ...(row.wind10mMs === undefined ? {} : { wind10mMs: row.wind10mMs * (shift.windFactor ?? 1) }),
      ...(row.cloud === undefined ? {} : { cloud: Math.min(1, Math.max(0, row.cloud + (shift.cloudAdd ?? 0))) }),
    }
  })
