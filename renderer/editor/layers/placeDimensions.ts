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

interface Looked {
  readonly lettersPx: number
  readonly ground: DimensionGround
  readonly neighbors: readonly CurveRing[]
  readonly camera: Camera
}

type Standing<Placed> = Looked & { readonly placed: Placed }

const lines = new WeakMap<LineDimension, Standing<PlacedLine>>()
const arcs = new WeakMap<ArcDimension, Standing<PlacedAlong | null>>()

/** As it stands once the camera has moved over the plan. */
function panned(line: PlacedLine, from: Camera, to: Camera): PlacedLine {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  if (dx === 0 && dy === 0) return line
  const carried = ([x, y]: Pt): Pt => [x + dx, y + dy]
  return { ...line, a: carried(line.a), b: carried(line.b), at: carried(line.at) }
}

const carriedAlong = (along: PlacedAlong, from: Camera, to: Camera): PlacedAlong => {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const carried = ([x, y]: Pt): Pt => [x + dx, y + dy]
  return dx === 0 && dy === 0 ? along : { ...along, center: carried(along.center), at: carried(along.at) }
}

/** Places that were looked for hold while ground and zoom stay: most edges do as they were while one is drawn or moved. */
const holds = (was: Looked | undefined, now: Looked): was is Looked =>
  was?.camera.zoom === now.camera.zoom &&
  was.lettersPx === now.lettersPx &&
  isSameGround(was.ground, now.ground) &&
  was.neighbors.length === now.neighbors.length &&
  was.neighbors.every((ring, i) => ring === now.neighbors[i])

const sightOf = (box: Box, { ground, neighbors, camera, lettersPx }: Looked): LineSight => ({
  near: groundNear(box, ground, neighbors, camera, lettersPx),
  camera,
  lettersPx,
})

function lineAt(
  of: DimensionedRing,
  dimension: LineDimension,
  camera: Camera,
  lettersPx: number,
  ground: DimensionGround,
): PlacedLine {
  const box = pointBounds([dimension.from, dimension.to])
  const now = { ground, neighbors: neighborsOf(of, box, ground.slabs, camera, lettersPx), camera, lettersPx }
  const was = lines.get(dimension)
  if (was && holds(was, now)) return panned(was.placed, was.camera, now.camera)
  const placed = placeClear(of, dimension, sightOf(box, now))
  lines.set(dimension, { ...now, placed })
  return placed
}

function alongAt(
  of: DimensionedRing,
  dimension: ArcDimension,
  camera: Camera,
  lettersPx: number,
  ground: DimensionGround,
): PlacedAlong | null {
  const box = arcBox(of, dimension)
  const now = { ground, neighbors: neighborsOf(of, box, ground.slabs, camera, lettersPx), camera, lettersPx }
  const was = arcs.get(dimension)
  if (was && holds(was, now)) return was.placed && carriedAlong(was.placed, was.camera, now.camera)
  const placed = placeAlong(of, dimension, sightOf(box, now))
  arcs.set(dimension, { ...now, placed })
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
  const placed = all.map(({ of, dimension }) => {
    if (dimension.kind === 'arc') {
      const lettersPx = alongWords(print, dimension.lengthM).length * letterPx
      const along = alongAt(of, dimension, camera, lettersPx, ground)
      if (along) letters.push(lettersBox(along, lettersPx))
      return along
    }
    const lettersPx = print.length(dimension.lengthM).length * letterPx
    const line = lineAt(of, dimension, camera, lettersPx, ground)
    if (line.longPx > leastLinePx)
      standing.push({ line: lineEnds(line), edge: [line.a, line.b], letters: lettersBox(line, lettersPx) })
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
