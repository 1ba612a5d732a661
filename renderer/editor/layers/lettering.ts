/** Words and figures on the plan, always upright and always on a ground. */
import type { Pt } from '../../../shared/document/primitives'
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

export function letterWidth(pen: Pen, text: string, style: LetterStyle): number {
  pen.ctx.font = fontOf(pen, style)
  return pen.ctx.measureText(text).width
}

/** `at` is the middle of the letters' height on the screen. */
export function letter(pen: Pen, text: string, [x, y]: Pt, style: LetterStyle): void {
  const { ctx, inks } = pen
  ctx.save()
  ctx.translate(x, y)
  if (style.turnDeg) ctx.rotate((-style.turnDeg * Math.PI) / 180)
  ctx.font = fontOf(pen, style)
  ctx.textBaseline = 'middle'
  ctx.textAlign = style.align ?? 'center'
  if (style.ground) {
    const width = ctx.measureText(text).width + 10
    const height = style.sizePx * inks.letterScale + 6
    const left = style.align === 'left' ? -5 : style.align === 'right' ? 5 - width : -width / 2
    ctx.fillStyle = style.ground
    ctx.fillRect(left, -height / 2, width, height)
  }
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
