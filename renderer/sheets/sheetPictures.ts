/** SVG sheets as pictures that carry their letters with them, for the screen and as PNG. */
import barlow500 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-500-normal.woff2?url'
import barlow700 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-700-normal.woff2?url'
import zilla700 from '@fontsource/zilla-slab/files/zilla-slab-latin-700-normal.woff2?url'
import { toBase64 } from './bytes'

const faces = [
  { family: 'Barlow Semi Condensed Medium', weight: 500, address: barlow500 },
  { family: 'Barlow Semi Condensed', weight: 700, address: barlow700 },
  { family: 'Zilla Slab', weight: 700, address: zilla700 },
] as const

let letters: Promise<string> | null = null

const loadLetters = (): Promise<string> => {
  letters ??= Promise.all(
    faces.map(async ({ family, weight, address }) => {
      const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer())
      return `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:font/woff2;base64,${toBase64(bytes)})}`
    }),
  ).then(rules => `<style>${rules.join('')}</style>`)
  return letters
}

/** The SVG with the letters it uses inside: a picture may load nothing from outside. */
export async function withLetters(svg: string): Promise<string> {
  const style = await loadLetters()
  return svg.replace(/<svg[^>]*>/, tag => `${tag}${style}`)
}

/** As a PNG of that width; the height follows. */
export async function svgToPng(svg: string, widthPx: number): Promise<Uint8Array> {
  const address = URL.createObjectURL(new Blob([await withLetters(svg)], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = widthPx
    canvas.height = Math.round((widthPx * image.naturalHeight) / image.naturalWidth)
    const ctx = canvas.getContext('2d')!
    ctx.fillStyle = '#ffffff'
    ctx.fillRect(0, 0, canvas.width, canvas.height)
    ctx.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>(done => canvas.toBlob(done, 'image/png'))
    if (!blob) throw new Error('the picture could not be made')
    return new Uint8Array(await blob.arrayBuffer())
  } finally {
    URL.revokeObjectURL(address)
  }
}
