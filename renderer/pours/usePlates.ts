/** The pours and joints to draw: those of the plan, or in their part's place those of the card under the hand. */
import { useMemo } from 'react'
import type { PlannedJoint, PlannedPour } from '../../core/plan/plan'
import { printMeasures } from '../../core/units/printMeasures'
import { printDate } from '../app/printDate'
import { usePlan, useView } from '../app/session'
import type { DrawnJoint, PourPlate } from '../editor/layers/drawPours'
import { pourTints, tints } from '../editor/layers/pourTints'
import type { LivePlan } from '../store/livePlan'
import type { TrialSplit } from '../store/viewStore'
import { useLivePours } from './useLivePours'

export interface DrawnPours {
  readonly plates: readonly PourPlate[]
  readonly joints: readonly DrawnJoint[]
}

/** Nothing but where the pours are shown: an edit elsewhere must not work them out. */
export function usePlates(live: LivePlan, isShown: boolean): DrawnPours {
  const { pours, joints } = useLivePours(live, isShown)
  const quantities = usePlan(({ parts }) => (isShown ? parts.quantities : undefined))
  const trial = useView(state => state.trial)
  const { accepted, units } = live.site
  const own = useMemo(() => {
    const print = printMeasures(units)
    const tintOf = pourTints(pours, joints)
    const kept = accepted.flatMap(each => each.pours)
    return pours.map((pour): PourPlate => {
      const document = kept.find(({ id }) => id === pour.id)
      // What is ordered, as on the sheets.
      const volume = quantities?.find(q => q.pourId === pour.id && q.id.endsWith('-concrete-order'))
      return {
        pour,
        tint: tintOf.get(pour.id) ?? 1,
        lines: [
          print.area(pour.areaM2),
          ...(volume ? [print.volume(volume.value)] : []),
          pour.date === null ? `day ${pour.day}` : printDate(pour.date),
        ],
        state: document?.poured ? 'poured' : document?.lock.shape ? 'locked' : null,
      }
    })
  }, [pours, joints, quantities, units, accepted])
  return useMemo(
    () => (trial === null ? { plates: own, joints } : withTrial(own, joints, pours, trial, units)),
    [own, joints, pours, trial, units],
  )
}

function withTrial(
  own: readonly PourPlate[],
  joints: readonly PlannedJoint[],
  pours: readonly PlannedPour[],
  trial: TrialSplit,
  units: LivePlan['site']['units'],
): DrawnPours {
  const print = printMeasures(units)
  const isReplaced = ({ id, slabId, part }: PlannedPour): boolean =>
    slabId === trial.slabId && part === trial.part && !trial.keptPourIds.includes(id)
  const gone = new Set(pours.filter(isReplaced).map(({ id }) => id))
  return {
    plates: [
      ...own.filter(({ pour }) => !gone.has(pour.id)),
      ...trial.pours.map(
        ({ number, region, areaM2 }, i): PourPlate => ({
          pour: { id: `trial-${i}`, number, region },
          tint: tints[i % tints.length]!,
          lines: [print.area(areaM2)],
          state: null,
        }),
      ),
    ],
    joints: [
      // A joint along a pour that stays, stays.
      ...joints.filter(({ pourIds }) => pourIds.length === 0 || pourIds.some(id => !gone.has(id))),
      ...trial.joints.map(({ from, to }): DrawnJoint => ({ kind: 'construction', from, to, locked: false })),
    ],
  }
}
