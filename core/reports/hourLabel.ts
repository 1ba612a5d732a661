import { DateTime } from 'luxon'
import type { UnitSystem } from '../../shared/document/site'

export interface HourLabel {
  readonly label: string
  /** Minutes since midnight by the site's clock. */
  readonly clockMin: number
}

/**
 * `9 am`, `noon`, `2:30 pm`; in metric sites `14:30`. A repeated hour carries its offset: `1 am (−06:00)`.
 */
export function hourLabel(ms: number, zone: string, units: UnitSystem): HourLabel {
  const time = DateTime.fromMillis(ms, { zone })
  const clockMin = time.hour * 60 + time.minute
  const minutes = time.minute === 0 ? '' : `:${String(time.minute).padStart(2, '0')}`
  const twelve = time.hour % 12 === 0 ? 12 : time.hour % 12
  const plain =
    units === 'metric'
      ? time.toFormat('H:mm')
      : clockMin === 720
        ? 'noon'
        : `${twelve}${minutes} ${time.hour < 12 ? 'am' : 'pm'}`
  const repeats = [-1, 1].some(step => {
    const other = time.plus({ hours: step })
    return other.hour === time.hour && other.offset !== time.offset
  })
  return { label: repeats ? `${plain} (${time.toFormat('ZZ').replace('-', '−')})` : plain, clockMin }
}
