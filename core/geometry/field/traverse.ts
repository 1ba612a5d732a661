import type { Pt } from '../../../shared/document/primitives'
import { err, type Finding, ok, type Result } from '../../../shared/problem'

export interface TraverseLeg {
  readonly lengthM: number
  /** Turn before walking this leg, degrees, + = to the left. The first leg turns from `headingDeg`. */
  readonly turnDeg: number
}

export interface TraverseOptions {
  /** Direction faced at the start, degrees counter-clockwise from drawing-right. */
  readonly headingDeg?: number
  /** The turn, back at the start, that faces along the first leg again: its reading shows the error of the turns. */
  readonly lastTurnDeg?: number
  /** Error of the turns that may be shared, degrees for each corner; default 1 (own choice: a turn read by hand). */
  readonly allowedTurnDeg?: number
  /** Closing error that may be spread, as a share of the way walked; default 1/200 (own choice). */
  readonly allowedShare?: number
}

export interface Traverse {
  /** Corners after the errors have been spread, from the start on. */
  readonly corners: readonly Pt[]
  /** Corners as they were walked; the last is where the walk came back to. */
  readonly walked: readonly Pt[]
  readonly closingErrorM: number
  readonly walkedM: number
  /** Sum of the turns less a full turn, degrees; undefined without the last turn. */
  readonly turnErrorDeg?: number
}

const walk = (start: Pt, legs: readonly TraverseLeg[], headingDeg: number, mendDeg: number): Pt[] => {
  const points: Pt[] = [start]
  let heading = headingDeg
  legs.forEach(({ lengthM, turnDeg }, i) => {
    heading += turnDeg + (i === 0 ? 0 : mendDeg)
    const [x, y] = points.at(-1)!
    const angle = (heading * Math.PI) / 180
    points.push([x + lengthM * Math.cos(angle), y + lengthM * Math.sin(angle)])
  })
  return points
}

/**
 * Edges walked in order until back at the start. The error of the turns, where the last one was read, is shared equally
 * by all corners; the closing error is then spread by the compass rule: each corner moves against it by the share of
 * the way walked so far. Refused where it exceeds `allowedShare` of the way, or the turns miss a full turn by more than
 * `allowedTurnDeg` for each corner.
 * Source: compass (Bowditch) rule, P. R. Wolf and C. D. Ghilani, Elementary Surveying, 13th ed., 2012, chapter 10.
 */
export function traverse(
  start: Pt,
  legs: readonly TraverseLeg[],
  { headingDeg = 0, lastTurnDeg, allowedTurnDeg = 1, allowedShare = 1 / 200 }: TraverseOptions = {},
): Result<Traverse, readonly Finding[]> {
  const stop = (code: Finding['code'], values: Finding['values']) => err([{ code, severity: 'stop', values } as const])
  if (legs.length < 3) return stop('traverseShort', { legs: legs.length, least: 3 })
  for (const { lengthM, turnDeg } of legs) {
    if (!(lengthM > 0 && Number.isFinite(lengthM)))
      return stop('badMeasure', { foundM: lengthM, what: 'length of an edge' })
    if (!Number.isFinite(turnDeg)) return stop('badMeasure', { found: turnDeg, what: 'turn' })
  }
  const turnsDeg = legs.slice(1).reduce((sum, leg) => sum + leg.turnDeg, 0) + (lastTurnDeg ?? 0)
  const turnErrorDeg = lastTurnDeg === undefined ? undefined : turnsDeg - 360 * Math.sign(turnsDeg)
  const allowedDeg = allowedTurnDeg * legs.length
  if (turnErrorDeg !== undefined && Math.abs(turnErrorDeg) > allowedDeg)
    return stop('turnsOpen', { turnsDeg: Math.abs(turnsDeg), allowedDeg })
  const walked = walk(start, legs, headingDeg, -(turnErrorDeg ?? 0) / legs.length)
  const walkedM = legs.reduce((sum, leg) => sum + leg.lengthM, 0)
  const end = walked.at(-1)!
  const [ex, ey] = [end[0] - start[0], end[1] - start[1]]
  const closingErrorM = Math.hypot(ex, ey)
  const allowedM = allowedShare * walkedM
  if (closingErrorM > allowedM) return stop('traverseOpen', { closingM: closingErrorM, walkedM, allowedM })
  let run = 0
  const corners = walked.slice(0, -1).map(([x, y], i): Pt => {
    if (i > 0) run += legs[i - 1]!.lengthM
    const share = run / walkedM
    return [x - ex * share, y - ey * share]
  })
  return ok({ corners, walked, closingErrorM, walkedM, ...(turnErrorDeg === undefined ? {} : { turnErrorDeg }) })
}
