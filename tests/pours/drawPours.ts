/** A slab and its pours as a cell of a picture. */
import type { CurveRegion, CurveRing } from '../../core/geometry/curve'
import type { Proposal } from '../../core/pours/proposal'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { insidePoint } from '../../core/pours/region/insidePoint'
import { ft2M2 } from './shapes'

export const cellPx = 460
const tints = ['#f3d9c2', '#cfe3d4', '#d8d6ec', '#f2e7b6', '#d3e4ee', '#efcfd6', '#e2e2d2']

function pathOf(ring: CurveRing, at: (p: readonly [number, number]) => string, scale: number): string {
  const parts = ring.map((e, i) => {
    const start = i === 0 ? `M${at(e.from)}` : ''
    if (!e.arc) return `${start}L${at(e.to)}`
    const r = e.arc.radiusM * scale
    const halves = Math.abs(e.arc.sweepRad) > 3.1 ? [0.5, 1] : [1]
    const sweep = e.arc.sweepRad > 0 ? 0 : 1
    const angle = Math.atan2(e.from[1] - e.arc.center[1], e.from[0] - e.arc.center[0])
    return (
      start +
      halves
        .map(f => {
          const a = angle + e.arc!.sweepRad * f
          const p: [number, number] = [
            e.arc!.center[0] + e.arc!.radiusM * Math.cos(a),
            e.arc!.center[1] + e.arc!.radiusM * Math.sin(a),
          ]
          return `A${r} ${r} 0 0 ${sweep} ${at(p)}`
        })
        .join('')
    )
  })
  return `${parts.join('')}Z`
}

export function drawCell(name: string, slab: CurveRegion, proposal: Proposal): string {
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (const e of slab.outer) {
    const reach = e.arc ? 0.5 : 0
    x0 = Math.min(x0, e.from[0] - reach)
    y0 = Math.min(y0, e.from[1] - reach)
    x1 = Math.max(x1, e.from[0] + reach)
    y1 = Math.max(y1, e.from[1] + reach)
    if (e.arc) {
      const a = Math.atan2(e.from[1] - e.arc.center[1], e.from[0] - e.arc.center[0]) + e.arc.sweepRad / 2
      const mx = e.arc.center[0] + e.arc.radiusM * Math.cos(a)
      const my = e.arc.center[1] + e.arc.radiusM * Math.sin(a)
      x0 = Math.min(x0, mx)
      y0 = Math.min(y0, my)
      x1 = Math.max(x1, mx)
      y1 = Math.max(y1, my)
    }
  }
  const scale = Math.min((cellPx - 40) / (x1 - x0), (cellPx - 70) / (y1 - y0))
  const at = (p: readonly [number, number]): string => `${20 + (p[0] - x0) * scale} ${50 + (y1 - p[1]) * scale}`
  const pours = proposal.pours
    .map((p, i) => {
      const d = [p.region.outer, ...p.region.holes].map(r => pathOf(r, at, scale)).join('')
      const [x, y] = at(insidePoint(toCutRegion(p.region))).split(' ')
      const size = proposal.pours.length > 20 ? 8 : 11
      return `<path d="${d}" fill="${tints[i % tints.length]}" fill-rule="evenodd" stroke="#444" stroke-width="0.6"/><text x="${x}" y="${y}" font-size="${size}" text-anchor="middle">${Math.round(p.areaM2 / ft2M2)}</text>`
    })
    .join('')
  const joints = proposal.joints
    .map(j => {
      const [ax, ay] = at(j.from).split(' ')
      const [bx, by] = at(j.to).split(' ')
      return `<line x1="${ax}" y1="${ay}" x2="${bx}" y2="${by}" stroke="#b3261e" stroke-width="1.8"/>`
    })
    .join('')
  const length = proposal.joints.reduce((sum, j) => sum + j.lengthM, 0) / 0.3048
  const worst = Math.max(...proposal.pours.map(p => p.aspect))
  const sharp = Math.min(...proposal.pours.map(p => p.minCornerDeg ?? 180))
  return `<rect x="2" y="2" width="${cellPx - 4}" height="${cellPx - 4}" fill="#fff" stroke="#bbb"/><text x="12" y="22" font-size="14" font-weight="bold">${name}</text><text x="12" y="38" font-size="11">${proposal.pours.length} pours (least ${proposal.lowerBound}), joint ${length.toFixed(0)} ft, cost ${proposal.totalCost.toFixed(0)}, aspect ${worst.toFixed(1)}, ${sharp.toFixed(0)}°, gap ${(100 * proposal.gap).toFixed(1)} %</text>${pours}${joints}`
}
