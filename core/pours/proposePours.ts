/** The split of a region into pours that a crew can stamp, at the least cost of joints. */

import type { Pt } from '../../shared/document/primitives'
import { limits } from '../../shared/limits'
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import { addPourCost, type CostContext, type GridLines, noCost } from './pourCost'
import { type CutRegion, toCurveRegion, toCutRegion } from './region/cutRegion'
import { minCorner } from './region/minCorner'
import { minimumBox } from './region/minimumBox'
import { jointsOf, leavesOf } from './search/cutTree'
import { type Direction, poursNeeded } from './search/searchContext'
import { quickBudget, searchPlan } from './search/searchPlan'
import { teeCost } from './search/teeCost'
import { resolveWeights, type Weights } from './weights'

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
}

export interface ProposedPour {
  readonly region: CurveRegion
  readonly areaM2: number
  /** Length ÷ width of the least rectangle around the pour. */
  readonly aspect: number
  /** Sharpest true corner; null where the pour has none. */
  readonly minCornerDeg: number | null
}

export interface ProposedJoint {
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
  /** Indices of the pours along it. */
  readonly pours: readonly number[]
}

export interface Proposal {
  readonly pours: readonly ProposedPour[]
  readonly joints: readonly ProposedJoint[]
  /** Fewest pours the area needs. */
  readonly lowerBound: number
  /** Feet of joint by term of the weight table; they sum to totalCost. */
  readonly cost: readonly { readonly term: string; readonly value: number }[]
  readonly totalCost: number
  /** True when no plan made of the candidate cuts is cheaper. */
  readonly proven: boolean
  /** How far the plan may be above the cheapest, as a share of its cost; 0 when proven. */
  readonly gap: number
  readonly findings: readonly Finding[]
}

/** Many pours are given more: each of them is looked at. */
const fullBudget = (pours: number): number => Math.max(1_500_000, 35_000 * pours)
/** A pour smaller than 4 ft × 4 ft takes no mat with a finisher beside it (m²): common practice, no source. */
export const smallestPourM2 = 1.2192 * 1.2192

function wishedDirections(input: SplitInput, slab: CutRegion): Direction[] {
  const at = (deg: number): Direction => ({ ux: Math.cos((deg * Math.PI) / 180), uy: Math.sin((deg * Math.PI) / 180) })
  if (input.directions === 'any') {
    const box = minimumBox(slab.rings[0]!)
    const base = input.patternDeg ?? (Math.atan2(box.uy, box.ux) * 180) / Math.PI
    return Array.from({ length: 12 }, (_, i) => at(base + 15 * i))
  }
  return input.patternDeg === undefined ? [] : [at(input.patternDeg), at(input.patternDeg + 90)]
}

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

/**
 * Splits a region into connected pours of at most `capM2` by straight joints across it. The same input gives the same
 * answer on any machine. When no split is found the whole region comes back as one pour with a stop-finding.
 */
export function proposePours(input: SplitInput): Proposal {
  const slab = toCutRegion(input.region)
  const at = { entityId: input.slabId }
  const lowerBound = poursNeeded(slab.areaM2, input.capM2)
  if (slab.areaM2 > input.capM2 && (input.capM2 < smallestPourM2 || lowerBound > limits.pours))
    return wholeSlab(input, lowerBound, [
      {
        code: 'capacityTooSmall',
        severity: 'stop',
        values: {
          capM2: input.capM2,
          leastM2: Math.max(smallestPourM2, slab.areaM2 / limits.pours),
        },
        field: '/capacity/capM2',
        at,
      },
    ])
  const findings: Finding[] = []
  const asked = Math.max(lowerBound, input.pourCount ?? 0)
  if (input.pourCount !== undefined && input.pourCount < lowerBound)
    findings.push({
      code: 'tooFewPours',
      severity: 'check',
      values: { asked: input.pourCount, needed: lowerBound, capM2: input.capM2 },
      at,
    })
  const base: Omit<CostContext, 'meanM2'> = {
    weights: resolveWeights(input.weights),
    capM2: input.capM2,
    slabWidthM: (2 * slab.areaM2) / slab.perimeterM,
    grid: input.grid ?? [],
  }
  const budget =
    typeof input.budget === 'number' ? input.budget : input.budget === 'small' ? quickBudget : fullBudget(asked)
  const plan = searchPlan(slab, asked, base, wishedDirections(input, slab), budget, null)
  if (!plan)
    return wholeSlab(input, lowerBound, [
      ...findings,
      { code: 'noCutFound', severity: 'stop', values: { capM2: input.capM2, areaM2: slab.areaM2 }, at },
    ])
  const { tree, pourCount } = plan
  const pours = leavesOf(tree)
  const joints = jointsOf(tree)
  const context: CostContext = { ...base, meanM2: slab.areaM2 / pourCount }
  const terms = noCost()
  for (const pour of pours) addPourCost(pour, context, terms)
  const all = {
    ...terms,
    extraJoint: context.weights.extraJoint * (joints.length - pours.length + 1),
    teeOffset: teeCost(joints, context.weights),
    extraPour: context.weights.extraPour * (pourCount - lowerBound),
  }
  const cost = Object.entries(all).map(([term, value]) => ({ term, value }))
  let totalCost = 0
  for (const { value } of cost) totalCost += value
  const comparable = totalCost - all.extraPour
  const gap = comparable > plan.bound + 1e-6 ? (comparable - plan.bound) / comparable : 0
  return {
    pours: pours.map(pour =>
      describePour(
        pour,
        toCurveRegion(pour, joint => `joint-${joint + 1}`),
      ),
    ),
    joints: joints.map((joint, i) => ({
      from: [joint.ax, joint.ay],
      to: [joint.bx, joint.by],
      lengthM: joint.lengthM,
      pours: pours.flatMap((pour, p) => (pour.rings.some(r => r.sides.some(s => s.joint === i)) ? [p] : [])),
    })),
    lowerBound,
    cost,
    totalCost,
    proven: gap === 0,
    gap,
    findings,
  }
}
