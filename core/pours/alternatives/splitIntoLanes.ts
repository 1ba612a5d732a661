/** A split into continuous strips one strike-off wide, their ends in line from strip to strip. */
import type { CurveRegion } from '../../geometry/curve'
import { addPourCost, type CostContext, noCost } from '../pourCost'
import { pourShape } from '../pourShape'
import type { Proposal, ProposedJoint } from '../proposePours'
import { findChords } from '../region/chords'
import { type CutRegion, toCurveRegion, toCutRegion } from '../region/cutRegion'
import { extentOf, minimumBox } from '../region/minimumBox'
import { type Segment, traceFaces } from '../region/traceFaces'
import { poursNeeded } from '../search/searchContext'
import { resolveWeights } from '../weights'

/** More rows of ends tried where a strip's parts come out over the cap. */
const moreRows = 3
const capSlack = 1 + 1e-9

/** Segments of equally spaced lines along (ux, uy), the slab's rim left out. */
function parallels(slab: CutRegion, ux: number, uy: number, count: number, firstJoint: number): Segment[] {
  const [low, high] = extentOf(slab.rings[0]!, -uy, ux)
  const segments: Segment[] = []
  for (let i = 1; i < count; i++) {
    const offset = low + ((high - low) * i) / count
    for (const { a, b } of findChords(slab, ux, uy, offset, true, { done: 0 }, 'break'))
      segments.push({
        a: { x: a.x, y: a.y, on: a },
        b: { x: b.x, y: b.y, on: b },
        joint: firstJoint + segments.length,
      })
  }
  return segments
}

/** Each stretch of joint between two pours, once. */
function jointsBetween(pours: readonly CutRegion[]): ProposedJoint[] | null {
  const open = new Map<string, { readonly pour: number; readonly joint: ProposedJoint }>()
  const joints: ProposedJoint[] = []
  const nameOf = (x: number, y: number) => `${Math.round(x * 1e6)},${Math.round(y * 1e6)}`
  for (const [p, pour] of pours.entries())
    for (const ring of pour.rings)
      ring.sides.forEach((side, i) => {
        if (side.joint < 0) return
        const end = ring.sides[(i + 1) % ring.sides.length]!
        const lengthM = ring.length[i + 1]! - ring.length[i]!
        const [from, to] = [nameOf(side.x, side.y), nameOf(end.x, end.y)]
        const other = open.get(`${to} ${from}`)
        if (other) {
          open.delete(`${to} ${from}`)
          joints.push({ ...other.joint, pours: [other.pour, p] })
        } else
          open.set(`${from} ${to}`, {
            pour: p,
            joint: { from: [side.x, side.y], to: [end.x, end.y], lengthM, pours: [p] },
          })
      })
  return open.size === 0 ? joints : null
}

function tryRows(slab: CutRegion, lanes: number, rows: number, capM2: number): readonly CutRegion[] | null {
  const { ux, uy } = minimumBox(slab.rings[0]!)
  const along = parallels(slab, ux, uy, lanes, 0)
  const across = parallels(slab, -uy, ux, rows, along.length)
  const { faces } = traceFaces(slab, [...along, ...across])
  return faces.every(({ areaM2 }) => areaM2 <= capM2 * capSlack) ? faces : null
}

export interface LanesInput {
  readonly region: CurveRegion
  /** > 0 */
  readonly capM2: number
  /** Widest strip that one strike-off spans (m), > 0. */
  readonly strikeOffM: number
}

/**
 * Strips along the longer side of the least rectangle around the region. Null where a strip would be under 4 ft wide or
 * a piece of one too narrow to stamp: lanes do not suit such a slab. The cost terms are those of `proposePours`.
 */
export function splitIntoLanes({ region, capM2, strikeOffM }: LanesInput): Proposal | null {
  const slab = toCutRegion(region)
  const weights = resolveWeights(undefined)
  const box = minimumBox(slab.rings[0]!)
  const lanes = Math.max(1, Math.ceil(box.shortM / strikeOffM - 1e-9))
  const least = Math.max(1, Math.ceil((box.longM * box.shortM) / lanes / capM2 - 1e-9))
  let pours: readonly CutRegion[] | null = null
  for (let rows = least; !pours && rows <= least + moreRows; rows++) pours = tryRows(slab, lanes, rows, capM2)
  if (!pours || pours.some(pour => minimumBox(pour.rings[0]!).shortM < weights.narrowM)) return null
  const joints = jointsBetween(pours)
  if (!joints) return null
  const lowerBound = poursNeeded(slab.areaM2, capM2)
  const context: CostContext = {
    weights,
    capM2,
    meanM2: slab.areaM2 / pours.length,
    slabWidthM: (2 * slab.areaM2) / slab.perimeterM,
    grid: [],
    wishes: null,
    loads: null,
    site: null,
  }
  const terms = noCost()
  for (const pour of pours) addPourCost(pour, context, terms)
  const all = { ...terms, extraPour: weights.extraPour * (pours.length - lowerBound) }
  return {
    pours: pours.map(pour => {
      const shape = toCurveRegion(pour, joint => `joint-${joint + 1}`)
      return { region: shape, areaM2: pour.areaM2, ...pourShape(shape) }
    }),
    joints,
    lowerBound,
    cost: Object.entries(all).map(([term, value]) => ({ term, value })),
    totalCost: Object.values(all).reduce((sum, value) => sum + value, 0),
    proven: false,
    gap: 1,
    findings: [],
  }
}
