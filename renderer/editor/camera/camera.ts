/** Where the plan stands on the screen: `screen = (x + zoom·X, y − zoom·Y)`, plan in meters, y up. */
import type { Box } from '../../../core/geometry/bounds'
import type { Pt } from '../../../shared/document/primitives'

export interface Camera {
  /** Screen pixels per meter. */
  readonly zoom: number
  /** Where the plan's origin lies on the screen. */
  readonly x: number
  readonly y: number
}

export interface Size {
  readonly width: number
  readonly height: number
}

/** From a site 2 km across on a small window to an eighth of an inch as wide as a hand. */
const zoomRange = { least: 0.2, most: 4_000 } as const

export const toScreen = ({ zoom, x, y }: Camera, at: Pt): Pt => [x + zoom * at[0], y - zoom * at[1]]

export const toPlan = ({ zoom, x, y }: Camera, at: Pt): Pt => [(at[0] - x) / zoom, (y - at[1]) / zoom]

export const panBy = (camera: Camera, dx: number, dy: number): Camera => ({
  ...camera,
  x: camera.x + dx,
  y: camera.y + dy,
})

/** Zooms about a point of the screen, which stays on the same point of the plan. */
export function zoomAt(camera: Camera, [sx, sy]: Pt, factor: number): Camera {
  const zoom = Math.min(zoomRange.most, Math.max(zoomRange.least, camera.zoom * factor))
  const k = zoom / camera.zoom
  return { zoom, x: sx - (sx - camera.x) * k, y: sy - (sy - camera.y) * k }
}

/** Two fingers moved: the plan under each stays under it, so that nothing jumps when one is lifted. */
export function pinch(camera: Camera, from: readonly [Pt, Pt], to: readonly [Pt, Pt]): Camera {
  const middle = ([a, b]: readonly [Pt, Pt]): Pt => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const apart = ([a, b]: readonly [Pt, Pt]) => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]))
  const [before, after] = [middle(from), middle(to)]
  return panBy(zoomAt(camera, before, apart(to) / apart(from)), after[0] - before[0], after[1] - before[1])
}

/** The whole of a box in view with `margin` pixels around it. An empty box shows 20 m about the origin. */
export function fitBox(box: Box, size: Size, margin: number): Camera {
  const whole = box.minX <= box.maxX ? box : { minX: -10, minY: -10, maxX: 10, maxY: 10 }
  const widthM = Math.max(0.5, whole.maxX - whole.minX)
  const heightM = Math.max(0.5, whole.maxY - whole.minY)
  const room = (extent: number) => Math.max(40, extent - 2 * margin)
  const zoom = Math.min(
    zoomRange.most,
    Math.max(zoomRange.least, Math.min(room(size.width) / widthM, room(size.height) / heightM)),
  )
  return {
    zoom,
    x: size.width / 2 - ((whole.minX + whole.maxX) / 2) * zoom,
    y: size.height / 2 + ((whole.minY + whole.maxY) / 2) * zoom,
  }
}
