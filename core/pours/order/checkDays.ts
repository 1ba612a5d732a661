/** What speaks against an accepted order and its dates. */
import type { Finding } from '../../../shared/problem'
import type { OrderProblem } from './orderProblem'
import { Reach } from './orderReach'
import type { DaySlot } from './settleDays'
import { type CalendarRules, dateOf, hoursOn, pourHoursOn, weekdayOf } from './workCalendar'

interface Named {
  readonly id: string
  readonly number: string
  readonly isPoured?: boolean
}

function whyNoPour(rules: CalendarRules, day: number): string {
  if (rules.daysOff.includes(dateOf(day))) return 'the crew is off'
  if (rules.plantHours.length === 0 && weekdayOf(day) > 5) return 'it is a weekend and no plant hours are given'
  if (rules.plantHours.length > 0 && !hoursOn(rules.plantHours, weekdayOf(day))) return 'the plant does not deliver'
  if (rules.noiseHours.length > 0 && !hoursOn(rules.noiseHours, weekdayOf(day))) return 'no noise is allowed'
  return 'plant hours and noise hours have no hour in common'
}

export function checkDays(
  pours: readonly Named[],
  slots: readonly DaySlot[],
  problem: OrderProblem,
  rules: CalendarRules,
): Finding[] {
  const findings: Finding[] = []
  const dayOf = new Map(slots.flatMap(s => (s.day === null ? [] : [[s.pour, s.day] as const])))
  const reach = new Reach(problem)
  const days = [...new Set(dayOf.values())].sort((a, b) => a - b)
  for (const day of days) {
    const today = slots.filter(s => s.day === day && !pours[s.pour]!.isPoured).map(s => s.pour)
    if (today.length === 0) continue
    const date = dateOf(day)
    const load = today.reduce((sum, i) => sum + problem.load[i]!, 0)
    if (load > problem.perDay + 1e-6)
      findings.push({
        code: 'crewOverDay',
        severity: 'check',
        values: { date, pours: today.length, most: problem.perDay },
        at: { entityId: pours[today[0]!]!.id },
      })
    const isPoured = (i: number) => (dayOf.get(i) ?? day) < day
    const isFresh = (i: number): boolean => {
      const own = dayOf.get(i)
      return own !== undefined && own <= day && day - own < problem.crossAge
    }
    reach.flood(problem.open, isFresh, isPoured)
    for (const i of today) {
      const { id, number } = pours[i]!
      const at = { entityId: id }
      if (!pourHoursOn(rules, day))
        findings.push({
          code: 'notPourDay',
          severity: 'check',
          values: { number, date, reason: whyNoPour(rules, day) },
          at,
        })
      if (reach.crossings[i]! < 0)
        findings.push({ code: 'pathThroughFresh', severity: 'check', values: { number, date }, at })
      for (const j of problem.next[i]!) {
        const own = dayOf.get(j)
        if (own === undefined || own > day || day - own >= problem.neighborAge || (own === day && j > i)) continue
        findings.push({
          code: 'neighborTooYoung',
          severity: 'check',
          values: { number, date, other: pours[j]!.number, otherDate: dateOf(own), ageDays: problem.neighborAge },
          at,
        })
      }
    }
  }
  return findings
}
