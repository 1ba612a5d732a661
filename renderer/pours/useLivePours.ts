import type { PlannedJoint, PlannedPour } from '../../core/plan/plan'
import { usePlan } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { type LivePours, livePours } from './livePours'

const noPours: readonly PlannedPour[] = []
const noJoints: readonly PlannedJoint[] = []

const nothing: LivePours = { pours: noPours, joints: noJoints }

export function useLivePours(live: LivePlan, isShown = true): LivePours {
  const { pours, joints } = usePlan(({ parts }) => ({
    pours: parts.pours ?? noPours,
    joints: parts.joints ?? noJoints,
  }))
  return isShown ? livePours(live, pours, joints) : nothing
}
