/** A picture file as the document keeps it: at most 2,400 px and 3 MB, base64, named by its hash. */
import { err, ok, type Result } from '../../shared/problem'

export interface ReadPicture {
  readonly assetId: string
  readonly asset: { readonly kind: 'image/png' | 'image/jpeg'; readonly base64: string }
  readonly widthPx: number
  readonly heightPx: number
}

const mostPx = 2400
const mostBytes = 3 * 1024 * 1024

const toBase64 = (bytes: Uint8Array): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000))
  return btoa(text)
}

export async function readPicture(file: File): Promise<Result<ReadPicture, string>> {
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file)
  } catch {
    return err(`“${file.name}” is no picture this program can read. Use a PNG or a JPEG.`)
  }
  const shrink = Math.min(1, mostPx / Math.max(bitmap.width, bitmap.height))
  const [widthPx, heightPx] = [
    Math.max(1, Math.round(bitmap.width * shrink)),
    Math.max(1, Math.round(bitmap.height * shrink)),
  ]
  const keeps = shrink === 1 && file.size <= mostBytes && (file.type === 'image/png' || file.type === 'image/jpeg')
  const kind = keeps && file.type === 'image/png' ? 'image/png' : 'image/jpeg'
  let blob: Blob = file
  if (!keeps) {
    const canvas = new OffscreenCanvas(widthPx, heightPx)
    canvas.getContext('2d')!.drawImage(bitmap, 0, 0, widthPx, heightPx)
    blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 })
    if (blob.size > mostBytes) blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.6 })
  }
  bitmap.close()
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  const assetId = [...hash].map(byte => byte.toString(16).padStart(2, '0')).join('')
  return ok({ assetId, asset: { kind, base64: toBase64(bytes) }, widthPx, heightPx })
}
