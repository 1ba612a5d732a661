/** Where dimensions stand on the screen: for the pen that draws them, and for the boxes that are typed over them. */
import { type Box, pointBounds } from '../../../core/geometry/bounds'
import type { CurveRing } from '../../../core/geometry/curve'
import {
  type ArcDimension,
  type Dimension,
  type LineDimension,
  outlineDimensions,
} from '../../../core/reports/dimensions'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import type { Camera } from '../camera/camera'
import { type DimensionGround, isSameGround } from './dimensionGround'
import { around, type Rect } from './labelRoom'
import { alongWords, arcBox, type PlacedAlong, placeAlong } from './placeAlong'
import { type PlacedArc, placeArc, type StandingLine } from './placeArc'
import { type DimensionedRing, groundNear, type LineSight, neighborsOf, type PlacedLine, placeClear } from './placeLine'

export type PlacedDimension = { readonly of: DimensionedRing } & (
  | { readonly dimension: LineDimension; readonly line: PlacedLine }
  | {
      readonly dimension: ArcDimension
      readonly arc: PlacedArc
      /** The line along the arc; null for a rounded corner, a whole circle, or where there is no room. */
      readonly along: PlacedAlong | null
    }
)

const known = new WeakMap<CurveRing, readonly Dimension[]>()

/** Made once for each ring. */
const dimensionsOf = (ring: CurveRing): readonly Dimension[] => {
  const made = known.get(ring) ?? outlineDimensions(ring)
  known.set(ring, made)
  return made
}

/** A letter of a length takes about so much: the pen and the boxes have to agree before it is lettered. */
const letterPx = 6.4
/** A shorter line bears no letters. */
const leastLinePx = 40

/** Letters that lie along a line, in a box of the screen. */
export function lettersBox({ at, u: [ux, uy] }: Pick<PlacedLine, 'at' | 'u'>, widthPx: number): Rect {
  const [along, across, long, high] = [Math.abs(ux), Math.abs(uy), widthPx + 10, 24]
  return around(at, long * along + high * across, long * across + high * along)
}

const lineEnds = ({ a, b, n: [nx, ny], outPx }: PlacedLine): readonly [Pt, Pt] => [
  [a[0] + nx * outPx, a[1] + ny * outPx],
  [b[0] + nx * outPx, b[1] + ny * outPx],
]

/** What a dimension is placed by: the box of what it measures, its letters, what stands around. */
interface Looked {
  readonly box: Box
  readonly lettersPx: number
  readonly ground: DimensionGround
  readonly neighbors: readonly CurveRing[]
  readonly camera: Camera
}

type Standing<Placed> = Looked & { readonly placed: Placed }

const lines = new WeakMap<LineDimension, Standing<PlacedLine>>()
const arcs = new WeakMap<ArcDimension, Standing<PlacedAlong | null>>()

type Carry = (at: Pt) => Pt

const carryLine = (line: PlacedLine, carry: Carry): PlacedLine => ({
  ...line,
  ...{ a: carry(line.a), b: carry(line.b), at: carry(line.at) },
})

const carryAlong = (along: PlacedAlong | null, carry: Carry): PlacedAlong | null =>
  along && { ...along, center: carry(along.center), at: carry(along.at) }

/** Places that were looked for hold while ground and zoom stay: most edges do as they were while one is drawn or moved. */
const holds = (was: Looked, now: Looked): boolean =>
  was.camera.zoom === now.camera.zoom &&
  was.lettersPx === now.lettersPx &&
  isSameGround(was.ground, now.ground) &&
  was.neighbors.length === now.neighbors.length &&
  was.neighbors.every((ring, i) => ring === now.neighbors[i])

/** Where a dimension was found to stand, as the camera has moved over the plan since; else where it is found now. */
function standsAt<Of extends Dimension, Placed>(
  standing: WeakMap<Of, Standing<Placed>>,
  dimension: Of,
  now: Looked,
  find: (sight: LineSight) => Placed,
  carry: (placed: Placed, carry: Carry) => Placed,
): Placed {
  const was = standing.get(dimension)
  if (was && holds(was, now)) {
    const [dx, dy] = [now.camera.x - was.camera.x, now.camera.y - was.camera.y]
    return dx === 0 && dy === 0 ? was.placed : carry(was.placed, at => [at[0] + dx, at[1] + dy])
  }
  const { box, ground, neighbors, camera, lettersPx } = now
  const near = groundNear(box, ground, neighbors, camera, lettersPx)
  const placed = find({ near, camera, lettersPx })
  standing.set(dimension, { ...now, placed })
  return placed
}

/** In the order of the rings; straight edges and the lines along arcs find their places first, radii keep off them. */
export function placeDimensions(
  rings: readonly DimensionedRing[],
  ground: DimensionGround,
  camera: Camera,
  print: Measures,
): readonly PlacedDimension[] {
  const all = rings.flatMap(of => dimensionsOf(of.ring).map(dimension => ({ of, dimension })))
  const standing: StandingLine[] = []
  const letters: Rect[] = []
  const look = (of: DimensionedRing, box: Box, words: string): Looked => {
    const lettersPx = words.length * letterPx
    return { box, ground, camera, lettersPx, neighbors: neighborsOf(of, box, ground.slabs, camera, lettersPx) }
  }
  const placed = all.map(({ of, dimension }) => {
    if (dimension.kind === 'arc') {
      const now = look(of, arcBox(of, dimension), alongWords(print, dimension.lengthM))
      const along = standsAt(arcs, dimension, now, sight => placeAlong(of, dimension, sight), carryAlong)
      if (along) letters.push(lettersBox(along, now.lettersPx))
      return along
    }
    const now = look(of, pointBounds([dimension.from, dimension.to]), print.length(dimension.lengthM))
    const line = standsAt(lines, dimension, now, sight => placeClear(of, dimension, sight), carryLine)
    if (line.longPx > leastLinePx)
      standing.push({ line: lineEnds(line), edge: [line.a, line.b], letters: lettersBox(line, now.lettersPx) })
    return line
  })
  return all.flatMap(({ of, dimension }, i): readonly PlacedDimension[] => {
    if (dimension.kind === 'line') return [{ of, dimension, line: placed[i] as PlacedLine }]
    const arc = placeArc(dimension, camera, ground.flags, standing, letters)
    if (!arc) return []
    letters.push(arc.letters)
    return [{ of, dimension, arc, along: placed[i] as PlacedAlong | null }]
  })
}
