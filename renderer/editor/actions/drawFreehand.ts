/** A stroke of the hand, made into lines and arcs that a form can follow. */
import { fitStroke } from '../../../core/geometry/field/fitStroke'
import type { Pt } from '../../../shared/document/primitives'
import type { Drawing, Turn } from './drawing'

/** `toleranceM`: how far the fit may leave the hand. */
export function drawFreehand(closes: boolean, toleranceM: number, stroke: readonly Pt[] = []): Drawing {
  const rest = () => drawFreehand(closes, toleranceM)
  return {
    phase: stroke.length === 0 ? 'idle' : 'dragging',
    prompt:
      stroke.length === 0
        ? 'Press and draw around in one stroke; by the keys, the arrows carry the point, and Enter begins the stroke and ends it. Lines and arcs are fitted to it.'
        : 'Draw around to where it began, and let go; by the keys, Enter ends it.',
    fields: [],
    placed: stroke,
    from: undefined,
    byDrag: true,
    ...(stroke.length === 0 ? {} : { isStroke: true as const }),
    press: at => ({ next: drawFreehand(closes, toleranceM, [at]) }),
    drag: at => drawFreehand(closes, toleranceM, [...stroke, at]),
    release(at): Turn {
      const fitted = fitStroke([...stroke, at], toleranceM)
      if (!fitted.ok) return { next: rest(), refused: fitted.error }
      const { corners } = fitted.value
      return {
        next: rest(),
        drawn: closes ? { kind: 'shape', shape: { kind: 'corners', corners } } : { kind: 'line', corners },
      }
    },
    live: () => ({}),
    type: () => ({ next: rest() }),
    finish: () => ({ next: rest() }),
    back: () => drawFreehand(closes, toleranceM, stroke.slice(0, -1)),
    sketch: () => null,
  }
}
