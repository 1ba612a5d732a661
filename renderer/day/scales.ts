/** Units in which crew, mix and weather are typed on a site. */
import type { UnitSystem } from '../../shared/document/site'
import type { Scale } from './AmountField'

export const tempScale: Readonly<Record<UnitSystem, Scale>> = {
  ftin: { unit: '°F', by: 1.8, plus: 32, least: -40, most: 130 },
  metric: { unit: '°C', by: 1, least: -40, most: 55 },
}
export const windScale: Readonly<Record<UnitSystem, Scale>> = {
  ftin: { unit: 'mph', by: 1 / 0.44704, least: 0, most: 100 },
  metric: { unit: 'km/h', by: 3.6, least: 0, most: 160 },
}
export const percentScale: Scale = { unit: '%', by: 100, least: 0, most: 100 }
export const minuteScale = (most: number): Scale => ({ unit: 'min', by: 1, least: 0, most })
export const sackScale: Scale = { unit: 'sacks for 1 yd³', by: 1, least: 3, most: 12 }
