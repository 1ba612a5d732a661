import type { Context } from 'konva/lib/Context'
import type { Inks } from '../../theme/inks'
import type { Camera, Size } from '../camera/camera'
import type { Pen } from './pen'

/** What every layer of the plan is drawn with. */
export interface Canvas {
  readonly camera: Camera
  readonly size: Size
  readonly inks: Inks
}

/** A shape's scene function that paints with a pen of this canvas. */
export const drawing =
  ({ camera, size, inks }: Canvas, paint: (pen: Pen) => void) =>
  (context: Context): void =>
    paint({ ctx: context._context, camera, size, inks })
