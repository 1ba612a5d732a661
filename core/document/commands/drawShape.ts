import type { Edge, Path, Vertex } from '../../../shared/document/path'
import type { Pt } from '../../../shared/document/primitives'
import { resolvePath } from '../../geometry/resolvePath'
import { ringArea } from '../../geometry/ringArea'
import type { Edit } from './editSite'

export interface ShapeCorner {
  readonly at: Pt
  readonly roundM?: number
  /** Rise of the edge that leaves this corner, + = to the right of travel. */
  readonly riseM?: number
}

/** A closed shape as it is drawn, in either direction of travel. */
export type Shape =
  | { readonly kind: 'corners'; readonly corners: readonly ShapeCorner[] }
  /** `at` is a corner; the sides run along `turnDeg` (counter-clockwise from drawing-right) and square to it. */
  | {
      readonly kind: 'rectangle'
      readonly at: Pt
      readonly widthM: number
      readonly depthM: number
      readonly turnDeg?: number
    }
  | { readonly kind: 'circle'; readonly center: Pt; readonly radiusM: number }

const rectangleCorners = ({
  at,
  widthM,
  depthM,
  turnDeg = 0,
}: Extract<Shape, { kind: 'rectangle' }>): ShapeCorner[] => {
  const angle = (turnDeg * Math.PI) / 180
  // Square drawings keep round numbers: cos 90° must not leave a crumb.
  const square = Number.isInteger(turnDeg / 90)
  const cos = square ? Math.round(Math.cos(angle)) : Math.cos(angle)
  const sin = square ? Math.round(Math.sin(angle)) : Math.sin(angle)
  const place = (x: number, y: number): ShapeCorner => ({ at: [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos] })
  return [place(0, 0), place(widthM, 0), place(widthM, depthM), place(0, depthM)]
}

/** Four quarter arcs; rise of a quarter circle R(1 − cos 45°). */
const circleCorners = ({ center: [x, y], radiusM }: Extract<Shape, { kind: 'circle' }>): ShapeCorner[] => {
  const riseM = radiusM * (1 - Math.SQRT1_2)
  const around: Pt[] = [
    [x + radiusM, y],
    [x, y + radiusM],
    [x - radiusM, y],
    [x, y - radiusM],
  ]
  return around.map(at => ({ at, riseM }))
}

const cornersOf = (shape: Shape): readonly ShapeCorner[] => {
  if (shape.kind === 'corners') return shape.corners
  return shape.kind === 'rectangle' ? rectangleCorners(shape) : circleCorners(shape)
}

const drawCorners = (edit: Edit, corners: readonly ShapeCorner[], closed: boolean): Path => {
  const id = edit.mint('r')
  const vertices = corners.map(
    ({ at, roundM }): Vertex => ({
      id: edit.mint('v'),
      at: [at[0], at[1]],
      ...(roundM === undefined ? {} : { roundM }),
    }),
  )
  const leaving = closed ? corners : corners.slice(0, -1)
  const edges = leaving.map(
    ({ riseM }): Edge => ({ id: edit.mint('e'), ...(riseM === undefined || riseM === 0 ? {} : { riseM }) }),
  )
  return { id, vertices, edges }
}

/** Walked the other way: the same corners from the same start, bulges on the other side of travel. */
const turnAround = (corners: readonly ShapeCorner[]): readonly ShapeCorner[] => {
  const n = corners.length
  return corners.map((_, i) => {
    const { at, roundM } = corners[(n - i) % n]!
    const riseM = corners[(2 * n - i - 1) % n]?.riseM
    return { at, ...(roundM === undefined ? {} : { roundM }), ...(riseM === undefined ? {} : { riseM: -riseM }) }
  })
}

/** The shape as a path with new ids, walked as asked for. */
export const drawShape = (edit: Edit, shape: Shape, turn: 'counterClockwise' | 'clockwise'): Path => {
  const corners = cornersOf(shape)
  const trial: Path = {
    id: '',
    vertices: corners.map(({ at }, i) => ({ id: `v${i}`, at })),
    edges: corners.map(({ riseM }, i) => ({ id: `e${i}`, ...(riseM === undefined ? {} : { riseM }) })),
  }
  const area = ringArea(resolvePath(trial, '').ring)
  const wrong = turn === 'clockwise' ? area > 0 : area < 0
  return drawCorners(edit, wrong ? turnAround(corners) : corners, true)
}

/** A line with two ends as a path with new ids. */
export const drawLine = (edit: Edit, corners: readonly ShapeCorner[]): Path => drawCorners(edit, corners, false)
