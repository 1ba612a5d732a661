/** What must hold for every split, whatever the slab. */
import { expect } from 'vitest'
import type { CurveEdge, CurveRegion } from '../../core/geometry/curve'
import type { Proposal } from '../../core/pours/proposal'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { sidesBound } from '../../core/pours/search/sidesBound'
import { resolveWeights } from '../../core/pours/weights'
import { edgeLength, regionArea, regionPerimeter, ringArea } from './curveMeasures'

const ftM = 0.3048

export function checkProposal(slab: CurveRegion, capM2: number, proposal: Proposal, label: string): void {
  const faults = proposal.findings.map(f => f.code as string)
  const must = (holds: boolean, what: string): void => {
    if (!holds) faults.push(what)
  }
  const area = regionArea(slab)
  const { pours, joints } = proposal
  let sum = 0
  let perimeters = 0
  for (const [p, pour] of pours.entries()) {
    const own = regionArea(pour.region)
    must(Math.abs(own - pour.areaM2) <= 1e-9 * area, `pour ${p}: ${pour.areaM2} m² is not the ${own} m² of its edges`)
    must(own <= capM2 * (1 + 1e-9), `pour ${p}: ${own} m² is over the cap`)
    must(ringArea(pour.region.outer) > 0, `pour ${p}: outer ring clockwise`)
    must(
      pour.region.holes.every(hole => ringArea(hole) < 0),
      `pour ${p}: hole counter-clockwise`,
    )
    for (const ring of [pour.region.outer, ...pour.region.holes])
      ring.forEach((edge, i) => {
        const next = ring[(i + 1) % ring.length]!.from
        must(
          edge.to[0] === next[0] && edge.to[1] === next[1],
          `pour ${p}: edge ${i} does not end where the next begins`,
        )
      })
    sum += own
    perimeters += regionPerimeter(pour.region)
  }
  must(Math.abs(sum - area) <= 1e-9 * area, `pours make ${sum} m² of ${area}`)
  must(joints.length >= pours.length - 1, `${joints.length} joints for ${pours.length} pours`)
  const jointM = joints.reduce((total, joint) => total + joint.lengthM, 0)
  must(
    Math.abs(jointM - (perimeters - regionPerimeter(slab)) / 2) <= 1e-8 * perimeters,
    `joints of ${jointM} m against perimeters`,
  )
  must(
    joints.every(joint => joint.pours.length >= 2),
    'a joint with one pour',
  )
  // Arcs stay arcs: pieces of the slab's own, on the same circle.
  const arcs = new Map<string, NonNullable<CurveEdge['arc']>>()
  for (const ring of [slab.outer, ...slab.holes]) for (const { edgeId, arc } of ring) if (arc) arcs.set(edgeId, arc)
  for (const pour of pours)
    for (const ring of [pour.region.outer, ...pour.region.holes])
      for (const { edgeId, from, to, arc } of ring) {
        const own = arcs.get(edgeId)
        must(!arc === !own, `edge ${edgeId} is ${arc ? 'an arc' : 'straight'}`)
        if (!arc || !own) continue
        must(arc.center[0] === own.center[0] && arc.center[1] === own.center[1], `arc ${edgeId} has moved`)
        must(arc.radiusM === own.radiusM, `arc ${edgeId} has another radius`)
        must(arc.sweepRad > 0 === own.sweepRad > 0, `arc ${edgeId} runs backwards`)
        for (const [x, y] of [from, to])
          must(
            Math.abs(Math.hypot(x - arc.center[0], y - arc.center[1]) - arc.radiusM) < 1e-9 * (1 + perimeters),
            `arc ${edgeId} ends off its circle`,
          )
      }
  // Each slab edge is shared out among the pours without loss.
  const left = new Map<string, number>()
  for (const ring of [slab.outer, ...slab.holes])
    for (const edge of ring) left.set(edge.edgeId, (left.get(edge.edgeId) ?? 0) + edgeLength(edge))
  for (const pour of pours)
    for (const ring of [pour.region.outer, ...pour.region.holes])
      for (const edge of ring) {
        if (edge.edgeId.startsWith('joint-')) continue
        must(left.has(edge.edgeId), `edge id ${edge.edgeId} is not the slab's`)
        left.set(edge.edgeId, left.get(edge.edgeId)! - edgeLength(edge))
      }
  for (const [id, rest] of left) must(Math.abs(rest) < 1e-8 * perimeters, `edge ${id} lacks ${rest} m`)
  const weights = resolveWeights(undefined)
  const context = { weights, capM2, meanM2: area / pours.length }
  const ofSides = new Set(['jointLength', 'imbalance', 'extraJoint', 'holeInside'])
  const paid = proposal.cost.reduce((total, { term, value }) => total + (ofSides.has(term) ? value : 0), 0)
  // A split that stopped is no plan: it is checked without a cap and has nothing to be held to.
  const isPlan = pours.length > 1 && Number.isFinite(capM2)
  const bound = !isPlan ? 0 : sidesBound(toCutRegion(slab), pours.length, 1 / ftM, context)
  must(paid >= bound - 1e-6, `joints and shares cost ${paid} ft, less than the ${bound} ft no plan can do without`)
  const cost = proposal.cost.reduce((total, { value }) => total + value, 0)
  must(Math.abs(cost - proposal.totalCost) < 1e-6, `terms make ${cost}, not ${proposal.totalCost}`)
  expect(faults, label).toEqual([])
}
