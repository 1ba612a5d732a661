import { DateTime } from 'luxon'

/** Today at the site, `YYYY-MM-DD`. */
export const today = (zone: string): string => DateTime.now().setZone(zone).toISODate() ?? DateTime.utc().toISODate()
