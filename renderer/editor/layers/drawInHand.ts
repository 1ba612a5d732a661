/** What is being drawn: a chalk line, one mark for whatever holds the pointer, and words that say what it is. */
import type { CurveEdge } from '../../../core/geometry/curve'
import { edgeFromRise } from '../../../core/geometry/resolvePath'
import type { Pt } from '../../../shared/document/primitives'
import { handWords } from '../../app/handWords'
import type { Drawing, Drawn } from '../actions/drawing'
import type { Aim } from '../aim'
import { toScreen } from '../camera/camera'
import { letter, letterWidth } from './lettering'
import { inPlan, type Pen, px, weight } from './pen'
import { addEdges } from './ringPath'

export interface InHand {
  readonly drawing: Drawing | null
  /** Nothing is drawn or pointed out: what is chosen can be shaped. */
  readonly shapes: boolean
  readonly aim: Aim | null
  /** Edges chosen for a border. */
  readonly edges: readonly CurveEdge[]
  /** Points tied by tape. */
  readonly traced: readonly Pt[]
}

export function drawInHand(pen: Pen, { drawing, aim, edges, traced }: InHand): void {
  strokeEdges(pen, joined(traced), 1.5, [5, 5])
  traced.forEach((at, i) => {
    drawSet(pen, at)
    const [x, y] = toScreen(pen.camera, at)
    letter(pen, String(i + 1), [x + 14, y - 12], { sizePx: 14, weight: 700, ground: pen.inks.paper })
  })
  strokeEdges(pen, edges, 5, [])
  const sketch = drawing?.sketch(aim?.at ?? null) ?? null
  if (sketch) drawSketch(pen, sketch)
  if (drawing?.phase === 'dragging' && !sketch) strokeEdges(pen, joined(drawing.placed), 2.5, [])
  if (!drawing?.isStroke) for (const at of drawing?.placed ?? []) drawSet(pen, at)
  if (aim) drawAim(pen, aim, drawing?.placed.at(-1))
}

const joined = (points: readonly Pt[]): readonly CurveEdge[] =>
  points.slice(1).map((to, i) => ({ edgeId: '', from: points[i]!, to }))

function strokeEdges(pen: Pen, edges: readonly CurveEdge[], width: number, dash: readonly number[]): void {
  if (edges.length === 0) return
  const { ctx, inks } = pen
  inPlan(pen, () => {
    const path = new Path2D()
    addEdges(path, edges)
    ctx.strokeStyle = inks.chalk
    ctx.lineWidth = weight(pen, width)
    ctx.setLineDash(dash.map(d => px(pen, d)))
    ctx.stroke(path)
    ctx.setLineDash([])
  })
}

function drawSketch(pen: Pen, drawn: Drawn): void {
  if (drawn.kind === 'spot') return
  const closed = drawn.kind === 'shape'
  const corners = drawn.kind === 'line' ? drawn.corners : drawn.shape.kind === 'corners' ? drawn.shape.corners : []
  const edges = corners.flatMap(({ at, riseM }, i): CurveEdge[] => {
    const to = corners[i + 1]
    return to && Math.hypot(to.at[0] - at[0], to.at[1] - at[1]) > 1e-9 ? [edgeFromRise('', at, to.at, riseM)] : []
  })
  strokeEdges(pen, edges, 3, [])
  const [first, last] = [corners[0], corners.at(-1)]
  if (closed && first && last && corners.length > 1) {
    // The edge that would close it.
    const closing = edgeFromRise('', last.at, first.at, last.riseM)
    if (Math.hypot(last.at[0] - first.at[0], last.at[1] - first.at[1]) > 1e-9) strokeEdges(pen, [closing], 1.5, [5, 5])
  }
}

/** A point that is set. */
function drawSet(pen: Pen, at: Pt): void {
  const { ctx, inks } = pen
  const [x, y] = toScreen(pen.camera, at)
  ctx.fillStyle = inks.paper
  ctx.strokeStyle = inks.chalk
  ctx.lineWidth = 2 * inks.weight
  ctx.fillRect(x - 4, y - 4, 8, 8)
  ctx.strokeRect(x - 4, y - 4, 8, 8)
}

/** The same mark for everything that holds the pointer; what it is stands in words above. */
function drawAim(pen: Pen, { at, caught }: Aim, from: Pt | undefined): void {
  const { ctx, inks, size } = pen
  const [x, y] = toScreen(pen.camera, at)
  ctx.save()
  ctx.strokeStyle = inks.chalk
  ctx.lineWidth = 1.6 * inks.weight
  ctx.beginPath()
  ctx.moveTo(x - 10, y)
  ctx.lineTo(x + 10, y)
  ctx.moveTo(x, y - 10)
  ctx.lineTo(x, y + 10)
  if (caught) {
    ctx.moveTo(x + 6, y)
    ctx.arc(x, y, 6, 0, 2 * Math.PI)
  }
  ctx.stroke()
  if (caught && from) {
    const [fx, fy] = toScreen(pen.camera, from)
    ctx.setLineDash([2, 4])
    ctx.lineWidth = inks.weight
    ctx.beginPath()
    ctx.moveTo(fx, fy)
    ctx.lineTo(x, y)
    ctx.stroke()
    ctx.setLineDash([])
  }
  ctx.restore()
  if (!caught) return
  const strong = { sizePx: 14, weight: 700, ink: inks['on-chalk'], align: 'left' } as const
  const plain = { ...strong, weight: 500 } as const
  const rest = caught.rest ? ` ${handWords(caught.rest)}` : ''
  const [first, second] = [letterWidth(pen, caught.relation, strong), rest ? letterWidth(pen, rest, plain) : 0]
  const width = first + second + 20
  const height = 26 * inks.letterScale
  const left = Math.max(96, Math.min(size.width - width - 8, x + 16))
  const top = y - 20 - height < 80 ? y + 20 : y - 20 - height
  ctx.fillStyle = inks.chalk
  ctx.fillRect(left, top, width, height)
  letter(pen, caught.relation, [left + 10, top + height / 2], strong)
  if (rest) letter(pen, rest, [left + 10 + first, top + height / 2], plain)
}
