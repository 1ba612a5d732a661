/** The split of a region into pours that a crew can stamp, at the least cost of joints. */
import { describeSplit, describeWhole } from './describeSplit'
import { keepRegions, type Proposal, type SplitInput } from './proposal'
import { type CutRegion, toCutRegion } from './region/cutRegion'
import { minimumBox } from './region/minimumBox'
import type { CutTree } from './search/cutTree'
import { type Direction, poursNeeded } from './search/searchContext'
import { searchPlan } from './search/searchPlan'
import { settleOnSite } from './search/settleOnSite'
import type { SiteGround } from './siteGround'
import { splitFaces } from './splitFaces'
import { type SplitTask, splitTask } from './splitTask'
import type { FacePlan } from './wishes/planFaces'

/** Most pours for which a second plan is looked for on the site. */
const mostOnSite = 12
const onSiteBudget = 15_000
/** A shade line this close to the slab's box is tried anyway. */
const leastTurnRad = (3 * Math.PI) / 180

/** Angle between a direction and the nearest side of the slab's least box, radians. */
function offBox(line: Direction, slab: CutRegion): number {
  const { ux, uy } = minimumBox(slab.rings[0]!)
  const turned = Math.abs(Math.atan2(line.uy * ux - line.ux * uy, line.ux * ux + line.uy * uy)) % (Math.PI / 2)
  return Math.min(turned, Math.PI / 2 - turned)
}

/** A quick plan that looks at the site, along the shade line where no edge of the slab runs that way. */
function planOnSite(split: SplitTask, face: number, plan: FacePlan, site: SiteGround): CutTree[] {
  const { slab, fixed, base } = split
  if (fixed.faces.length > 1 || plan.pourCount < 2 || plan.pourCount > mostOnSite) return []
  const line = site.shadeLine
  const along = line && offBox(line, slab) > leastTurnRad ? [line, { ux: -line.uy, uy: line.ux }] : []
  const wished = [...base.wished, ...along]
  const ground = { ...split.groundsOf(face)[plan.ground]!, site, wished, beside: [], rest: { areaM2: 0, pours: 0 } }
  const other = searchPlan(slab, plan.pourCount, ground, onSiteBudget)
  return other?.pourCount === plan.pourCount ? [other.tree] : []
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
  const split = splitTask(input, slab)
  if ('code' in split) {
    const refused = describeWhole(input, slab, poursNeeded(slab.areaM2, input.capM2), [split])
    return () => refused
  }
  const { faces } = split.fixed
  const parts = splitFaces(split)
  const { plans } = parts
  if (faces.length === 1 && !plans[0]) {
    const whole = describeWhole(input, slab, split.lowerBound, [...split.findings, ...parts.findings])
    return () => whole
  }
  const found = plans.map((plan, i): CutTree => plan?.tree ?? { pour: faces[i]! })
  const bare = describeSplit(split, parts, found, null)
  return site => {
    if (!site) return bare
    if (input.laneM !== undefined) return describeSplit(split, parts, found, site)
    const trees = found.map((tree, i) => {
      const plan = plans[i]
      return plan ? settleOnSite([tree, ...planOnSite(split, i, plan, site)], plan.context, site) : tree
    })
    const settled = describeSplit(split, parts, trees, site)
    const isSame = trees.every((tree, i) => tree === found[i])
    return isSame ? keepRegions(settled, bare) : settled
  }
}
