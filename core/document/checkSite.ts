import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { isCalendarDate, isMonthDay } from './calendarDate'
import { checkReferences } from './checkReferences'
import { isKnownZone } from './isKnownZone'
import { toPointer } from './jsonPointer'

const stop = (code: Finding['code'], field: string, values: Finding['values']): Finding => ({
  code,
  severity: 'stop',
  values,
  field,
})

/** `steps` is only good until the visit returns. */
type Visit = (value: unknown, key: PropertyKey, steps: readonly PropertyKey[]) => void

const walk = (value: object, steps: PropertyKey[], visit: Visit): void => {
  for (const key of Object.keys(value)) {
    const entry = (value as Record<string, unknown>)[key]
    if (typeof entry === 'number' || typeof entry === 'boolean') continue
    steps.push(key)
    visit(entry, key, steps)
    if (typeof entry === 'object' && entry !== null) walk(entry, steps, visit)
    steps.pop()
  }
}

const dateKeys = new Set<PropertyKey>(['date', 'finishBy'])
const monthDayKeys = new Set<PropertyKey>(['from', 'to'])

/** Ids once each and below the counter; dates that the calendar has. `assets` holds neither. */
const checkIdsAndDates = (site: Site): readonly Finding[] => {
  const findings: Finding[] = []
  const seen = new Set<string>()
  let highest = 0
  const checkDate = (text: string, steps: readonly PropertyKey[], real: (text: string) => boolean) => {
    if (!real(text)) findings.push(stop('badDate', toPointer(steps), { found: text }))
  }
  walk({ ...site, id: undefined, assets: undefined }, [], (value, key, steps) => {
    if (typeof value !== 'string') return
    if (key === 'id') {
      if (seen.has(value)) findings.push(stop('repeatedId', toPointer(steps), { id: value }))
      seen.add(value)
      highest = Math.max(highest, Number(/\d+$/.exec(value)?.[0]))
    } else if (dateKeys.has(key) || steps.at(-2) === 'daysOff') checkDate(value, steps, isCalendarDate)
    else if (monthDayKeys.has(key) && steps.at(-2) === 'leaves') checkDate(value, steps, isMonthDay)
    else if (key === 'startUtc' || key === 'atUtc') {
      checkDate(value.slice(0, 10), steps, isCalendarDate)
      if (!/T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?Z$/.test(value))
        findings.push(stop('badTime', toPointer(steps), { found: value }))
    }
  })
  if (site.nextId <= highest) findings.push(stop('outOfRange', '/nextId', { value: site.nextId, above: highest }))
  return findings
}

/** Every setting is a size, a share or a weight. */
const checkSettings = (settings: Site['settings']): readonly Finding[] =>
  Object.entries(settings ?? {}).flatMap(([name, value]) =>
    value < 0 ? [stop('outOfRange', toPointer(['settings', name]), { value, min: 0 })] : [],
  )

/** What the fields of a site must keep among themselves; each finding is a stop. */
export const checkSite = (site: Site): readonly Finding[] => [
  ...(isKnownZone(site.place.zone) ? [] : [stop('unknownZone', '/place/zone', { found: site.place.zone })]),
  ...checkIdsAndDates(site),
  ...checkReferences(site),
  ...checkSettings(site.settings),
]
