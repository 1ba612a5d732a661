/** What stands around the slab, in quiet colors, for a drawing that a client keeps. */
import { crownPaths } from '../drawCasters'
import { type Frame, ringToPage, toPage } from '../frame'
import { drawHatch } from '../hatch'
import type { SheetCaster } from '../sheetData'
import { closedPath, drawCircle, drawPath, num, openPath } from '../svgPen'

const house = { fill: '#DDD2C1', line: '#BDAF9A', edge: '#3B352D' }
const leaf = { fill: '#C3D3BC', edge: '#4B6A48' }
const timber = '#5A4A3A'

export function drawClientCaster(caster: SheetCaster, frame: Frame): string {
  const { shape } = caster
  if (shape.form === 'circle') {
    const center = toPage(frame, shape.center)
    const { edge, twigs } = crownPaths(center, shape.radiusM * frame.ptPerM)
    return (
      drawPath(edge, { fill: leaf.fill, fillOpacity: 0.72, stroke: leaf.edge, width: 1 }) +
      drawPath(twigs, { stroke: leaf.edge, width: 0.6 }) +
      drawCircle(center, 3.2, { fill: leaf.edge })
    )
  }
  if (shape.form === 'line') {
    const points = shape.points.map(p => toPage(frame, p))
    return (
      drawPath(openPath(points), { stroke: timber, width: 2.2 }) +
      points.map(([x, y]) => drawPath(`M${num(x - 2.4)} ${num(y - 2.4)}h4.8v4.8h-4.8Z`, { fill: timber })).join('')
    )
  }
  const rings = shape.rings.map(ring => ringToPage(frame, ring))
  const d = rings.map(closedPath).join('')
  if (caster.kind === 'cover')
    return (
      drawHatch(rings, { kind: 'lines', anglesDeg: [90], spacingPt: 12, widthPt: 0.5 }, timber) +
      drawPath(d, { stroke: timber, width: 1.2, dash: '8 3' })
    )
  return (
    drawPath(d, { fill: house.fill, evenOdd: true }) +
    drawHatch(rings, { kind: 'lines', anglesDeg: [90], spacingPt: 10, widthPt: 0.5 }, house.line) +
    drawPath(d, { stroke: house.edge, width: 1.8 })
  )
}

/** Under the slab's edge, or over it. */
export const drawClientCasters = (casters: readonly SheetCaster[], frame: Frame, under: boolean): string =>
  casters
    .filter(({ kind }) => (kind === 'building' || kind === 'wall') === under)
    .map(caster => drawClientCaster(caster, frame))
    .join('')
