/** Furniture in plan view: plain shapes at scale, the same on the screen and on paper. */
import type { Pt } from '../../shared/document/primitives'
import type { Furnishing } from '../../shared/document/shown'

export interface FurnishingShape {
  /** Filled, then stroked. */
  readonly body: readonly Pt[]
  /** Fine lines over it. */
  readonly details: readonly (readonly Pt[])[]
}

type Drawn = { readonly body: readonly Pt[]; readonly details: readonly (readonly Pt[])[] }

/** In halves of the width and of the depth: −1 … 1 both ways, the front up. */
const box = (u0: number, v0: number, u1: number, v1: number): readonly Pt[] => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]
const closed = (points: readonly Pt[]): readonly Pt[] => [...points, points[0]!]
const round = (radius: number, steps = 32): readonly Pt[] =>
  Array.from({ length: steps }, (_, i): Pt => {
    const angle = (2 * Math.PI * i) / steps
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })
/** A box whose corners are cut by `cut` of the half sides. */
const cutBox = (u: number, v: number, cutU: number, cutV: number): readonly Pt[] => [
  [-u + cutU, -v],
  [u - cutU, -v],
  [u, -v + cutV],
  [u, v - cutV],
  [u - cutU, v],
  [-u + cutU, v],
  [-u, v - cutV],
  [-u, -v + cutV],
]

const drawings: Readonly<Record<Furnishing['kind'], Drawn>> = {
  chair: {
    body: cutBox(1, 1, 0.3, 0.3),
    details: [
      [
        [-0.9, -0.62],
        [0.9, -0.62],
      ],
      [
        [-0.66, -0.62],
        [-0.66, 0.86],
      ],
      [
        [0.66, -0.62],
        [0.66, 0.86],
      ],
    ],
  },
  lounge: {
    body: cutBox(1, 1, 0.25, 0.09),
    details: [-0.45, 0.02, 0.5].map(v => [
      [-1, v],
      [1, v],
    ]),
  },
  table: {
    body: cutBox(1, 1, 0.06, 0.12),
    details: [
      [
        [-1, -0.34],
        [1, -0.34],
      ],
      [
        [-1, 0.34],
        [1, 0.34],
      ],
    ],
  },
  roundTable: { body: round(1, 48), details: [closed(round(0.12, 16))] },
  grill: {
    body: box(-1, -1, 1, 1),
    details: [
      closed(box(-0.55, -0.86, 0.55, 0.86)),
      ...[-0.3, -0.1, 0.1, 0.3].map((u): readonly Pt[] => [
        [u, -0.7],
        [u, 0.7],
      ]),
    ],
  },
  car: {
    body: cutBox(0.9, 1, 0.34, 0.14),
    details: [
      [
        [-0.68, 0.34],
        [-0.56, 0.08],
        [0.56, 0.08],
        [0.68, 0.34],
        [-0.68, 0.34],
      ],
      [
        [-0.64, -0.72],
        [-0.54, -0.52],
        [0.54, -0.52],
        [0.64, -0.72],
        [-0.64, -0.72],
      ],
      [
        [-0.9, 0.22],
        [-1, 0.16],
      ],
      [
        [0.9, 0.22],
        [1, 0.16],
      ],
    ],
  },
}

/** Drawing-frame meters. */
export function furnishingShape({ kind, at, turnDeg, widthM, depthM }: Furnishing): FurnishingShape {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)]
  const place = ([u, v]: Pt): Pt => {
    const [x, y] = [(u * widthM) / 2, (v * depthM) / 2]
    return [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]
  }
  const { body, details } = drawings[kind]
  return { body: body.map(place), details: details.map(line => line.map(place)) }
}
