/** What must hold of the joints whatever was wished: measured from the outside, point by point. */
import { expect } from 'vitest'
import { distanceToEdge, regionContains, ringContains } from '../../core/geometry/contains'
import type { CurveRegion } from '../../core/geometry/curve'
import type { Proposal } from '../../core/pours/proposal'
import type { JointWishes } from '../../core/pours/wishes/jointWishes'
import type { Pt } from '../../shared/document/primitives'
import { flatRing } from './curveMeasures'

const stepM = 0.05

interface Line {
  readonly from: Pt
  readonly to: Pt
}

function pointsOn({ from, to }: Line): Pt[] {
  const count = Math.max(2, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / stepM))
  return Array.from({ length: count - 1 }, (_, i): Pt => {
    const t = (i + 1) / count
    return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]
  })
}

const distanceToLine = (p: Pt, line: Line): number => distanceToEdge({ edgeId: '', ...line }, p)

/** Millimeters within which a point may lie in or out. */
const rimM = 2e-3

export function checkWishes(slab: CurveRegion, wishes: JointWishes, proposal: Proposal, label: string): void {
  const faults: string[] = []
  const rim = [slab.outer, ...slab.holes].flat()
  const { joints, findings } = proposal
  const missed = new Set(findings.filter(f => f.code === 'requiredMisses').map(f => f.at!.entityId))
  for (const line of wishes.required ?? []) {
    const inside = pointsOn(line).filter(
      p => regionContains(slab, p) && rim.every(edge => distanceToEdge(edge, p) > rimM),
    )
    const off = inside.filter(p => joints.every(joint => distanceToLine(p, joint) > 1e-6))
    if (off.length > 0) faults.push(`${line.id}: ${off.length} of ${inside.length} points have no joint`)
    if (missed.has(line.id) && inside.length > 0) faults.push(`${line.id}: told as missing the slab`)
  }
  for (const joint of joints.filter(({ wishId }) => wishId === undefined)) {
    const points = [joint.from, ...pointsOn(joint), joint.to]
    for (const { id, ring } of wishes.forbiddenAreas ?? [])
      if (points.some(p => ringContains(ring, p) && ring.every(edge => distanceToEdge(edge, p) > rimM)))
        faults.push(`a joint inside ${id}`)
    for (const { id, line } of wishes.forbiddenLines ?? [])
      for (let i = 1; i < line.length; i++) {
        const piece = { from: line[i - 1]!, to: line[i]! }
        if ([...points].some(p => distanceToLine(p, piece) < 0.1524 - rimM)) faults.push(`a joint on ${id}`)
      }
  }
  const { leastWidthM = 0 } = wishes
  const isTold = findings.some(({ code, severity }) => code === 'narrowerThanWished' || severity === 'stop')
  if (!isTold && proposal.pours.length > 1)
    for (const [i, { region }] of proposal.pours.entries()) {
      const width = boxWidth(flatRing(region.outer, 8))
      if (width < leastWidthM - 1e-3) faults.push(`pour ${i} is ${width} m wide, not ${leastWidthM}`)
    }
  expect(faults, label).toEqual([])
}

/** The shorter side of the least rectangle along a side of the shape, by trying every side. */
function boxWidth(points: readonly Pt[]): number {
  let least = Number.POSITIVE_INFINITY
  let width = 0
  points.forEach(([x, y], i) => {
    for (const [qx, qy] of points.slice(i + 1)) {
      const length = Math.hypot(qx - x, qy - y)
      if (length < 1e-6) continue
      const [ux, uy] = [(qx - x) / length, (qy - y) / length]
      const along = points.map(([px, py]) => px * ux + py * uy)
      const across = points.map(([px, py]) => -px * uy + py * ux)
      const wide = [along, across].map(list => Math.max(...list) - Math.min(...list))
      if (wide[0]! * wide[1]! < least) {
        least = wide[0]! * wide[1]!
        width = Math.min(...wide)
      }
    }
  })
  return width
}
