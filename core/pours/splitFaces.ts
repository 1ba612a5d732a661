/** A plan for each face of a split, searched or in lanes, and why where there is none. */
import type { Finding } from '../../shared/problem'
import type { CutRegion } from './region/cutRegion'
import { minimumBox } from './region/minimumBox'
import { lanePlan } from './search/lanePlan'
import type { Direction } from './search/searchContext'
import { fullBudget, quickBudget, searchPlan } from './search/searchPlan'
import type { FaceGround, SplitTask } from './splitTask'
import { forbiddenGround } from './wishes/forbiddenGround'
import type { JointWishes } from './wishes/jointWishes'
import { keptWhole } from './wishes/keptWhole'
import { type FacePlan, planFaces } from './wishes/planFaces'
import { tellNoJointAllowed } from './wishes/tellUnmet'

export interface SplitFaces {
  /** Of each face; null where none was found. */
  readonly plans: readonly (FacePlan | null)[]
  readonly findings: readonly Finding[]
}

/** Lanes run along what was asked for; else along the longer side of the least rectangle, else along the shorter. */
function laneDirections(wished: readonly Direction[], face: CutRegion): readonly Direction[] {
  if (wished.length > 0) return wished
  const { ux, uy } = minimumBox(face.rings[0]!)
  return [
    { ux, uy },
    { ux: -uy, uy: ux },
  ]
}

/** In lanes no wider than `laneM`. */
function laneFaces(split: SplitTask, laneM: number): SplitFaces {
  const { input, slab, fixed, counts, pours, base } = split
  const findings: Finding[] = []
  const plans = fixed.faces.map((face, i) => {
    const [ground] = split.groundsOf(i)
    const rest =
      fixed.faces.length === 1
        ? { areaM2: 0, pours: 0 }
        : { areaM2: slab.areaM2 - face.areaM2, pours: pours - counts[i]! }
    const { plan, stopped } = lanePlan(face, counts[i]!, laneDirections(base.wished, face), laneM, {
      ...ground!,
      beside: fixed.joints,
      rest,
    })
    if (stopped)
      findings.push({ code: 'noLanes', severity: 'stop', values: { why: stopped }, at: { entityId: input.slabId } })
    return plan && { ...plan, ground: 0 }
  })
  return { plans, findings }
}

/** Work of looking whether a wish stands in the way, and the pours beyond the fewest tried for it. */
const lookBudget = 30_000
const mostLookedExtra = 1

/** Whether a face can be split at all where only these wishes hold; a quick look. */
const canSplit =
  (face: CutRegion, count: number, ground: FaceGround) =>
  (wishes: JointWishes): boolean =>
    searchPlan(
      face,
      count,
      { ...ground, forbidden: forbiddenGround(wishes), beside: [], rest: { areaM2: 0, pours: 0 } },
      lookBudget,
      mostLookedExtra,
    ) !== null

/** Why no plan was found for a face. */
function tellUnsplit(split: SplitTask, i: number): Finding {
  const { slabId, capM2, wishes = {} } = split.input
  const face = split.fixed.faces[i]!
  const ground = split.groundsOf(i).at(-1)
  if (!ground) {
    const isFreed = ({ forbiddenAreas = [] }: JointWishes) => keptWhole(face, forbiddenAreas, capM2) === 0
    return tellNoJointAllowed(slabId, face, capM2, split.keptM2[i]!, wishes, isFreed)
  }
  const splits = canSplit(face, split.counts[i]!, ground)
  if (split.base.forbidden && splits({})) return tellNoJointAllowed(slabId, face, capM2, 0, wishes, splits)
  return { code: 'noCutFound', severity: 'stop', values: { capM2, areaM2: face.areaM2 }, at: { entityId: slabId } }
}

function budgetOf({ input, slab, asked }: SplitTask): number {
  if (typeof input.budget === 'number') return input.budget
  return input.budget === 'small' ? quickBudget : fullBudget(asked, slab.rings.length - 1)
}

export function splitFaces(split: SplitTask): SplitFaces {
  const { input, fixed, counts } = split
  if (input.laneM !== undefined) return laneFaces(split, input.laneM)
  const plans = planFaces(fixed.faces, counts, fixed.joints, split.groundsOf, budgetOf(split))
  return { plans, findings: plans.flatMap((plan, i) => (plan ? [] : [tellUnsplit(split, i)])) }
}
