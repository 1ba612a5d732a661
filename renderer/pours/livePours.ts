/** Accepted pours and joints as the document on screen cuts them: areas follow the hand, the worker's answer comes after. */
import { pourGround } from '../../core/document/commands/pourGround'
import type { PlannedJoint, PlannedPour } from '../../core/plan/plan'
import { asBuiltFaces, isColdJoint } from '../../core/pours/asBuiltFaces'
import { cutPart } from '../../core/pours/editing/editPart'
import type { LivePlan } from '../store/livePlan'

export interface LivePours {
  readonly pours: readonly PlannedPour[]
  readonly joints: readonly PlannedJoint[]
}

const known = new WeakMap<LivePlan, LivePours & { readonly from: LivePours }>()

/** The same answer for the same document and parts. Pours and joints the document does not have stay as they are. */
export function livePours(live: LivePlan, pours: readonly PlannedPour[], joints: readonly PlannedJoint[]): LivePours {
  const made = known.get(live)
  if (made?.from.pours === pours && made.from.joints === joints) return made
  const { site } = live
  const cuts = site.accepted.flatMap(accepted => {
    const slab = site.slabs.find(({ id }) => id === accepted.slabId)
    if (!slab) return []
    const [cut] = asBuiltFaces([cutPart(pourGround(slab, accepted.part), accepted)], accepted)
    return cut ? [{ accepted, cut }] : []
  })
  const faces = cuts.flatMap(({ cut }) => cut.faces)
  const cutIds = new Set(cuts.flatMap(({ accepted }) => accepted.joints.map(({ id }) => id)))
  const answer = {
    from: { pours, joints },
    pours: pours.map(pour => {
      const face = pour.proposed ? undefined : faces.find(({ pourId }) => pourId === pour.id)
      return !face || Math.abs(face.areaM2 - pour.areaM2) < 1e-9
        ? pour
        : { ...pour, region: face.region, areaM2: face.areaM2 }
    }),
    joints: [
      ...joints.filter(({ id }) => !cutIds.has(id) && !isColdJoint(id)),
      ...cuts.flatMap(({ accepted, cut }) =>
        cut.joints.map(
          (joint): PlannedJoint => ({
            ...joint,
            slabId: accepted.slabId,
            kind: 'construction',
            locked: accepted.joints.find(({ id }) => id === joint.id)?.locked ?? isColdJoint(joint.id),
          }),
        ),
      ),
    ],
  }
  known.set(live, answer)
  return answer
}
