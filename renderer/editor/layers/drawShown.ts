/** Furniture, notes and tape dimensions. */
import { furnishingShape } from '../../../core/reports/furnishingShape'
import { tapeWords } from '../../../core/reports/tapeWords'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import type { Furnishing, Note, TapeDimension } from '../../../shared/document/shown'
import { toScreen } from '../camera/camera'
import { around, type LabelRoom } from './labelRoom'
import { letter, letterWidth } from './lettering'
import { inPlan, type Pen, px, weight } from './pen'

export function drawFurnishings(pen: Pen, furnishings: readonly Furnishing[]): void {
  if (furnishings.length === 0) return
  const { ctx, inks } = pen
  const trace = (points: readonly Pt[]) => {
    for (const [i, [x, y]] of points.entries()) {
      if (i === 0) ctx.moveTo(x, y)
      else ctx.lineTo(x, y)
    }
  }
  inPlan(pen, () => {
    ctx.strokeStyle = inks['ink-2']
    ctx.fillStyle = inks.raised
    ctx.lineJoin = 'round'
    for (const furnishing of furnishings) {
      const { body, details } = furnishingShape(furnishing)
      ctx.beginPath()
      trace(body)
      ctx.closePath()
      ctx.fill()
      ctx.lineWidth = weight(pen, 1.4)
      ctx.stroke()
      // Seen from far off the fine lines would only blacken it.
      if (furnishing.depthM < px(pen, 14)) continue
      ctx.beginPath()
      for (const line of details) trace(line)
      ctx.lineWidth = weight(pen, 0.8)
      ctx.stroke()
    }
  })
}

const style = { sizePx: 14, weight: 600 } as const
const small = { sizePx: 13, weight: 500 } as const

export function drawTapes(pen: Pen, tapes: readonly TapeDimension[], print: Measures, room: LabelRoom): void {
  const { ctx, inks, camera } = pen
  for (const tape of tapes) {
    const [a, b] = [toScreen(camera, tape.ends[0].last), toScreen(camera, tape.ends[1].last)]
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (long < 1) continue
    const [ux, uy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
    ctx.save()
    ctx.strokeStyle = inks['ink-2']
    ctx.fillStyle = inks['ink-2']
    ctx.lineWidth = 1.2 * inks.weight
    ctx.setLineDash([10, 3, 2, 3])
    ctx.beginPath()
    ctx.moveTo(...a)
    ctx.lineTo(...b)
    ctx.stroke()
    ctx.setLineDash([])
    // The hooks of the tape: a bar square to it at each end.
    ctx.lineWidth = 2 * inks.weight
    ctx.beginPath()
    for (const [x, y] of [a, b]) {
      ctx.moveTo(x - 6 * uy, y + 6 * ux)
      ctx.lineTo(x + 6 * uy, y - 6 * ux)
    }
    ctx.stroke()
    ctx.restore()
    const [words, field] = tapeWords(tape, print)
    const width = Math.max(letterWidth(pen, words, style), field ? letterWidth(pen, field, small) : 0) + 12
    const line = 17 * inks.letterScale
    const height = field ? 2 * line : line + 4
    const spots = [0.5, 0.35, 0.65, 0.2, 0.8].map((t): Pt => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t])
    const at = room.take(spots, width, height)
    if (!at) continue
    letter(pen, words, [at[0], field ? at[1] - line / 2 : at[1]], { ...style, ground: inks.paper })
    if (field) letter(pen, field, [at[0], at[1] + line / 2], { ...small, ground: inks.paper })
  }
}

/** Lines of a note, broken between words. */
export function breakLines(text: string, most: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

/** How much farther from its pin a note may stand where there is no room beside it. */
const leadsPx = [0, 30, 70, 120] as const

/** A pin at the place, the words on a slip of paper beside it. */
export function drawNotes(pen: Pen, notes: readonly Note[], room: LabelRoom): void {
  const { ctx, inks } = pen
  for (const { at, text } of notes) {
    const [x, y] = toScreen(pen.camera, at)
    const lines = breakLines(text, 30)
    const line = 17 * inks.letterScale
    const [width, height] = [
      Math.max(...lines.map(each => letterWidth(pen, each, small))) + 16,
      lines.length * line + 8,
    ]
    const far: Pt = [14 + width / 2, 12 + height / 2]
    const spots = leadsPx.flatMap((lead): Pt[] => [
      [x + far[0] + lead, y - far[1] - lead],
      [x + far[0] + lead, y + far[1] + lead],
      [x - far[0] - lead, y - far[1] - lead],
      [x - far[0] - lead, y + far[1] + lead],
    ])
    const spot = room.take(spots, width, height)
    ctx.save()
    ctx.fillStyle = inks.ink
    ctx.strokeStyle = inks.ink
    ctx.lineWidth = inks.weight
    if (spot) {
      const slip = around(spot, width, height)
      ctx.beginPath()
      ctx.moveTo(x, y)
      ctx.lineTo(x < spot[0] ? slip.x : slip.x + width, y < spot[1] ? slip.y : slip.y + height)
      ctx.stroke()
      ctx.fillStyle = inks.raised
      ctx.fillRect(slip.x, slip.y, width, height)
      ctx.strokeStyle = inks['ink-2']
      ctx.strokeRect(slip.x, slip.y, width, height)
      ctx.fillStyle = inks.ink
      lines.forEach((each, i) => {
        letter(pen, each, [slip.x + 8, slip.y + 4 + (i + 0.5) * line], { ...small, align: 'left' })
      })
    }
    ctx.beginPath()
    ctx.arc(x, y, 4 * inks.weight, 0, 2 * Math.PI)
    ctx.fill()
    ctx.restore()
  }
}
