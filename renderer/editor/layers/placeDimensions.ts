/** Where dimensions stand on the screen: for the pen that draws them, and for the boxes that are typed over them. */
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
import { type PlacedArc, placeArc, type StandingLine } from './placeArc'
import { type DimensionedRing, type PlacedLine, placeClear } from './placeLine'

export type PlacedDimension = { readonly of: DimensionedRing } & (
  | { readonly dimension: LineDimension; readonly line: PlacedLine }
  | { readonly dimension: ArcDimension; readonly arc: PlacedArc }
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

interface Standing {
  readonly line: PlacedLine
  readonly lettersPx: number
  readonly ground: DimensionGround
  readonly camera: Camera
}

const lately = new WeakMap<LineDimension, Standing>()

/** As it stands once the camera has moved over the plan. */
function panned(line: PlacedLine, from: Camera, to: Camera): PlacedLine {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  if (dx === 0 && dy === 0) return line
  const carried = ([x, y]: Pt): Pt => [x + dx, y + dy]
  return { ...line, a: carried(line.a), b: carried(line.b), at: carried(line.at) }
}

/** Looked for once while ground and zoom stay: most edges do as they were while one is drawn or moved. */
function standsAt(
  of: DimensionedRing,
  dimension: LineDimension,
  camera: Camera,
  lettersPx: number,
  ground: DimensionGround,
): PlacedLine {
  const was = lately.get(dimension)
  if (was?.camera.zoom === camera.zoom && was.lettersPx === lettersPx && isSameGround(was.ground, ground))
    return panned(was.line, was.camera, camera)
  const line = placeClear(of, dimension, camera, lettersPx, ground)
  lately.set(dimension, { line, lettersPx, ground, camera })
  return line
}

/** In the order of the rings; straight edges first find their places, then arcs keep off them. */
export function placeDimensions(
  rings: readonly DimensionedRing[],
  ground: DimensionGround,
  camera: Camera,
  print: Measures,
): readonly PlacedDimension[] {
  const all = rings.flatMap(of => dimensionsOf(of.ring).map(dimension => ({ of, dimension })))
  const standing: StandingLine[] = []
  const lines = all.map(({ of, dimension }) => {
    if (dimension.kind !== 'line') return null
    const lettersPx = print.length(dimension.lengthM).length * letterPx
    const line = standsAt(of, dimension, camera, lettersPx, ground)
    if (line.longPx > leastLinePx)
      standing.push({ line: lineEnds(line), edge: [line.a, line.b], letters: lettersBox(line, lettersPx) })
    return line
  })
  return all.flatMap(({ of, dimension }, i): readonly PlacedDimension[] => {
    if (dimension.kind === 'line') return [{ of, dimension, line: lines[i]! }]
    const arc = placeArc(dimension, camera, ground.flags, standing)
    return arc ? [{ of, dimension, arc }] : []
  })
}
