/** Words and figures on the plan, always upright and always on a ground. */
import type { Pt } from '../../../shared/document/primitives'
import type { Inks } from '../../theme/inks'
import type { Pen } from './pen'

export interface LetterStyle {
  readonly sizePx: number
  readonly weight: 500 | 600 | 700
  readonly face?: 'plan' | 'slab'
  readonly ink?: string
  readonly align?: 'left' | 'center' | 'right'
  /** Counter-clockwise on the screen, degrees. */
  readonly turnDeg?: number
  /** Color behind the letters; absent for none. */
  readonly ground?: string
  /** Color of a rim around the letters, where lines run under them. */
  readonly halo?: string
}

const families = {
  plan: '"Barlow Semi Condensed", sans-serif',
  slab: '"Zilla Slab Lining", "Zilla Slab", serif',
} as const

const fontOf = (pen: Pen, { sizePx, weight, face = 'plan' }: LetterStyle): string =>
  `${weight} ${sizePx * pen.inks.letterScale}px ${families[face]}`

/** Of the letters that are loaded now: with others the page makes other inks. */
const widths = new WeakMap<Inks, Map<string, number>>()
const mostWidths = 2_000

export function letterWidth(pen: Pen, text: string, style: LetterStyle): number {
  const font = fontOf(pen, style)
  let known = widths.get(pen.inks)
  if (!known || known.size > mostWidths) {
    known = new Map()
    widths.set(pen.inks, known)
  }
  const key = `${font} ${text}`
  const measured = known.get(key)
  if (measured !== undefined) return measured
  pen.ctx.font = font
  const { width } = pen.ctx.measureText(text)
  known.set(key, width)
  return width
}

/** `at` is the middle of the letters' height on the screen. */
export function letter(pen: Pen, text: string, [x, y]: Pt, style: LetterStyle): void {
  const { ctx, inks } = pen
  ctx.save()
  ctx.translate(x, y)
  if (style.turnDeg) ctx.rotate((-style.turnDeg * Math.PI) / 180)
  if (style.ground) {
    const width = letterWidth(pen, text, style) + 10
    const height = style.sizePx * inks.letterScale + 6
    const left = style.align === 'left' ? -5 : style.align === 'right' ? 5 - width : -width / 2
    ctx.fillStyle = style.ground
    ctx.fillRect(left, -height / 2, width, height)
  }
  ctx.font = fontOf(pen, style)
  ctx.textBaseline = 'middle'
  ctx.textAlign = style.align ?? 'center'
  if (style.halo) {
    ctx.strokeStyle = style.halo
    ctx.lineWidth = 4
    ctx.lineJoin = 'round'
    ctx.strokeText(text, 0, 1)
  }
  ctx.fillStyle = style.ink ?? inks.ink
  ctx.fillText(text, 0, 1)
  ctx.restore()
}
