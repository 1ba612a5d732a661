/** A picture file as the document keeps it: within the limits, base64, named by its hash. */
import { pictureSize } from '../../../core/document/pictureSize'
import { limits } from '../../../shared/limits'
import { err, ok, type Result } from '../../../shared/problem'
import { hasExif } from './hasExif'

export interface ReadPicture {
  readonly assetId: string
  readonly asset: { readonly kind: 'image/png' | 'image/jpeg'; readonly base64: string }
  readonly widthPx: number
  readonly heightPx: number
}

const toBase64 = (bytes: Uint8Array): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000))
  return btoa(text)
}

async function shrink(bitmap: ImageBitmap, widthPx: number, heightPx: number): Promise<Blob | null> {
  const canvas = new OffscreenCanvas(widthPx, heightPx)
  const ctx = canvas.getContext('2d')!
  // What is clear in the picture is paper.
  ctx.fillStyle = '#ffffff'
  ctx.fillRect(0, 0, widthPx, heightPx)
  ctx.drawImage(bitmap, 0, 0, widthPx, heightPx)
  for (const quality of [0.9, 0.75, 0.5]) {
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality })
    if (blob.size <= limits.assetBytes) return blob
  }
  return null
}

/** More pixels than this browsers refuse to draw (16,384 by 16,384, from memory). */
const mostPixels = 2 ** 28

/** A picture may be sound and only too large to be opened. */
async function whyUnread(file: File): Promise<string> {
  const head = new Uint8Array(await file.slice(0, 0x10000).arrayBuffer())
  const px = pictureSize(toBase64(head))
  if (px && px.width * px.height > mostPixels)
    return `“${file.name}” is ${px.width.toLocaleString('en-US')} × ${px.height.toLocaleString('en-US')} pixels, more than can be opened. Save it smaller: ${limits.assetPixels.toLocaleString('en-US')} pixels along the longer side are kept.`
  return `“${file.name}” is no picture this program can read. Use a PNG, a JPEG or a PDF.`
}

/** Fails with a sentence. */
export async function readPicture(file: File): Promise<Result<ReadPicture, string>> {
  if (file.size > limits.fileBytes)
    return err(`“${file.name}” is larger than 64 MB. Save it smaller: 2,400 pixels along the longer side are kept.`)
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file)
  } catch {
    return err(await whyUnread(file))
  }
  const by = Math.min(1, limits.assetPixels / Math.max(bitmap.width, bitmap.height))
  const widthPx = Math.max(1, Math.round(bitmap.width * by))
  const heightPx = Math.max(1, Math.round(bitmap.height * by))
  const isJpeg = file.type === 'image/jpeg'
  const isPlain = file.type === 'image/png' || (isJpeg && !hasExif(new Uint8Array(await file.arrayBuffer())))
  // A picture that a camera turned or placed is saved upright, without where it was taken.
  const keeps = by === 1 && file.size <= limits.assetBytes && isPlain
  const blob = keeps ? file : await shrink(bitmap, widthPx, heightPx)
  bitmap.close()
  if (blob === null) return err(`“${file.name}” stays larger than 3 MB however it is saved. Take a smaller part of it.`)
  const kind = blob.type === 'image/png' ? 'image/png' : 'image/jpeg'
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  const assetId = [...hash].map(byte => byte.toString(16).padStart(2, '0')).join('')
  return ok({ assetId, asset: { kind, base64: toBase64(bytes) }, widthPx, heightPx })
}
