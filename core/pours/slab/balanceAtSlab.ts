/** What the mark of the concrete's front tells: thickness running, yards still needed, when to call for them. */
import { settingValue } from '../../../shared/settings'
import { type Balance, balanceLoad } from '../day/loads'
import type { SlabFront } from './front'
import type { AtSlabInput, SlabPlan } from './planAtSlab'

export interface SlabBalance extends Balance {
  /** Ordered and not discharged yet when the front was marked, m³. */
  readonly orderedM3: number
}

/** Null until a front with the concrete discharged is marked. */
export function balanceAtSlab(
  { day, state }: Pick<AtSlabInput, 'day' | 'state'>,
  { loads }: Pick<SlabPlan, 'loads'>,
  front: SlabFront,
): SlabBalance | null {
  const mark = state.front
  if (mark?.outM3 === undefined) return null
  const orderedM3 = Math.max(0, loads.reduce((sum, load) => sum + load.volumeM3, 0) - mark.outM3)
  const placedM2 = front.areaTo(mark.comeM)
  const beganMs = Math.min(loads[0]?.onSiteMs ?? day.startMs, mark.atMs - 60_000)
  const balance = balanceLoad({
    placedM2,
    wholeM2: front.areaTo(front.lengthM),
    usedM3: mark.outM3,
    paceM2H: placedM2 / ((mark.atMs - beganMs) / 3_600_000),
    nowMs: mark.atMs,
    noticeMin: settingValue(day.settings, 'callAheadMin'),
    onSiteM3: orderedM3,
    ...(day.settings === undefined ? {} : { settings: day.settings }),
  })
  return balance && { ...balance, orderedM3 }
}
