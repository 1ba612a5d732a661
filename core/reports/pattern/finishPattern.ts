/** Stamped patterns as one repeating tile of stones, in meters: to scale, and the same on every screen. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'

export interface Stone {
  readonly points: readonly Pt[]
  /** What is left of it where its corners are worn round; absent where it fills its points. */
  readonly face?: readonly Pt[]
  /** −1 … 1: how much darker or lighter than the finish. */
  readonly tone: number
}

export interface PatternTile {
  readonly widthM: number
  readonly heightM: number
  /** Everything that shows in the tile: stones that cross a side stand on both sides of it. */
  readonly stones: readonly Stone[]
  /** Every stone once: repeated by the tile's sides they cover the plane. */
  readonly own: readonly Stone[]
  /** Least distance between joints, for leaving them out when they would run together. */
  readonly jointM: number
  /** False where tones run into each other with no line between them. */
  readonly jointed: boolean
  /** Stains of the release over the stones of a jointed pattern, a tile of its own size; null where there are no joints. */
  readonly stains: PatternTile | null
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

/** The tone of the n-th stone of a row that is laid by hand, −1 … 1. */
export const toneOf = (n: number): number => seeded(n)() * 2 - 1

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

type Points = readonly Pt[]

const shifted = (points: Points, dx: number, dy: number): Pt[] => points.map(([x, y]) => [x + dx, y + dy])

const shiftedStone = ({ points, face, tone }: Stone, dx: number, dy: number): Stone => ({
  points: shifted(points, dx, dy),
  ...(face === undefined ? {} : { face: shifted(face, dx, dy) }),
  tone,
})

/** All that shows in a tile of what is repeated by its sides. */
function showing(wholeM: number, highM: number, all: readonly Stone[]): Stone[] {
  const copies = [-1, 0, 1].flatMap(i => [-1, 0, 1].map(j => [i * wholeM, j * highM] as const))
  const shows = (points: Points): boolean => {
    const xs = points.map(p => p[0])
    const ys = points.map(p => p[1])
    return (
      Math.max(...xs) > 1e-9 &&
      Math.min(...xs) < wholeM - 1e-9 &&
      Math.max(...ys) > 1e-9 &&
      Math.min(...ys) < highM - 1e-9
    )
  }
  return all.flatMap(stone =>
    copies.map(([dx, dy]) => shiftedStone(stone, dx, dy)).filter(({ points }) => shows(points)),
  )
}

interface TileOptions {
  readonly times: number
  readonly seed: number
  readonly jointM: number
  readonly jointed?: boolean
  /** How round the corners of the stones are worn. */
  readonly wornM?: number
}

/** A tile of `times` × `times` repeats of some stones, each with a tone of its own, so that no repeat shows. */
function makeTile(
  widthM: number,
  heightM: number,
  own: readonly Points[],
  { times, seed, jointM, jointed = true, wornM }: TileOptions,
): PatternTile {
  const random = seeded(seed)
  const repeats = Array.from({ length: times * times }, (_, k) => [k % times, Math.floor(k / times)] as const)
  const faces = wornM === undefined ? undefined : own.map(points => worn(points, wornM))
  const all = repeats.flatMap(([column, row]) =>
    own.map((points, i) => {
      const face = faces?.[i]
      const stone = { points, ...(face === undefined ? {} : { face }), tone: random() * 2 - 1 }
      return shiftedStone(stone, column * widthM, row * heightM)
    }),
  )
  const [wholeM, highM] = [widthM * times, heightM * times]
  const soft = { times: 1, seed: seed + 102, jointM, jointed: false }
  const stains = jointed ? makeTile(wholeM, highM, stainsOver(wholeM, highM, seed + 101), soft) : null
  return { widthM: wholeM, heightM: highM, stones: showing(wholeM, highM, all), own: all, jointM, jointed, stains }
}

/** A convex stone with its corners cut round: each by `radiusM`, or by a third of its shorter side. */
function worn(points: Points, radiusM: number): Pt[] {
  return points.flatMap((at, i): Pt[] => {
    const toward = (to: Pt): Pt => {
      const longM = Math.hypot(to[0] - at[0], to[1] - at[1])
      const share = Math.min(radiusM / longM, 1 / 3)
      return [at[0] + (to[0] - at[0]) * share, at[1] + (to[1] - at[1]) * share]
    }
    const [a, b] = [toward(points.at(i - 1)!), toward(points[(i + 1) % points.length]!)]
    // The middle of the curve from a to b that the corner pulls.
    const round: Pt = [(a[0] + 2 * at[0] + b[0]) / 4, (a[1] + 2 * at[1] + b[1]) / 4]
    return [a, round, b]
  })
}

/** A patch of tone about a place, longer one way than the other. */
function blotch(random: () => number, [x, y]: Pt, longM: number): Pt[] {
  const [leanRad, flat] = [random() * Math.PI, 0.35 + 0.5 * random()]
  return Array.from({ length: 8 }, (_, i): Pt => {
    const angle = (2 * Math.PI * i) / 8
    const reachM = longM * (0.7 + 0.6 * random())
    const [u, v] = [reachM * Math.cos(angle), reachM * flat * Math.sin(angle)]
    return [x + u * Math.cos(leanRad) - v * Math.sin(leanRad), y + u * Math.sin(leanRad) + v * Math.cos(leanRad)]
  })
}

/** Two patches to the square foot. */
function stainsOver(widthM: number, heightM: number, seed: number): Pt[][] {
  const random = seeded(seed)
  return Array.from({ length: Math.round((2 * widthM * heightM) / foot ** 2) }, () => {
    const at: Pt = [random() * widthM, random() * heightM]
    return blotch(random, at, foot * (0.15 + 0.75 * random() ** 2))
  })
}

function ashlar(): PatternTile {
  const module = foot * 0.75
  const own = ashlarLayout.map(([x, y, w, h]) => rectangle(x * module, y * module, w * module, h * module))
  return makeTile(6 * module, 6 * module, own, { times: 3, seed: 11, jointM: module })
}

interface Courses {
  readonly lengthM: number
  readonly heightM: number
  readonly rows: number
  /** Of a stone's length. */
  readonly shiftOf: (row: number) => number
  readonly times: number
  readonly seed: number
}

function courses({ lengthM, heightM, rows, shiftOf, times, seed }: Courses): PatternTile {
  const columns = 3
  const own = Array.from({ length: rows * columns }, (_, k) => {
    const [row, column] = [Math.floor(k / columns), k % columns]
    return rectangle((column + shiftOf(row)) * lengthM, row * heightM, lengthM, heightM)
  })
  return makeTile(columns * lengthM, rows * heightM, own, { times, seed, jointM: heightM })
}

/** Rows an inch high, side by side without a line; over them the streaks that show from afar, also on a small scale. */
function broom(): PatternTile {
  const [rowM, widthM, streakM] = [foot / 12, 8 * foot, 0.4 * foot]
  const random = seeded(23)
  const rows = Array.from({ length: 48 }, (_, row) => rectangle(0, row * rowM, widthM, rowM))
  const streaks = Array.from({ length: 10 }, (_, k) =>
    rectangle(0, (k + 0.6 * random()) * streakM, widthM, (0.12 + 0.16 * random()) * foot),
  )
  const own = [...rows, ...streaks]
  return makeTile(widthM, 48 * rowM, own, { times: 1, seed: 1, jointM: streakM, jointed: false })
}

/** Soft blotches strewn over a tile: a skin of texture without a joint. */
function seamless(): PatternTile {
  const random = seeded(17)
  // Wide enough that a blotch that stands out is not seen twice on most patios.
  const sideM = 12 * foot
  const own = Array.from({ length: 400 }, () => {
    const at: Pt = [random() * sideM, random() * sideM]
    return blotch(random, at, foot * (0.12 + 0.5 * random() ** 2))
  })
  return makeTile(sideM, sideM, own, { times: 1, seed: 19, jointM: foot / 3, jointed: false })
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
 * alike. `wander` 0 … 1 is how far a point may lie from its place, in cells; `wornM` how
 * round the corners are.
 */
function irregular(
  cellM: number,
  cells: number,
  wander: number,
  seed: number,
  wornM: number,
  times: number,
): PatternTile {
  const random = seeded(seed)
  const sideM = cells * cellM
  const points = Array.from({ length: cells * cells }, (_, k): Pt => {
    const [column, row] = [k % cells, Math.floor(k / cells)]
    const shift = row % 2 === 0 ? 0.25 : 0.75
    return [(column + shift + (random() - 0.5) * wander) * cellM, (row + 0.5 + (random() - 0.5) * wander) * cellM]
  })
  const around = [-sideM, 0, sideM].flatMap(dx => [-sideM, 0, sideM].map(dy => [dx, dy] as const))
  const everywhere = points.flatMap(p => around.map(([dx, dy]): Pt => [p[0] + dx, p[1] + dy]))
  const reach = 2.6 * cellM
  const own = points.map(at => {
    let polygon: Pt[] = rectangle(at[0] - reach, at[1] - reach, 2 * reach, 2 * reach)
    for (const other of everywhere) {
      const apart = Math.hypot(other[0] - at[0], other[1] - at[1])
      if (apart > 0 && apart < 2 * reach) polygon = nearerPart(polygon, at, other)
    }
    return polygon
  })
  return makeTile(sideM, sideM, own, { times, seed: seed + 1, jointM: cellM, wornM })
}

const tiles: Readonly<Partial<Record<Finish['pattern'], () => PatternTile>>> = {
  ashlar,
  runningBond: () =>
    courses({ lengthM: foot * 0.67, heightM: foot * 0.33, rows: 4, shiftOf: row => (row % 2) / 2, times: 4, seed: 5 }),
  plank: () =>
    courses({ lengthM: foot * 4, heightM: foot * 0.5, rows: 6, shiftOf: row => (row % 3) / 3, times: 2, seed: 7 }),
  flagstone: () => irregular(foot * 1.6, 9, 0.9, 3, foot * 0.22, 1),
  cobble: () => irregular(foot * 0.42, 8, 0.3, 13, foot * 0.14, 3),
  broom,
  seamless,
}

const made = new Map<Finish['pattern'], PatternTile | null>()

/** The tile of a pattern; null where the surface is plain. */
export function patternTile(pattern: Finish['pattern']): PatternTile | null {
  const known = made.get(pattern)
  if (known !== undefined) return known
  const tile = tiles[pattern]?.() ?? null
  made.set(pattern, tile)
  return tile
}
