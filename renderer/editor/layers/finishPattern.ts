/** Stamped patterns as one repeating tile of stones, in meters: to scale, and the same on every screen. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'

export interface Stone {
  readonly points: readonly Pt[]
  /** −1 … 1: how much darker or lighter than the finish. */
  readonly tone: number
}

export interface PatternTile {
  readonly widthM: number
  readonly heightM: number
  readonly stones: readonly Stone[]
  /** Least distance between joints, for leaving them out when they would run together. */
  readonly jointM: number
}

/** Seeded, so that the same stone has the same tone every time. Source: mulberry32, T. Ettinger, 2017, public domain. */
function seeded(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const rectangle = (x: number, y: number, width: number, height: number): Pt[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

const foot = 0.3048

/** Rectangles of a module grid: [column, row, columns, rows]. The layout fills 6 × 6 modules and repeats. */
const ashlarLayout: readonly (readonly [number, number, number, number])[] = [
  [0, 0, 2, 2],
  [2, 0, 1, 1],
  [3, 0, 2, 1],
  [5, 0, 1, 2],
  [2, 1, 1, 2],
  [3, 1, 2, 2],
  [0, 2, 2, 1],
  [5, 2, 1, 1],
  [0, 3, 1, 2],
  [1, 3, 2, 2],
  [3, 3, 1, 1],
  [4, 3, 2, 2],
  [3, 4, 1, 2],
  [0, 5, 2, 1],
  [2, 5, 1, 1],
  [4, 5, 2, 1],
]

function ashlar(): PatternTile {
  const module = foot * 0.75
  const random = seeded(11)
  return {
    widthM: 6 * module,
    heightM: 6 * module,
    jointM: module,
    stones: ashlarLayout.map(([x, y, w, h]) => ({
      points: rectangle(x * module, y * module, w * module, h * module),
      tone: random() * 2 - 1,
    })),
  }
}

function courses(lengthM: number, heightM: number, rows: number, shiftOf: (row: number) => number, seed: number) {
  const random = seeded(seed)
  const columns = 3
  const widthM = columns * lengthM
  const stones: Stone[] = []
  for (let row = 0; row < rows; row++)
    for (let column = -1; column < columns; column++) {
      const x = column * lengthM + shiftOf(row) * lengthM
      if (x >= widthM - 1e-9 || x + lengthM <= 1e-9) continue
      stones.push({ points: rectangle(x, row * heightM, lengthM, heightM), tone: random() * 2 - 1 })
    }
  // A stone cut by the tile's side goes on at the other side with the same tone.
  const wrapped = stones.map(stone => {
    const beyond = stone.points[1]![0] > widthM + 1e-9
    if (!beyond) return stone
    const twin = stones.find(s => s.points[0]![1] === stone.points[0]![1] && s.points[0]![0] < -1e-9)
    return twin ? { ...stone, tone: twin.tone } : stone
  })
  return { widthM, heightM: rows * heightM, jointM: heightM, stones: wrapped }
}

/** The part of a convex polygon nearer to `a` than to `b`. */
function nearerPart(polygon: readonly Pt[], a: Pt, b: Pt): Pt[] {
  const side = ([x, y]: Pt): number => (x - (a[0] + b[0]) / 2) * (b[0] - a[0]) + (y - (a[1] + b[1]) / 2) * (b[1] - a[1])
  return polygon.flatMap((p, i): Pt[] => {
    const q = polygon[(i + 1) % polygon.length]!
    const [sp, sq] = [side(p), side(q)]
    const crossing: Pt[] =
      sp < 0 !== sq < 0 ? [[p[0] + ((q[0] - p[0]) * sp) / (sp - sq), p[1] + ((q[1] - p[1]) * sp) / (sp - sq)]] : []
    return sp < 0 ? [p, ...crossing] : crossing
  })
}

/**
 * A closed tile of irregular stones: what lies nearest to each of `cells`² points strewn about a grid, opposite sides
 * alike. `wander` 0 … 1 is how far a point may lie from its place, in cells.
 */
function irregular(cellM: number, cells: number, wander: number, seed: number): PatternTile {
  const random = seeded(seed)
  const sideM = cells * cellM
  const points = Array.from({ length: cells * cells }, (_, k): Pt => {
    const [column, row] = [k % cells, Math.floor(k / cells)]
    const shift = row % 2 === 0 ? 0.25 : 0.75
    return [(column + shift + (random() - 0.5) * wander) * cellM, (row + 0.5 + (random() - 0.5) * wander) * cellM]
  })
  const tones = points.map(() => random() * 2 - 1)
  const around = [-sideM, 0, sideM].flatMap(dx => [-sideM, 0, sideM].map(dy => [dx, dy] as const))
  const everywhere = points.flatMap((p, k) => around.map(([dx, dy]) => ({ at: [p[0] + dx, p[1] + dy] as Pt, k })))
  const reach = 2.6 * cellM
  const stones = everywhere.flatMap(({ at, k }): Stone[] => {
    const isInTile = at[0] > -cellM && at[0] < sideM + cellM && at[1] > -cellM && at[1] < sideM + cellM
    if (!isInTile) return []
    let polygon: Pt[] = rectangle(at[0] - reach, at[1] - reach, 2 * reach, 2 * reach)
    for (const other of everywhere) {
      const apart = Math.hypot(other.at[0] - at[0], other.at[1] - at[1])
      if (apart > 0 && apart < 2 * reach) polygon = nearerPart(polygon, at, other.at)
    }
    return [{ points: polygon, tone: tones[k]! }]
  })
  return { widthM: sideM, heightM: sideM, jointM: cellM, stones }
}

const tiles: Readonly<Partial<Record<Finish['pattern'], () => PatternTile>>> = {
  ashlar,
  runningBond: () => courses(foot * 0.67, foot * 0.33, 4, row => (row % 2) / 2, 5),
  plank: () => courses(foot * 4, foot * 0.5, 6, row => (row % 3) / 3, 7),
  flagstone: () => irregular(foot * 1.6, 6, 0.8, 3),
  cobble: () => irregular(foot * 0.42, 8, 0.3, 13),
  broom: () => courses(foot * 40, foot / 12, 4, () => 0, 1),
}

const made = new Map<Finish['pattern'], PatternTile | null>()

/** The tile of a pattern; null where the surface shows no joints. */
export function patternTile(pattern: Finish['pattern']): PatternTile | null {
  const known = made.get(pattern)
  if (known !== undefined) return known
  const tile = tiles[pattern]?.() ?? null
  made.set(pattern, tile)
  return tile
}
