import type { Problem } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import type { PourDayPlan } from '../pours/day/pourDay'
import type { DayHolds } from '../pours/replan/repairPours'

/** What the crew takes on their own day, of the pours that were told to be more; left out where that is no pour at all. */
export function dayHolds(
  problems: readonly Pick<Problem, 'code' | 'at'>[],
  dayPlans: readonly Pick<PourDayPlan, 'pourId' | 'capacity'>[],
  settings: SettingOverrides | undefined,
): DayHolds {
  const over = new Set(problems.flatMap(({ code, at }) => (code === 'overCrewCapacity' && at ? [at.entityId] : [])))
  const leastM2 = settingValue(settings, 'leastCapM2')
  return new Map(
    dayPlans.flatMap(({ pourId, capacity: { crewM2 } }) =>
      over.has(pourId) && crewM2 >= leastM2 ? [[pourId, crewM2] as const] : [],
    ),
  )
}
