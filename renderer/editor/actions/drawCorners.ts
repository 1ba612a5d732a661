/** Corner after corner: an outline that closes, or a line with two ends. Edges are straight or arcs. */
import type { ShapeCorner } from '../../../core/document/commands/drawShape'
import type { Pt } from '../../../shared/document/primitives'
import { directionOf, turnBetween, unitOf } from '../entry/directions'
import {
  type Drawing,
  type Drawn,
  type Field,
  fromMark,
  type Mark,
  startFields,
  startPrompt,
  type Turn,
  typedStart,
} from './drawing'

export interface CornersWanted {
  readonly closes: boolean
  readonly mark: Mark | null
  readonly edge: 'straight' | 'arc'
  /** "the first corner". */
  readonly first?: string
}

interface InHand {
  readonly corners: readonly ShapeCorner[]
  /** The far end of an arc whose rise is still to be set. */
  readonly bendTo: Pt | null
  readonly dragging: boolean
}

const same = (a: Pt, b: Pt): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9

/** Rise of the arc from `a` to `b` through `p`, + = to the right of travel; the tangent of half the angle at which the
 * chord is seen from p halves the chord (inscribed angle theorem). */
export function riseThrough(a: Pt, b: Pt, p: Pt): number {
  const [ux, uy] = [a[0] - p[0], a[1] - p[1]]
  const [vx, vy] = [b[0] - p[0], b[1] - p[1]]
  const cross = ux * vy - uy * vx
  if (cross === 0) return 0
  const seen = Math.atan2(Math.abs(cross), ux * vx + uy * vy)
  const chordM = Math.hypot(b[0] - a[0], b[1] - a[1])
  return (-Math.sign(cross) * chordM) / 2 / Math.tan(seen / 2)
}

/** The shorter arc of a radius over a chord; undefined where none spans it. */
const riseOfRadius = (chordM: number, radiusM: number): number | undefined => {
  const half = chordM / 2
  if (!(radiusM >= half * (1 - 1e-12))) return undefined
  return (half * half) / (radiusM + Math.sqrt(Math.max(0, radiusM * radiusM - half * half)))
}

const arcFields: readonly Field[] = [
  { id: 'rise', label: 'Rise', reads: 'length', signed: true },
  { id: 'radius', label: 'Radius', reads: 'length', signed: true },
]
const firstEdge: readonly Field[] = [
  { id: 'length', label: 'Length', reads: 'length' },
  { id: 'direction', label: 'Direction', reads: 'direction' },
]
const laterEdge: readonly Field[] = [
  { id: 'length', label: 'Length', reads: 'length' },
  { id: 'turn', label: 'Turn', reads: 'turn' },
]

/** The direction in which an edge arrives at its end. */
const arrival = (from: ShapeCorner, to: Pt): number => {
  const chordM = Math.hypot(to[0] - from.at[0], to[1] - from.at[1])
  const straight = directionOf(from.at, to)
  // An arc that bulges to the right turns to the left by half its sweep, 2 atan(2s/c), past its chord.
  return straight - (2 * Math.atan2(2 * (from.riseM ?? 0), chordM) * 180) / Math.PI
}

export function drawCorners(
  wanted: CornersWanted,
  now: InHand = { corners: [], bendTo: null, dragging: false },
): Drawing {
  const { corners, bendTo, dragging } = now
  const { closes, mark, edge, first: firstWords = 'the first corner' } = wanted
  const last = corners.at(-1)
  const first = corners[0]
  const least = closes ? 3 : 2
  const next = (change: Partial<InHand>): Drawing => drawCorners(wanted, { ...now, dragging: false, ...change })
  const isWhole = corners.length >= least || (closes && corners.length === 2 && corners.some(({ riseM }) => riseM))
  /** The last edge can lead back to the first corner; an arc needs only two. */
  const canClose = closes && (isWhole || (edge === 'arc' && corners.length > 1))
  const drawnOf = (all: readonly ShapeCorner[]): Drawn =>
    closes ? { kind: 'shape', shape: { kind: 'corners', corners: all } } : { kind: 'line', corners: all }
  const end = (all: readonly ShapeCorner[]): Turn => ({ next: drawCorners(wanted), drawn: drawnOf(all) })

  /** The last corner with the rise of the edge that leaves it. */
  const bent = (riseM: number): readonly ShapeCorner[] => [...corners.slice(0, -1), { ...last!, riseM }]
  const setRise = (riseM: number): Turn =>
    closes && first && same(bendTo!, first.at)
      ? end(bent(riseM))
      : { next: next({ corners: [...bent(riseM), { at: bendTo! }], bendTo: null }) }
  const place = (at: Pt): Turn => {
    if (bendTo !== null) return setRise(riseThrough(last!.at, bendTo, at))
    if (last === undefined) return { next: next({ corners: [{ at }] }) }
    if (same(last.at, at)) return !closes && isWhole ? end(corners) : { next: next({}) }
    const closing = canClose && first !== undefined && same(first.at, at)
    if (edge === 'arc') return { next: next({ bendTo: at }) }
    return closing ? end(corners) : { next: next({ corners: [...corners, { at }] }) }
  }

  const before = corners.at(-2)
  const heading = before && last ? arrival(before, last.at) : 90
  const fields =
    bendTo !== null ? arcFields : last === undefined ? (mark ? startFields : firstEdge) : before ? laterEdge : firstEdge
  const prompt =
    bendTo !== null
      ? 'Click where the arc passes, or type its rise or its radius; with a minus it bends the other way.'
      : last === undefined
        ? startPrompt(mark, firstWords)
        : closes && edge === 'arc' && canClose
          ? `${corners.length} corners. Enter leads the last arc to the first corner; so does a click on it.`
          : corners.length < least
            ? `Click the next ${closes ? 'corner' : 'point'}, or type the length and where it goes.`
            : closes
              ? `${corners.length} corners. Enter closes it; so does a click on the first corner.`
              : `${corners.length} points. Enter ends it.`

  return {
    phase: dragging ? 'dragging' : last === undefined ? 'idle' : 'pointing',
    prompt,
    fields,
    placed: [...corners.map(({ at }) => at), ...(bendTo ? [bendTo] : [])],
    from: bendTo ? undefined : last?.at,
    press: place,
    drag: () => drawCorners(wanted, { ...now, dragging: true }),
    release: place,
    live(at) {
      if (bendTo !== null) {
        const riseM = riseThrough(last!.at, bendTo, at)
        const chordM = Math.hypot(bendTo[0] - last!.at[0], bendTo[1] - last!.at[1])
        return riseM === 0
          ? { rise: 0 }
          : { rise: Math.abs(riseM), radius: (chordM * chordM) / (8 * Math.abs(riseM)) + Math.abs(riseM) / 2 }
      }
      if (last === undefined) return mark ? fromMark(mark, at) : {}
      const length = Math.hypot(at[0] - last.at[0], at[1] - last.at[1])
      const direction = directionOf(last.at, at)
      return before ? { length, turn: turnBetween(heading, direction) } : { length, direction }
    },
    type(values, at) {
      if (bendTo !== null) {
        const chordM = Math.hypot(bendTo[0] - last!.at[0], bendTo[1] - last!.at[1])
        const side = at === null ? 1 : Math.sign(riseThrough(last!.at, bendTo, at)) || 1
        if (values.rise !== undefined) return setRise(side * values.rise)
        const radiusM = Math.abs(values.radius ?? 0)
        const riseM = riseOfRadius(chordM, radiusM)
        return riseM === undefined
          ? {
              next: next({}),
              refused: [
                {
                  code: 'radiusTooSmall',
                  severity: 'stop',
                  values: { radiusM, leastM: chordM / 2 },
                },
              ],
            }
          : setRise(side * (Math.sign(values.radius ?? 0) || 1) * riseM)
      }
      if (last === undefined && mark) return place(typedStart(mark, values))
      const from = last?.at ?? ([0, 0] as const)
      const pointed = at !== null && !same(at, from) ? directionOf(from, at) : undefined
      const direction =
        values.direction ??
        (values.turn !== undefined ? heading - values.turn : (pointed ?? (before ? heading - 90 : 90)))
      const lengthM = values.length ?? (at === null ? 0 : Math.hypot(at[0] - from[0], at[1] - from[1]))
      if (!(lengthM > 0))
        return {
          next: next({}),
          refused: [{ code: 'badMeasure', severity: 'stop', values: { foundM: lengthM, what: 'length of an edge' } }],
        }
      const [ux, uy] = unitOf(direction)
      const to: Pt = [from[0] + ux * lengthM, from[1] + uy * lengthM]
      const started = last === undefined ? drawCorners(wanted, { ...now, corners: [{ at: from }] }) : null
      // A typed edge that comes back to the start within the eighth of an inch has closed the outline.
      const closing = canClose && first && Math.hypot(to[0] - first.at[0], to[1] - first.at[1]) < 0.0016
      return started ? started.press(to) : place(closing ? first.at : to)
    },
    finish() {
      if (bendTo !== null) return { next: next({}) }
      if (canClose && edge === 'arc') return { next: next({ bendTo: first!.at }) }
      return isWhole ? end(corners) : { next: next({}) }
    },
    back: () =>
      bendTo !== null
        ? next({ bendTo: null })
        : next({
            corners: corners
              .slice(0, -1)
              .map(({ at, riseM }, i) => (i === corners.length - 2 || riseM === undefined ? { at } : { at, riseM })),
          }),
    withEdge: kind => drawCorners({ ...wanted, edge: kind }, { ...now, bendTo: null }),
    sketch(at) {
      if (last === undefined) return null
      if (bendTo !== null) {
        const arc = bent(at === null ? 0 : riseThrough(last.at, bendTo, at))
        const all = first && same(bendTo, first.at) ? arc : [...arc, { at: bendTo }]
        return all.length >= 2 ? drawnOf(all) : null
      }
      const all = at === null || same(at, last.at) || (first && same(at, first.at)) ? corners : [...corners, { at }]
      return drawnOf(all)
    },
  }
}
