/** Which pour the screen at the slab opens with. */
import { DateTime } from 'luxon'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { LogEntry } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'

export const dateAt = (ms: number, zone: string): string => DateTime.fromMillis(ms, { zone }).toISODate() ?? ''

export const isPoured = (site: Site, pourId: string): boolean =>
  site.accepted.some(({ pours }) => pours.some(({ id, poured }) => id === pourId && poured !== undefined))

export const entryOf = (site: Site, pourId: string): LogEntry | undefined =>
  site.log?.findLast(entry => entry.pourId === pourId)

/** A pour that was begun and not ended. */
export const underWay = (site: Site, days: readonly PourDayPlan[]): PourDayPlan | undefined =>
  days.find(({ pourId }) => (entryOf(site, pourId)?.taps?.length ?? 0) > 0 && !isPoured(site, pourId))

/** The one under way, else today's, else the first that is not poured. */
export function pourToday(site: Site, days: readonly PourDayPlan[], nowMs: number): PourDayPlan | undefined {
  const chosen = new Set(site.accepted.flatMap(({ pours }) => pours.map(({ id }) => id)))
  const open = days.filter(({ pourId }) => chosen.has(pourId) && !isPoured(site, pourId))
  const today = dateAt(nowMs, site.place.zone)
  return underWay(site, open) ?? open.find(({ date }) => date === today) ?? open[0]
}
