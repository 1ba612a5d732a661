/** Wind over the slab, for the evaporation formula and the heat carried off by air. */
import { type SettingOverrides, settingValue } from '../../shared/settings'

export interface WindSource {
  /** Average of a forecast or a weather station, at 10 m. */
  readonly wind10mMs: number
  /** Average read by hand about 0.5 m (20 in) above the slab: overrides the forecast. */
  readonly readingMs?: number
}

/**
 * Average wind in m/s about 0.5 m above the slab, the height of the evaporation formula (Uno, ACI Materials Journal
 * 95-M34, 1998). A forecast for 10 m is multiplied by the setting `windAtSlabShare`: 0.65 is (0.5/10)^(1/7), the power
 * law with exponent 1/7 (from memory); a sheltered yard is nearer 0.5. A reading at the slab is taken as it is.
 */
export const windAtSlab = (source: WindSource, settings?: SettingOverrides): number =>
  source.readingMs ?? source.wind10mMs * settingValue(settings, 'windAtSlabShare')
