import type { Site } from '../../shared/document/site'

/** The date asked for, else the first planned pour, else the date of the conditions, else today as the host gives it. */
export function planDate(site: Site, asked: string | undefined, today: string): string {
  if (asked !== undefined) return asked
  const dated = site.accepted.flatMap(a => a.pours.flatMap(p => (p.date === undefined ? [] : [p.date]))).sort()
  return dated[0] ?? site.conditions?.date ?? today
}
