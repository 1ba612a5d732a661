/** Hatches as plain lines, so that every viewer and printer draws the same: no pattern fills. */
import { drawPath, moveLine, num, type XY } from './svgPen'

export interface LineHatch {
  readonly kind: 'lines'
  /** Counter-clockwise from paper-right. */
  readonly anglesDeg: readonly number[]
  readonly spacingPt: number
  readonly widthPt: number
  /** Every n-th line is left out, for a doubled line. */
  readonly skipEvery?: number
}

export interface DotHatch {
  readonly kind: 'dots'
  readonly spacingPt: number
  readonly radiusPt: number
}

export type Hatch = LineHatch | DotHatch

/** Even-odd inside runs of the horizontal line at `y`, as sorted pairs of x. */
function insideRuns(rings: readonly (readonly XY[])[], y: number): [number, number][] {
  const crossings: number[] = []
  for (const ring of rings) {
    let [px, py] = ring.at(-1) ?? [0, 0]
    for (const [x, yy] of ring) {
      if (py > y !== yy > y) crossings.push(px + ((y - py) / (yy - py)) * (x - px))
      px = x
      py = yy
    }
  }
  crossings.sort((a, b) => a - b)
  const runs: [number, number][] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) runs.push([crossings[i]!, crossings[i + 1]!])
  return runs
}

const turned = (points: readonly XY[], cos: number, sin: number): XY[] =>
  points.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos])

/**
 * Hatch lines inside a region given by its rings on the page (even-odd). Lines lie at whole multiples of the
 * spacing from the page's origin, so touching regions and neighboring sheets line up.
 */
export function hatchLines(
  rings: readonly (readonly XY[])[],
  angleDeg: number,
  spacingPt: number,
  skipEvery = 0,
): (readonly [XY, XY])[] {
  const a = (angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(a), Math.sin(a)]
  // Page y runs down, so a counter-clockwise angle on paper is undone by turning the other way round.
  const flat = rings.map(ring => turned(ring, cos, sin))
  const ys = flat.flat().map(p => p[1])
  if (ys.length === 0) return []
  const lines: (readonly [XY, XY])[] = []
  const last = Math.floor(ys.reduce((m, y) => Math.max(m, y)) / spacingPt)
  for (let k = Math.ceil(ys.reduce((m, y) => Math.min(m, y)) / spacingPt); k <= last; k++) {
    if (skipEvery > 0 && ((k % skipEvery) + skipEvery) % skipEvery === 0) continue
    for (const [x0, x1] of insideRuns(flat, k * spacingPt)) {
      const [p, q] = turned(
        [
          [x0, k * spacingPt],
          [x1, k * spacingPt],
        ],
        cos,
        -sin,
      )
      lines.push([p!, q!])
    }
  }
  return lines
}

/** Staggered dots inside a region. */
export function hatchDots(rings: readonly (readonly XY[])[], spacingPt: number): XY[] {
  const ys = rings.flat().map(p => p[1])
  if (ys.length === 0) return []
  const dots: XY[] = []
  const row = spacingPt / 2
  const last = Math.floor(ys.reduce((m, y) => Math.max(m, y)) / row)
  for (let k = Math.ceil(ys.reduce((m, y) => Math.min(m, y)) / row); k <= last; k++) {
    const shift = k % 2 === 0 ? 0 : row
    for (const [x0, x1] of insideRuns(rings, k * row))
      for (let i = Math.ceil((x0 - shift) / spacingPt); i * spacingPt + shift <= x1; i++)
        dots.push([i * spacingPt + shift, k * row])
  }
  return dots
}

/** The hatch of a region as SVG. */
export function drawHatch(rings: readonly (readonly XY[])[], hatch: Hatch, color: string): string {
  if (hatch.kind === 'dots')
    return drawPath(
      hatchDots(rings, hatch.spacingPt)
        .map(([x, y]) => `M${num(x)} ${num(y)}h.01`)
        .join(''),
      { stroke: color, width: 2 * hatch.radiusPt, cap: 'round' },
    )
  const d = hatch.anglesDeg
    .flatMap(angle => hatchLines(rings, angle, hatch.spacingPt, hatch.skipEvery))
    .map(([a, b]) => moveLine(a, b))
    .join('')
  return drawPath(d, { stroke: color, width: hatch.widthPt })
}
