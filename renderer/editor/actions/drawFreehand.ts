/** A stroke of the hand, made into lines and arcs that a form can follow. */
import { fitOutline } from '../../../core/geometry/field/fitStroke'
import type { Pt } from '../../../shared/document/primitives'
import type { Drawing, Turn } from './drawing'

/** `toleranceM`: how far the fit may leave the hand. */
export function drawFreehand(toleranceM: number, stroke: readonly Pt[] = []): Drawing {
  const rest = () => drawFreehand(toleranceM)
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
    press: at => ({ next: drawFreehand(toleranceM, [at]) }),
    drag: at => drawFreehand(toleranceM, [...stroke, at]),
    release(at): Turn {
      const fitted = fitOutline([...stroke, at], toleranceM)
      if (!fitted.ok) return { next: rest(), refused: fitted.error }
      return { next: rest(), drawn: { kind: 'shape', shape: { kind: 'corners', corners: fitted.value } } }
    },
    live: () => ({}),
    type: () => ({ next: rest() }),
    finish: () => ({ next: rest() }),
    back: () => drawFreehand(toleranceM, stroke.slice(0, -1)),
    sketch: () => null,
  }
}
