/** What a layer draws with: the canvas, the camera, the theme's inks. */

import type { Inks } from '../../theme/inks'
import type { Camera, Size } from '../camera/camera'

export interface Pen {
  readonly ctx: CanvasRenderingContext2D
  readonly camera: Camera
  readonly size: Size
  readonly inks: Inks
}

/** Draws in plan meters, y up. Line widths are in meters then: see `px`. */
export function inPlan({ ctx, camera }: Pen, draw: () => void): void {
  ctx.save()
  ctx.transform(camera.zoom, 0, 0, -camera.zoom, camera.x, camera.y)
  draw()
  ctx.restore()
}

/** Screen pixels as plan meters, for line widths and dashes inside `inPlan`. */
export const px = ({ camera }: Pen, pixels: number): number => pixels / camera.zoom

/** A line weight as the theme wants it, in plan meters. */
export const weight = (pen: Pen, pixels: number): number => px(pen, pixels * pen.inks.weight)
