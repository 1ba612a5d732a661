/** Gable and hip roofs as flat faces in space. */
import type { Building } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import type { Ring } from '../geometry/curve'
import { cleanRing } from './cleanRing'
import { eaveOutline, moveOut } from './eaveOutline'
import type { Faces } from './solid'
import { straightSkeleton } from './straightSkeleton'

const direction = (ring: Ring, index: number): Pt => {
  const [x, y] = ring[index % ring.length]!
  const [nx, ny] = ring[(index + 1) % ring.length]!
  const length = Math.hypot(nx - x, ny - y)
  return [(nx - x) / length, (ny - y) / length]
}

interface Gables {
  readonly sides: readonly number[]
  /** Each stands between two slopes that face each other, as its wall does. */
  readonly areEnds: boolean
}

/** Sides within 15° of square to the ridge. */
const squareTo = (ring: Ring, ridge: Pt): number[] =>
  ring
    .map((_, side) => side)
    .filter(side => {
      const [dx, dy] = direction(ring, side)
      return Math.abs(dx * ridge[0] + dy * ridge[1]) < 0.26
    })

/**
 * The sides that a gable roof leaves upright. Four sides: the pair that does not run with the ridge. More: the end of
 * each ridge that the footprint would have by itself, a side between two that face each other whose hip would be a plain
 * triangle; if none of the main ones is square to the ridge asked for, every side that is. Null if there is none.
 */
const gablesOf = (ring: Ring, ridge: Pt): Gables | null => {
  const count = ring.length
  if (count === 4) {
    const run = (side: number): number => {
      const [dx, dy] = direction(ring, side)
      return Math.abs(dx * ridge[0] + dy * ridge[1])
    }
    return { sides: Math.max(run(0), run(2)) > Math.max(run(1), run(3)) ? [1, 3] : [0, 2], areEnds: true }
  }
  const pieces = straightSkeleton(
    ring,
    ring.map(() => 1),
  )
  if (pieces === null) return null
  const ends: number[] = []
  for (let side = 0; side < count; side++) {
    const own = pieces.filter(piece => piece.side === side)
    const before = direction(ring, side + count - 1)
    const after = direction(ring, side + 1)
    const faceEachOther = before[0] * after[0] + before[1] * after[1] < -0.9
    if (own.length === 1 && own[0]!.points.length === 3 && faceEachOther) ends.push(side)
  }
  const square = squareTo(ring, ridge)
  const lengths = ring.map(([x, y], side) => {
    const [nx, ny] = ring[(side + 1) % count]!
    return Math.hypot(nx - x, ny - y)
  })
  // The end of a bay does not settle which way the house's ridge runs: half as long as the longest at least.
  const main = Math.max(...ends.map(side => lengths[side]!)) / 2
  if (ends.some(side => square.includes(side) && lengths[side]! >= main)) return { sides: ends, areEnds: true }
  return square.length === 0 ? null : { sides: square, areEnds: false }
}

/** Meters inward from the line of a side, moved out by `outM`. */
const insideOf = (ring: Ring, side: number, outM: number, [x, y]: Pt): number => {
  const [sx, sy] = ring[side % ring.length]!
  const [dx, dy] = direction(ring, side)
  return dx * (y - sy) - dy * (x - sx) + outM
}

/** The upright wall of a gable from the eave up to the roof, between the slopes of its two neighbors. */
const gableWall = (walls: Ring, side: number, overhangM: number, eaveM: number, slope: number): Float64Array => {
  const count = walls.length
  const from = walls[side]!
  const to = walls[(side + 1) % count]!
  const left = (at: Pt): number => insideOf(walls, side + count - 1, overhangM, at)
  const right = (at: Pt): number => insideOf(walls, side + 1, overhangM, at)
  const lead = left(from) - right(from)
  const share = lead / (lead - (left(to) - right(to)))
  const top: Pt = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
  const roofOver = (at: Pt): readonly number[] => [at[0], at[1], eaveM + slope * Math.min(left(at), right(at))]
  return Float64Array.from([
    ...[from[0], from[1], eaveM],
    ...[to[0], to[1], eaveM],
    ...roofOver(to),
    ...roofOver(top),
    ...roofOver(from),
  ])
}

/** The eaves around the walls, and whether side i of them is side i of the walls. */
const eavesOf = (walls: Ring, overhangM: number): { readonly ring: Ring; readonly sidesKept: boolean } | null => {
  const moved = overhangM === 0 ? walls : moveOut(walls, overhangM)
  if (moved !== null) return { ring: moved, sidesKept: true }
  const [only, ...others] = eaveOutline(walls, overhangM)
  if (only === undefined || others.length > 0 || only.holes.length > 0) return null
  return { ring: cleanRing(only.ring), sidesKept: false }
}

/**
 * The roof over walls, rising `risePer12` in 12 from the eave line, which lies `overhangM` outside them. Slopes count as
 * boards: they shade from both sides. Beyond a gable wall they run on to the rake with open air beneath;
 * where the footprint leaves no plain gable ends, the upright faces stand at the rake.
 * @param walls simple, counter-clockwise, collinear points left out
 * @param ridge the direction asked for the ridge; settles which sides of a gable stand upright
 * @returns null where the roof cannot be constructed
 */
export const pitchedRoof = (
  walls: Ring,
  overhangM: number,
  roof: Exclude<Building['roof'], { form: 'flat' }>,
  eaveM: number,
  ridge: Pt | null,
): Faces | null => {
  const eaves = eavesOf(walls, overhangM)
  if (eaves === null) return null
  const noGables: Gables = { sides: [], areEnds: true }
  const gables = roof.form === 'hip' ? noGables : ridge === null ? null : gablesOf(eaves.ring, ridge)
  if (gables === null) return null
  const pieces = straightSkeleton(
    eaves.ring,
    eaves.ring.map((_, side) => (gables.sides.includes(side) ? 0 : 1)),
  )
  if (pieces === null) return null
  const slope = roof.risePer12 / 12
  const standOnWalls = eaves.sidesKept && gables.areEnds
  const slopes = standOnWalls ? pieces.filter(({ side }) => !gables.sides.includes(side)) : pieces
  const faces: Float64Array[] = slopes.map(({ points }) =>
    Float64Array.from(points.flatMap(([x, y, inset]) => [x, y, eaveM + inset * slope])),
  )
  if (standOnWalls) faces.push(...gables.sides.map(side => gableWall(walls, side, overhangM, eaveM, slope)))
  const topM = eaveM + slope * pieces.reduce((most, { points }) => Math.max(most, ...points.map(point => point[2])), 0)
  return { form: 'faces', faces, bottomM: eaveM, topM }
}
