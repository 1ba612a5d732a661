import { closedPath, drawCircle, drawPath, drawText, ink, type XY } from './svgPen'

/** True north: `northDeg` is the clockwise angle from drawing-up. */
export function drawNorthArrow(center: XY, radius: number, northDeg: number): string {
  const a = (northDeg * Math.PI) / 180
  const at = (along: number, across: number): XY => [
    center[0] + along * Math.sin(a) + across * Math.cos(a),
    center[1] - along * Math.cos(a) + across * Math.sin(a),
  ]
  const letter = at(radius + 10, 0)
  return (
    drawCircle(center, radius, { stroke: ink, width: 0.9 }) +
    drawPath(closedPath([at(radius, 0), at(-radius * 0.75, radius * 0.5), at(-radius * 0.4, 0)]), { fill: ink }) +
    drawPath(closedPath([at(radius, 0), at(-radius * 0.75, -radius * 0.5), at(-radius * 0.4, 0)]), {
      fill: '#FFFFFF',
      stroke: ink,
      width: 0.9,
    }) +
    drawText('N', letter[0], letter[1] + 5, { sizePt: 14, face: 'planBold', anchor: 'middle' })
  )
}
