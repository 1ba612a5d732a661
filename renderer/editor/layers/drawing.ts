import type { Context } from 'konva/lib/Context'
import type { Inks } from '../../theme/inks'
import type { Size } from '../camera/camera'
import type { Eye } from '../camera/eye'
import type { Pen } from './pen'

/** What every layer of the plan is drawn with. */
export interface Canvas {
  readonly eye: Eye
  readonly size: Size
  readonly inks: Inks
}

/** A shape's scene function that paints with a pen of this canvas, from where the eye is when it is painted. */
export const drawing =
  ({ eye, size, inks }: Canvas, paint: (pen: Pen) => void) =>
  (context: Context): void => {
    const camera = eye.getState()
    if (camera) paint({ ctx: context._context, camera, size, inks })
  }
