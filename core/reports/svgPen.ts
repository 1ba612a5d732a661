/** Writes SVG in points: 1 unit = 1/72 in. */
import { type Face, textWidthPt } from './letterWidths'
import { sheetText } from './sheetText'

export type XY = readonly [x: number, y: number]

/** Shortest text of a coordinate, to 1/1000 pt. */
export const num = (value: number): string => {
  const text = value.toFixed(3).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}

export const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

export interface Stroke {
  readonly fill?: string
  readonly fillOpacity?: number
  readonly stroke?: string
  readonly width?: number
  readonly dash?: string
  readonly cap?: 'round'
  readonly evenOdd?: boolean
}

const paint = (s: Stroke): string =>
  ` fill="${s.fill ?? 'none'}"` +
  (s.fillOpacity === undefined ? '' : ` fill-opacity="${s.fillOpacity}"`) +
  (s.evenOdd === true ? ' fill-rule="evenodd"' : '') +
  (s.stroke === undefined ? '' : ` stroke="${s.stroke}" stroke-width="${num(s.width ?? 1)}"`) +
  (s.dash === undefined ? '' : ` stroke-dasharray="${s.dash}"`) +
  (s.cap === undefined ? '' : ` stroke-linecap="${s.cap}"`)

export const drawPath = (d: string, stroke: Stroke): string => (d === '' ? '' : `<path d="${d}"${paint(stroke)}/>`)

export const drawRect = (x: number, y: number, w: number, h: number, stroke: Stroke): string =>
  `<rect x="${num(x)}" y="${num(y)}" width="${num(w)}" height="${num(h)}"${paint(stroke)}/>`

export const drawCircle = (at: XY, radius: number, stroke: Stroke): string =>
  `<circle cx="${num(at[0])}" cy="${num(at[1])}" r="${num(radius)}"${paint(stroke)}/>`

export const moveLine = (a: XY, b: XY): string => `M${num(a[0])} ${num(a[1])}L${num(b[0])} ${num(b[1])}`

export const openPath = (points: readonly XY[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${num(x)} ${num(y)}`).join('')

export const closedPath = (points: readonly XY[]): string => (points.length === 0 ? '' : `${openPath(points)}Z`)

const narrowFallback = `'Arial Narrow',sans-serif`
/** On the root of a picture: what letters without a face of their own are set in. */
export const rootFont = `font-family="'Barlow Semi Condensed Medium','Barlow Semi Condensed',${narrowFallback}" font-weight="500"`

/** The opening tag of a drawing of this size, in points. */
export const openSvg = (widthPt: number, heightPt: number): string => {
  const [w, h] = [num(widthPt), num(heightPt)]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}pt" height="${h}pt" viewBox="0 0 ${w} ${h}" ${rootFont}>`
}

const families: Record<Face, string> = {
  plan: '',
  planBold: ` font-family="'Barlow Semi Condensed',${narrowFallback}" font-weight="bold"`,
  name: ` font-family="'Zilla Slab',Georgia,serif" font-weight="bold"`,
}

export interface TextStyle {
  readonly sizePt: number
  readonly face?: Face
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly fill?: string
  /** Counter-clockwise on paper, about the anchor point. */
  readonly turnDeg?: number
}

export const ink = '#1C2125'
export const softInk = '#434A50'

/** One line of text, its baseline at `y`. */
export function drawText(text: string, x: number, y: number, style: TextStyle): string {
  const anchor = style.anchor === undefined || style.anchor === 'start' ? '' : ` text-anchor="${style.anchor}"`
  const turn =
    style.turnDeg === undefined || Math.abs(style.turnDeg) < 1e-9
      ? ''
      : ` transform="rotate(${num(-style.turnDeg)} ${num(x)} ${num(y)})"`
  return (
    `<text x="${num(x)}" y="${num(y)}"${families[style.face ?? 'plan']} font-size="${num(style.sizePt)}"` +
    `${anchor} fill="${style.fill ?? ink}"${turn}>${escapeXml(sheetText(text))}</text>`
  )
}

export const widthOf = (text: string, sizePt: number, face: Face = 'plan'): number =>
  textWidthPt(sheetText(text), sizePt, face)
