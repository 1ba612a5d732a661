import type { Site } from '../../shared/document/site'

/**
 * The date asked for, else that of the first pour still to come, else of the first at all, else the date of the
 * conditions, else today as the host gives it.
 */
export function planDate(site: Site, asked: string | undefined, today: string): string {
  if (asked !== undefined) return asked
  const pours = site.accepted.flatMap(accepted => accepted.pours)
  const ahead = pours.filter(({ poured }) => poured === undefined)
  const [first] = [ahead, pours].flatMap(each => each.flatMap(({ date }) => date ?? []).sort())
  return first ?? site.conditions?.date ?? today
}
