/** The picture under the plan: pixel (0, 0) at its origin, rows going down, turned about that corner. */
import type { Site } from '../../../shared/document/site'
import { toScreen } from '../camera/camera'
import type { Pen } from './pen'

const known = new Map<string, ImageBitmap | 'coming'>()

const bytesOf = (base64: string): Uint8Array<ArrayBuffer> => {
  const text = atob(base64)
  const bytes = new Uint8Array(text.length)
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i)
  return bytes
}

/** Decoded once for each asset; `onReady` is called when it can be drawn. */
export function loadPicture({ assets, place }: Site, onReady: () => void): void {
  const asset = place.picture && assets?.[place.picture.assetId]
  if (!place.picture || !asset || known.has(place.picture.assetId)) return
  const id = place.picture.assetId
  known.set(id, 'coming')
  void createImageBitmap(new Blob([bytesOf(asset.base64)], { type: asset.kind })).then(
    bitmap => {
      known.set(id, bitmap)
      onReady()
    },
    () => known.delete(id),
  )
}

export function drawPicture({ ctx, camera }: Pen, picture: NonNullable<Site['place']['picture']>): void {
  const bitmap = known.get(picture.assetId)
  if (!bitmap || bitmap === 'coming') return
  const [x, y] = toScreen(camera, picture.originAt)
  const scale = picture.metersPerPixel * camera.zoom
  ctx.save()
  ctx.translate(x, y)
  ctx.rotate((-picture.turnDeg * Math.PI) / 180)
  ctx.scale(scale, scale)
  ctx.globalAlpha = 1 - picture.fade
  ctx.drawImage(bitmap, 0, 0)
  ctx.restore()
}
