/** Gable and hip roofs as flat faces in space. */
import type { Building } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import type { Ring } from '../geometry/curve'
import type { Faces } from './solid'
import { type RoofPiece, straightSkeleton } from './straightSkeleton'

const direction = (ring: Ring, index: number): Pt => {
  const [x, y] = ring[index % ring.length]!
  const [nx, ny] = ring[(index + 1) % ring.length]!
  const length = Math.hypot(nx - x, ny - y)
  return [(nx - x) / length, (ny - y) / length]
}

/** The sides that a gable roof leaves upright. Four sides: the pair that does not run with the ridge. More: the end of
 * each ridge, a side between two that face each other whose hip would be a plain triangle. */
const gableSides = (ring: Ring, ridge: Pt): readonly number[] | null => {
  const count = ring.length
  if (count === 4) {
    const run = (side: number): number => {
      const [dx, dy] = direction(ring, side)
      return Math.abs(dx * ridge[0] + dy * ridge[1])
    }
    return Math.max(run(0), run(2)) > Math.max(run(1), run(3)) ? [1, 3] : [0, 2]
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
  return ends
}

/**
 * The roof over an eave outline, rising `risePer12` in 12 from the eave line.
 * @param ring simple, counter-clockwise, collinear points left out
 * @param ridge the direction asked for the ridge; settles which sides of a four-sided gable stand upright
 * @returns null where the roof cannot be constructed
 */
export const pitchedRoof = (
  ring: Ring,
  roof: Exclude<Building['roof'], { form: 'flat' }>,
  eaveM: number,
  ridge: Pt | null,
): Faces | null => {
  const upright = roof.form === 'hip' ? [] : ridge === null ? null : gableSides(ring, ridge)
  if (upright === null) return null
  const pieces = straightSkeleton(
    ring,
    ring.map((_, side) => (upright.includes(side) ? 0 : 1)),
  )
  if (pieces === null) return null
  const slope = roof.risePer12 / 12
  const faces = pieces.map((piece: RoofPiece) =>
    Float64Array.from(piece.points.flatMap(([x, y, inset]) => [x, y, eaveM + inset * slope])),
  )
  const topM = eaveM + slope * pieces.reduce((most, { points }) => Math.max(most, ...points.map(point => point[2])), 0)
  return { form: 'faces', faces, bottomM: eaveM, topM }
}
