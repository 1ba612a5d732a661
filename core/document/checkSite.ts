import type { Site } from '../../shared/document/site'
import { onceFrozen } from '../../shared/onceFrozen'
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

/** Where ids and dates stand below a value: `onId` is told every id, `onFault` every date the calendar has not. */
const walkIdsAndDates = (
  value: object,
  onId: (id: string, steps: readonly PropertyKey[]) => void,
  onFault: (finding: Finding) => void,
): void => {
  const checkDate = (text: string, steps: readonly PropertyKey[], real: (text: string) => boolean) => {
    if (!real(text)) onFault(stop('badDate', toPointer(steps), { found: text }))
  }
  walk(value, [], (value, key, steps) => {
    if (typeof value !== 'string') return
    if (key === 'id') onId(value, steps)
    else if (dateKeys.has(key) || steps.at(-2) === 'daysOff') checkDate(value, steps, isCalendarDate)
    else if (monthDayKeys.has(key) && steps.at(-2) === 'leaves') checkDate(value, steps, isMonthDay)
    else if (key === 'startUtc' || key === 'atUtc') {
      checkDate(value.slice(0, 10), steps, isCalendarDate)
      if (!/T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?Z$/.test(value))
        onFault(stop('badTime', toPointer(steps), { found: value }))
    }
  })
}

const idNumber = (id: string): number => Number(/\d+$/.exec(id)?.[0])

interface Sound {
  readonly ids: readonly string[]
  /** Of the ids' numbers. */
  readonly highest: number
}

/** The ids below an entity; null where a date is wrong. */
const soundIds = onceFrozen((entity: object): Sound | null => {
  const ids: string[] = []
  let isSound = true
  walkIdsAndDates(
    { entity },
    id => ids.push(id),
    () => {
      isSound = false
    },
  )
  return isSound ? { ids, highest: ids.reduce((most, id) => Math.max(most, idNumber(id)), 0) } : null
})

/** True where every id stands once and below the counter, and every date is one: entity by entity, as edits leave most. */
function hasSoundIds(site: Site): boolean {
  const seen = new Set<string>()
  let count = 0
  const entities = Object.entries(site)
    .filter(([key]) => key !== 'assets')
    .flatMap(([, value]): unknown[] => (Array.isArray(value) ? value : [value]))
  for (const entity of entities) {
    if (typeof entity !== 'object' || entity === null) continue
    const sound = soundIds(entity)
    if (!sound || sound.highest >= site.nextId) return false
    for (const id of sound.ids) seen.add(id)
    count += sound.ids.length
  }
  return seen.size === count
}

/** Ids once each and below the counter; dates that the calendar has. `assets` holds neither. */
const checkIdsAndDates = (site: Site): readonly Finding[] => {
  if (hasSoundIds(site)) return []
  const findings: Finding[] = []
  const seen = new Set<string>()
  let highest = 0
  walkIdsAndDates(
    { ...site, id: undefined, assets: undefined },
    (id, steps) => {
      if (seen.has(id)) findings.push(stop('repeatedId', toPointer(steps), { id }))
      seen.add(id)
      highest = Math.max(highest, idNumber(id))
    },
    finding => findings.push(finding),
  )
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
