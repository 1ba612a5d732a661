import type { Site } from '../../../shared/document/site'

/** What becomes of the hours of a site under another time zone, in sentences; empty where it has none. */
export function keptHours({ accepted, log = [], conditions, access, calendar }: Site): string {
  const byClock =
    accepted.some(({ pours }) => pours.some(({ start }) => start !== undefined)) ||
    log.some(({ loads, strips }) => loads.length + strips.length > 0) ||
    (calendar !== undefined && calendar.plantHours.length + calendar.noiseHours.length > 0) ||
    access?.ways.some(({ open }) => open.length > 0)
  const byMoment = conditions?.kind === 'hourly' || log.some(({ taps = [] }) => taps.length > 0)
  return [
    byClock ? 'Planned hours keep the clock in another time zone: 7:00 am stays 7:00 am, under another sun.' : '',
    byMoment ? 'Hourly weather and what was tapped at the slab stay the moments they were, told by the new clock.' : '',
  ]
    .filter(Boolean)
    .join(' ')
}
