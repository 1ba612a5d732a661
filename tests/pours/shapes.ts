/** Named slabs for the pour tests, in feet, turned into meters. */

import type { CurveEdge, CurveRegion, CurveRing } from '../../core/geometry/curve'
import type { Pt } from '../../shared/document/primitives'

const ftM = 0.3048
export const ft2M2 = ftM * ftM

type Corner = readonly [xFt: number, yFt: number]

let counter = 0
const edgeId = (): string => `e${++counter}`

export function polygon(corners: readonly Corner[]): CurveRing {
  const at = (i: number): Pt => {
    const [x, y] = corners[i % corners.length]!
    return [x * ftM, y * ftM]
  }
  return corners.map((_, i) => ({ edgeId: edgeId(), from: at(i), to: at(i + 1) }))
}

export const rectangle = (x: number, y: number, w: number, h: number): CurveRing =>
  polygon([
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ])

export const reversed = (ring: CurveRing): CurveRing =>
  [...ring].reverse().map(e => ({
    edgeId: e.edgeId,
    from: e.to,
    to: e.from,
    ...(e.arc ? { arc: { ...e.arc, sweepRad: -e.arc.sweepRad } } : {}),
  }))

export const planter = (x: number, y: number, w: number, h: number): CurveRing => reversed(rectangle(x, y, w, h))

/** A circle of two half-turn arcs, counter-clockwise. */
export function circle(xFt: number, yFt: number, rFt: number): CurveRing {
  const center: Pt = [xFt * ftM, yFt * ftM]
  const radiusM = rFt * ftM
  const east: Pt = [center[0] + radiusM, center[1]]
  const west: Pt = [center[0] - radiusM, center[1]]
  const arc = { center, radiusM, sweepRad: Math.PI }
  return [
    { edgeId: edgeId(), from: east, to: west, arc },
    { edgeId: edgeId(), from: west, to: east, arc },
  ]
}

/** A ring of arcs and lines given by points and, for each edge, the turn of its arc (0 = straight). */
export function arcPath(points: readonly (readonly [xFt: number, yFt: number, sweepRad: number])[]): CurveRing {
  return points.map(([x, y, sweepRad], i): CurveEdge => {
    const [nx, ny] = points[(i + 1) % points.length]!
    const from: Pt = [x * ftM, y * ftM]
    const to: Pt = [nx * ftM, ny * ftM]
    if (sweepRad === 0) return { edgeId: edgeId(), from, to }
    const half = 1 / (2 * Math.tan(sweepRad / 2))
    const center: Pt = [
      (from[0] + to[0]) / 2 - (to[1] - from[1]) * half,
      (from[1] + to[1]) / 2 + (to[0] - from[0]) * half,
    ]
    return {
      edgeId: edgeId(),
      from,
      to,
      arc: { center, radiusM: Math.hypot(from[0] - center[0], from[1] - center[1]), sweepRad },
    }
  })
}

export const region = (outer: CurveRing, ...holes: CurveRing[]): CurveRegion => ({ outer, holes })

export interface NamedSlab {
  readonly name: string
  readonly region: CurveRegion
}

const court = (): CurveRegion =>
  region(
    rectangle(0, 0, 120, 100),
    planter(20, 20, 8, 8),
    planter(92, 20, 8, 8),
    planter(20, 72, 8, 8),
    planter(92, 72, 8, 8),
  )

const plaza = (): CurveRegion => {
  const planters: CurveRing[] = []
  for (let i = 0; i < 4; i++) for (let j = 0; j < 3; j++) planters.push(planter(30 + 55 * i, 30 + 60 * j, 10, 10))
  return region(rectangle(0, 0, 250, 205), ...planters)
}

export const namedSlabs = (): NamedSlab[] => [
  { name: 'rectangle 60 × 40', region: region(rectangle(0, 0, 60, 40)) },
  {
    name: 'L 1,588',
    region: region(
      polygon([
        [0, 0],
        [46, 0],
        [46, 22],
        [26, 22],
        [26, 48.8],
        [0, 48.8],
      ]),
    ),
  },
  {
    name: 'U',
    region: region(
      polygon([
        [0, 0],
        [70, 0],
        [70, 50],
        [50, 50],
        [50, 13],
        [20, 13],
        [20, 50],
        [0, 50],
      ]),
    ),
  },
  {
    name: 'T',
    region: region(
      polygon([
        [0, 30],
        [20, 30],
        [20, 0],
        [44, 0],
        [44, 30],
        [64, 30],
        [64, 54],
        [0, 54],
      ]),
    ),
  },
  {
    name: 'plus',
    region: region(
      polygon([
        [28, 0],
        [56, 0],
        [56, 28],
        [84, 28],
        [84, 56],
        [56, 56],
        [56, 84],
        [28, 84],
        [28, 56],
        [0, 56],
        [0, 28],
        [28, 28],
      ]),
    ),
  },
  { name: 'round court', region: region(circle(0, 0, 25)) },
  { name: 'ring around a pool', region: region(rectangle(0, 0, 60, 44), planter(18, 12, 24, 18)) },
  {
    name: 'kidney',
    region: region(
      arcPath([
        [0, 0, 2.6],
        [40, 0, -1.2],
        [60, 8, 2.8],
        [66, 40, 1.4],
        [0, 36, 1.2],
      ]),
      reversed(
        arcPath([
          [18, 12, 2.4],
          [44, 14, 2.2],
          [40, 26, 1.5],
        ]),
      ),
    ),
  },
  {
    name: 'bent walk',
    region: region(
      polygon([
        [0, 0],
        [120, 0],
        [200, 80],
        [260, 80],
        [260, 84],
        [198.3, 84],
        [118.3, 4],
        [0, 4],
      ]),
    ),
  },
  { name: 'court 12,000', region: court() },
  { name: 'plaza 50,000', region: plaza() },
]
