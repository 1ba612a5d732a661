/** The split of a region into pours that a crew can stamp, at the least cost of joints. */

import type { Pt } from '../../shared/document/primitives'
import { limits } from '../../shared/limits'
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import type { LoadGround } from './loadGround'
import { addPourCost, type CostContext, type CostTerms, type GridLines, noCost } from './pourCost'
import { type CutRegion, toCurveRegion, toCutRegion } from './region/cutRegion'
import { minCorner } from './region/minCorner'
import { minimumBox } from './region/minimumBox'
import { type CutTree, type JointLine, jointsOf, leavesOf } from './search/cutTree'
import { lanePlan } from './search/lanePlan'
import { type Direction, poursNeeded } from './search/searchContext'
import { fullBudget, quickBudget, type SearchGround, searchPlan } from './search/searchPlan'
import { settleOnSite } from './search/settleOnSite'
import { teeCost } from './search/teeCost'
import type { SiteGround } from './siteGround'
import { resolveWeights, type Weights } from './weights'
import { firstFixed, fixedFaces } from './wishes/fixedFaces'
import { forbiddenGround } from './wishes/forbiddenGround'
import type { JointWishes } from './wishes/jointWishes'
import { keptWhole } from './wishes/keptWhole'
import { type FacePlan, planFaces, sharePours } from './wishes/planFaces'
import { refusedIn } from './wishes/refusedPours'
import { tellForbiddenRequired, tellNarrow, tellNoJointAllowed, tellSmallFaces } from './wishes/tellUnmet'
import { hidingDirections, wishGround } from './wishes/wishCost'

export interface SplitInput {
  readonly slabId: string
  readonly part: 'whole' | 'field' | 'border'
  readonly region: CurveRegion
  readonly capM2: number
  /** Pours asked for; the fewest possible when absent. */
  readonly pourCount?: number
  /** Direction of the stamp pattern in the drawing, degrees counter-clockwise from drawing-right. */
  readonly patternDeg?: number
  /** 'any' allows twelve directions, 15° apart: for textures without a direction of their own. */
  readonly directions?: 'edges' | 'any'
  readonly weights?: Partial<Weights>
  /** Sides the search may visit; 'small' while dragging. Never a time. */
  readonly budget?: 'small' | 'full' | number
  readonly grid?: readonly GridLines[]
  /** What trucks cost by the area of a pour; free when absent. */
  readonly loads?: LoadGround
  /** Where joints have to lie, may not lie or are out of sight. */
  readonly wishes?: JointWishes
  /** Lays the pours out in lanes no wider than this (m) instead of searching. */
  readonly laneM?: number
}

export interface CostTerm {
  readonly term: string
  /** Feet of joint. */
  readonly value: number
}

export interface ProposedPour {
  readonly region: CurveRegion
  readonly areaM2: number
  /** Length ÷ width of the least rectangle around the pour. */
  readonly aspect: number
  /** Sharpest true corner; null where the pour has none. */
  readonly minCornerDeg: number | null
  /** What this pour adds to the cost of the plan; a joint counts by half. Absent where nothing was split. */
  readonly cost?: readonly CostTerm[]
}

export interface ProposedJoint {
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
  /** Indices of the pours along it. */
  readonly pours: readonly number[]
  /** The required line it lies on. */
  readonly wishId?: string
}

export interface Proposal {
  readonly pours: readonly ProposedPour[]
  readonly joints: readonly ProposedJoint[]
  /** Fewest pours the area needs. */
  readonly lowerBound: number
  /** Feet of joint by term of the weight table; they sum to totalCost. */
  readonly cost: readonly CostTerm[]
  readonly totalCost: number
  /** True when no plan made of the candidate cuts is cheaper. */
  readonly proven: boolean
  /** How far the plan may be above the cheapest, as a share of its cost; 0 when proven. */
  readonly gap: number
  readonly findings: readonly Finding[]
}

/** Most pours for which a second plan is looked for on the site. */
const mostOnSite = 12
const onSiteBudget = 15_000
/** A shade line this close to the slab's box is tried anyway. */
const leastTurnRad = (3 * Math.PI) / 180
/** A pour smaller than 4 ft × 4 ft takes no mat with a finisher beside it (m²): common practice, no source. */
export const smallestPourM2 = 1.2192 * 1.2192

function wishedDirections(input: SplitInput, slab: CutRegion): Direction[] {
  const at = (deg: number): Direction => ({ ux: Math.cos((deg * Math.PI) / 180), uy: Math.sin((deg * Math.PI) / 180) })
  if (input.directions === 'any') {
    const box = minimumBox(slab.rings[0]!)
    const base = input.patternDeg ?? (Math.atan2(box.uy, box.ux) * 180) / Math.PI
    return Array.from({ length: 12 }, (_, i) => at(base + 15 * i))
  }
  const degs = [...(input.patternDeg === undefined ? [] : [input.patternDeg]), ...(input.wishes?.directionsDeg ?? [])]
  return degs.flatMap(deg => [at(deg), at(deg + 90)])
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

const listTerms = (terms: object): CostTerm[] => Object.entries(terms).map(([term, value]) => ({ term, value }))

const wholeSlab = (input: SplitInput, lowerBound: number, findings: readonly Finding[]): Proposal => {
  const slab = toCutRegion(input.region)
  return {
    pours: [describePour(slab, input.region)],
    joints: [],
    lowerBound,
    cost: [],
    totalCost: 0,
    proven: false,
    gap: 1,
    findings,
  }
}

function describePour(pour: CutRegion, region: CurveRegion): ProposedPour {
  const box = minimumBox(pour.rings[0]!)
  return { region, areaM2: pour.areaM2, aspect: box.longM / box.shortM, minCornerDeg: minCorner(pour) }
}

/** Work of looking whether a wish stands in the way, and the pours beyond the fewest tried for it. */
const lookBudget = 30_000
const mostLookedExtra = 1

/** Whether a face can be split at all where only these wishes hold; a quick look. */
const canSplit =
  (face: CutRegion, count: number, ground: Omit<SearchGround, 'beside' | 'rest'>) =>
  (wishes: JointWishes): boolean =>
    searchPlan(
      face,
      count,
      { ...ground, forbidden: forbiddenGround(wishes), beside: [], rest: { areaM2: 0, pours: 0 } },
      lookBudget,
      mostLookedExtra,
    ) !== null

/** The same pours as before, so that what hangs on their regions is not done again. */
export const keepRegions = (now: Proposal, before: Proposal): Proposal => ({
  ...now,
  pours: now.pours.map((pour, i) => ({ ...pour, region: before.pours[i]!.region })),
  joints: before.joints,
})

/** Angle between a direction and the nearest side of the slab's least box, radians. */
function offBox(line: Direction, slab: CutRegion): number {
  const { ux, uy } = minimumBox(slab.rings[0]!)
  const turned = Math.abs(Math.atan2(line.uy * ux - line.ux * uy, line.ux * ux + line.uy * uy)) % (Math.PI / 2)
  return Math.min(turned, Math.PI / 2 - turned)
}

/**
 * Splits a region into connected pours of at most `capM2` by straight joints across it. The same input gives the same
 * answer on any machine. Required joints are cut first and the rest is searched around them; a wish that cannot be met
 * is told. A part for which no split is found comes back as one pour with a stop-finding.
 */
export const proposePours = (input: SplitInput): Proposal => searchSplit(input)(null)

/** The search, done; what it found is settled on the site as often as that changes. */
export type FoundSplit = (site: SiteGround | null) => Proposal

/**
 * `proposePours` in two steps. Shade lines and ways of placing are weighed in the second, on finished plans (that of the
 * long search and that of a quick one that looks at the site) and their slid joints; `proven` and `gap` leave them out.
 */
export function searchSplit(input: SplitInput): FoundSplit {
  const slab = toCutRegion(input.region)
  const { capM2, slabId, wishes = {} } = input
  const at = { entityId: slabId }
  const lowerBound = poursNeeded(slab.areaM2, capM2)
  const tooSmall = (): Proposal =>
    wholeSlab(input, lowerBound, [
      {
        code: 'capacityTooSmall',
        severity: 'stop',
        values: { capM2, leastM2: Math.max(smallestPourM2, slab.areaM2 / limits.pours) },
        field: '/capacity/capM2',
        at,
      },
    ])
  if (slab.areaM2 > capM2 && (capM2 < smallestPourM2 || lowerBound > limits.pours)) {
    const refused = tooSmall()
    return () => refused
  }
  const findings: Finding[] = []
  const asked = Math.max(lowerBound, input.pourCount ?? 0)
  if (input.pourCount !== undefined && input.pourCount < lowerBound)
    findings.push({
      code: 'tooFewPours',
      severity: 'check',
      values: { asked: input.pourCount, needed: lowerBound, capM2 },
      at,
    })
  const weights = resolveWeights(input.weights)
  const slabWidthM = (2 * slab.areaM2) / slab.perimeterM
  const fixed = fixedFaces(slab, wishes.required ?? [])
  const { faces } = fixed
  const counts = sharePours(faces, capM2, asked)
  const shared = counts.reduce((sum, count) => sum + count, 0)
  if (shared > limits.pours) {
    const refused = tooSmall()
    return () => refused
  }
  findings.push(...fixed.findings, ...tellForbiddenRequired(fixed, wishes))
  findings.push(...tellSmallFaces(fixed, slabWidthM, smallestPourM2, weights))
  const leastWidthM = wishes.leastWidthM ?? 0
  const costly = wishGround(wishes)
  const base = {
    weights,
    capM2,
    slabWidthM,
    grid: input.grid ?? [],
    wishes: costly,
    loads: input.loads ?? null,
    site: null,
    wished: wishedDirections(input, slab),
    along: hidingDirections(costly),
    forbidden: forbiddenGround(wishes),
  }
  const forbiddenAreas = wishes.forbiddenAreas ?? []
  const kept = faces.map(face => (face.areaM2 > capM2 ? keptWhole(face, forbiddenAreas, capM2) : 0))
  const groundsOf = (face: number) => {
    if (kept[face]! > 0) return []
    const free = { ...base, refuses: refusedIn(faces[face]!, 0) }
    return leastWidthM > 0 ? [{ ...base, refuses: refusedIn(faces[face]!, leastWidthM) }, free] : [free]
  }
  const atRest = fullBudget(asked, slab.rings.length - 1)
  const budget = typeof input.budget === 'number' ? input.budget : input.budget === 'small' ? quickBudget : atRest
  const { laneM } = input
  const inLanes = (): (FacePlan | null)[] =>
    faces.map((face, i) => {
      const [ground] = groundsOf(i)
      const rest = { areaM2: slab.areaM2 - face.areaM2, pours: shared - counts[i]! }
      const found = lanePlan(face, counts[i]!, laneDirections(base.wished, face), laneM!, {
        ...{ ...ground!, beside: fixed.joints, rest: faces.length === 1 ? { areaM2: 0, pours: 0 } : rest },
      })
      if (found.stopped) findings.push({ code: 'noLanes', severity: 'stop', values: { why: found.stopped }, at })
      return found.plan && { ...found.plan, ground: 0 }
    })
  const plans = laneM === undefined ? planFaces(faces, counts, fixed.joints, groundsOf, budget) : inLanes()
  for (const [i, plan] of plans.entries()) {
    if (laneM !== undefined) break
    const face = faces[i]!
    if (plan) continue
    const ground = groundsOf(i).at(-1)
    if (!ground) {
      const isFreed = ({ forbiddenAreas: rest = [] }: JointWishes) => keptWhole(face, rest, capM2) === 0
      findings.push(tellNoJointAllowed(slabId, face, capM2, kept[i]!, wishes, isFreed))
      continue
    }
    const splits = canSplit(face, counts[i]!, ground)
    findings.push(
      base.forbidden && splits({})
        ? tellNoJointAllowed(slabId, face, capM2, 0, wishes, splits)
        : { code: 'noCutFound', severity: 'stop', values: { capM2, areaM2: face.areaM2 }, at },
    )
  }
  if (faces.length === 1 && !plans[0]) {
    const whole = wholeSlab(input, lowerBound, findings)
    return () => whole
  }
  const found = plans.map((plan, i): CutTree => plan?.tree ?? { pour: faces[i]! })
  const describe = (trees: readonly CutTree[], site: SiteGround | null): Proposal => {
    // Fixed joints are numbered first, then those of each face.
    const joints: JointLine[] = [...fixed.joints]
    const pours = trees.flatMap(tree => {
      const first = joints.length
      joints.push(...jointsOf(tree))
      const numberOf = (joint: number): number => (joint >= firstFixed ? joint - firstFixed : first + joint)
      return leavesOf(tree).map(cut => ({ cut, numberOf }))
    })
    const pourCount = pours.length
    const told = [...findings]
    if (plans.some(plan => plan && plan.ground > 0))
      told.push(
        ...tellNarrow(
          slabId,
          pours.map(({ cut }) => cut),
          leastWidthM,
        ),
      )
    if (pourCount > asked && (fixed.joints.length > 0 || base.forbidden || leastWidthM > 0))
      told.push({
        code: 'wishesAddPours',
        severity: 'note',
        values: { pours: pourCount, needed: asked },
        at,
      })
    const context: CostContext = { ...base, site, meanM2: slab.areaM2 / pourCount }
    const terms = noCost()
    const ownTerms = pours.map(({ cut }) => {
      const own = noCost()
      addPourCost(cut, context, own)
      for (const term of Object.keys(own) as (keyof CostTerms)[]) terms[term] += own[term]
      return own
    })
    const all = {
      ...terms,
      extraJoint: weights.extraJoint * (joints.length - pours.length + 1),
      teeOffset: teeCost(joints, weights),
      extraPour: weights.extraPour * (pourCount - lowerBound),
    }
    const cost = listTerms(all)
    let totalCost = 0
    for (const { value } of cost) totalCost += value
    const comparable = totalCost - all.extraPour - all.shadeLine - all.mixedPlacing
    // How pours asked for beyond the need are shared out among faces is not proven.
    let bound = weights.extraJoint * (fixed.joints.length - faces.length + 1)
    for (const plan of plans) bound += plan ? plan.bound : 0
    const needed = faces.reduce((sum, { areaM2 }) => sum + poursNeeded(areaM2, capM2), 0)
    const isBounded = faces.length === 1 || (shared === needed && pourCount === shared)
    const gap = comparable > bound + 1e-6 ? (comparable - bound) / comparable : 0
    return {
      pours: pours.map(({ cut, numberOf }, i) => ({
        ...describePour(
          cut,
          toCurveRegion(cut, joint => `joint-${numberOf(joint) + 1}`),
        ),
        cost: listTerms(ownTerms[i]!).filter(({ value }) => value !== 0),
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
      proven: gap === 0 && isBounded && !plans.includes(null),
      gap,
      findings: told,
    }
  }
  const bare = describe(found, null)
  return site => {
    if (!site) return bare
    if (laneM !== undefined) return describe(found, site)
    const trees = found.map((tree, i) => {
      const plan = plans[i]
      return plan ? settleOnSite([tree, ...onSite(i, plan, site)], plan.context, site) : tree
    })
    const settled = describe(trees, site)
    const isSame = trees.every((tree, i) => tree === found[i])
    return isSame ? keepRegions(settled, bare) : settled
  }

  /** A quick plan that looks at the site, along the shade line where no edge of the slab runs that way. */
  function onSite(face: number, plan: FacePlan, site: SiteGround): CutTree[] {
    if (faces.length > 1 || plan.pourCount < 2 || plan.pourCount > mostOnSite) return []
    const line = site.shadeLine
    const along = line && offBox(line, slab) > leastTurnRad ? [line, { ux: -line.uy, uy: line.ux }] : []
    const wished = [...base.wished, ...along]
    const ground = { ...groundsOf(face)[plan.ground]!, site, wished, beside: [], rest: { areaM2: 0, pours: 0 } }
    const other = searchPlan(slab, plan.pourCount, ground, onSiteBudget)
    return other?.pourCount === plan.pourCount ? [other.tree] : []
  }
}
