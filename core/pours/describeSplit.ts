/** A split as it is told: pours with their costs, joints, how good it is, and what could not be met. */
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import { addPourCost, type CostContext, type CostTerms, noCost } from './pourCost'
import type { CostTerm, Proposal, ProposedPour, SplitInput } from './proposal'
import { type CutRegion, toCurveRegion } from './region/cutRegion'
import { minCorner } from './region/minCorner'
import { minimumBox } from './region/minimumBox'
import { type CutTree, type JointLine, jointsOf, leavesOf } from './search/cutTree'
import { poursNeeded } from './search/searchContext'
import { teeCost } from './search/teeCost'
import type { SiteGround } from './siteGround'
import type { SplitFaces } from './splitFaces'
import type { SplitTask } from './splitTask'
import { type FixedFaces, firstFixed } from './wishes/fixedFaces'
import { tellNarrow } from './wishes/tellUnmet'

const listTerms = (terms: object): CostTerm[] => Object.entries(terms).map(([term, value]) => ({ term, value }))

function describePour(pour: CutRegion, region: CurveRegion): ProposedPour {
  const box = minimumBox(pour.rings[0]!)
  return { region, areaM2: pour.areaM2, aspect: box.longM / box.shortM, minCornerDeg: minCorner(pour) }
}

/** The slab as one pour: nothing was split. */
export const describeWhole = (
  input: SplitInput,
  slab: CutRegion,
  lowerBound: number,
  findings: readonly Finding[],
): Proposal => ({
  pours: [describePour(slab, input.region)],
  joints: [],
  lowerBound,
  cost: [],
  totalCost: 0,
  proven: false,
  gap: 1,
  findings,
})

/** The plan's pours and joints: required joints are numbered first, then those of each face. */
function numbered(fixed: FixedFaces, trees: readonly CutTree[]) {
  const joints: JointLine[] = [...fixed.joints]
  const pours = trees.flatMap(tree => {
    const first = joints.length
    joints.push(...jointsOf(tree))
    const numberOf = (joint: number): number => (joint >= firstFixed ? joint - firstFixed : first + joint)
    return leavesOf(tree).map(cut => ({ cut, numberOf }))
  })
  return { pours, joints }
}

/** What the plan's pours cost one by one, and all terms of the plan. */
function weigh(split: SplitTask, cuts: readonly CutRegion[], joints: readonly JointLine[], site: SiteGround | null) {
  const { weights } = split.base
  const context: CostContext = { ...split.base, site, meanM2: split.slab.areaM2 / cuts.length }
  const terms = noCost()
  const ofPours = cuts.map(cut => {
    const own = noCost()
    addPourCost(cut, context, own)
    for (const term of Object.keys(own) as (keyof CostTerms)[]) terms[term] += own[term]
    return own
  })
  const all = {
    ...terms,
    extraJoint: weights.extraJoint * (joints.length - cuts.length + 1),
    teeOffset: teeCost(joints, weights),
    extraPour: weights.extraPour * (cuts.length - split.lowerBound),
  }
  return { ofPours, all }
}

/** How far a plan of this cost may be above the cheapest, and whether it is known not to be. */
function goodness(split: SplitTask, plans: SplitFaces['plans'], costFt: number, pourCount: number) {
  const { fixed, base, input } = split
  const { faces } = fixed
  let bound = base.weights.extraJoint * (fixed.joints.length - faces.length + 1)
  for (const plan of plans) bound += plan ? plan.bound : 0
  const gap = costFt > bound + 1e-6 ? (costFt - bound) / costFt : 0
  // How pours asked for beyond the need are shared out among faces is not proven.
  const needed = faces.reduce((sum, { areaM2 }) => sum + poursNeeded(areaM2, input.capM2), 0)
  const isBounded = faces.length === 1 || (split.pours === needed && pourCount === needed)
  return { proven: gap === 0 && isBounded && !plans.includes(null), gap }
}

/** Which wishes this plan does not keep, or pays with pours. */
function tellPaid(split: SplitTask, plans: SplitFaces['plans'], cuts: readonly CutRegion[]): Finding[] {
  const { input, asked, fixed, leastWidthM, base } = split
  const told = plans.some(plan => plan && plan.ground > 0) ? tellNarrow(input.slabId, cuts, leastWidthM) : []
  if (cuts.length > asked && (fixed.joints.length > 0 || base.forbidden || leastWidthM > 0))
    told.push({
      code: 'wishesAddPours',
      severity: 'note',
      values: { pours: cuts.length, needed: asked },
      at: { entityId: input.slabId },
    })
  return told
}

/** The faces' trees as one plan, each pour weighed with its site where there is one. */
export function describeSplit(
  split: SplitTask,
  { plans, findings }: SplitFaces,
  trees: readonly CutTree[],
  site: SiteGround | null,
): Proposal {
  const { fixed, lowerBound } = split
  const { pours, joints } = numbered(fixed, trees)
  const cuts = pours.map(({ cut }) => cut)
  const { ofPours, all } = weigh(split, cuts, joints, site)
  const cost = listTerms(all)
  let totalCost = 0
  for (const { value } of cost) totalCost += value
  const comparable = totalCost - all.extraPour - all.shadeLine - all.mixedPlacing
  return {
    pours: pours.map(({ cut, numberOf }, i) => ({
      ...describePour(
        cut,
        toCurveRegion(cut, joint => `joint-${numberOf(joint) + 1}`),
      ),
      cost: listTerms(ofPours[i]!).filter(({ value }) => value !== 0),
    })),
    joints: joints.map((joint, i) => ({
      from: [joint.ax, joint.ay],
      to: [joint.bx, joint.by],
      lengthM: joint.lengthM,
      pours: pours.flatMap(({ cut, numberOf }, p) =>
        cut.rings.some(r => r.sides.some(s => s.joint >= 0 && numberOf(s.joint) === i)) ? [p] : [],
      ),
      ...(i < fixed.joints.length ? { wishId: fixed.joints[i]!.wishId } : {}),
    })),
    lowerBound,
    cost,
    totalCost,
    ...goodness(split, plans, comparable, pours.length),
    findings: [...split.findings, ...findings, ...tellPaid(split, plans, cuts)],
  }
}
