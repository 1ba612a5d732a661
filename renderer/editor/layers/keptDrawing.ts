import type { Inks } from '../../theme/inks'
import type { Camera } from '../camera/camera'
import type { Pen } from './pen'

interface Kept {
  /** What it was last drawn from; the eye, the inks and the size of the canvas besides. */
  readonly of: unknown
  readonly camera: Camera
  readonly inks: Inks
  readonly width: number
  readonly height: number
  /** Null until it is drawn the same a second time. */
  readonly picture: HTMLCanvasElement | null
}

/**
 * Draws what seldom changes among what does: the second time it looks the same it is kept as a picture, which is laid
 * down as long as it would look so. While the eye moves it is drawn afresh.
 */
export function keptDrawing<T>(draw: (pen: Pen, of: T) => void): (pen: Pen, of: T) => void {
  let kept: Kept | null = null
  return (pen, of) => {
    const { ctx, camera, inks } = pen
    const { width, height } = ctx.canvas
    const isSame =
      kept !== null &&
      kept.of === of &&
      kept.camera === camera &&
      kept.inks === inks &&
      kept.width === width &&
      kept.height === height
    if (!isSame) {
      kept = { of, camera, inks, width, height, picture: null }
      draw(pen, of)
      return
    }
    const picture = kept?.picture ?? paint(pen, of, draw)
    kept = { of, camera, inks, width, height, picture }
    ctx.save()
    ctx.resetTransform()
    ctx.drawImage(picture, 0, 0)
    ctx.restore()
  }
}

function paint<T>(pen: Pen, of: T, draw: (pen: Pen, of: T) => void): HTMLCanvasElement {
  const picture = document.createElement('canvas')
  picture.width = pen.ctx.canvas.width
  picture.height = pen.ctx.canvas.height
  const ctx = picture.getContext('2d')!
  ctx.setTransform(pen.ctx.getTransform())
  draw({ ...pen, ctx }, of)
  return picture
}
