/** What the sample sites are drawn with: ids from one counter, rings from points in meters. */
import type { Path, Vertex } from '../shared/document/path'
import type { Pt } from '../shared/document/primitives'
import type { Site } from '../shared/document/site'
import type { Slab } from '../shared/document/slab'

export interface Corner {
  readonly at: Pt
  readonly roundM?: number
  /** Rise of the edge that leaves this corner; + = to the right of travel. */
  readonly riseM?: number
}

export interface Draft {
  /** A fresh id such as `e7`. */
  id(kind: string): string
  /** A path of as many edges as corners, or one fewer when it is open. */
  path(corners: readonly Corner[], open?: 'open'): Path
  /** A circle of four quarter arcs; counter-clockwise for an outline, clockwise for an opening. */
  circle(center: Pt, radiusM: number, turn: 'counterClockwise' | 'clockwise'): Path
  /** The value for `nextId` once everything is drawn. */
  nextId(): number
}

/** What a slab has none of unless it says so. */
export const noParts = {
  openings: [],
  thickened: [],
  borders: [],
  bands: [],
  insets: [],
  steps: [],
  obstacles: [],
  againstExisting: [],
} satisfies Partial<Slab>

/** What a site has none of unless it says so. */
export const noRows = { slabs: [], casters: [], points: [], wishes: [], accepted: [] } satisfies Partial<Site>

/** Corners of a rectangle, counter-clockwise from the lower left, or clockwise for an opening. */
export const rectangle = ([x, y]: Pt, widthM: number, heightM: number, turn?: 'clockwise'): readonly Corner[] => {
  const corners: Corner[] = [
    { at: [x, y] },
    { at: [x + widthM, y] },
    { at: [x + widthM, y + heightM] },
    { at: [x, y + heightM] },
  ]
  return turn === 'clockwise' ? corners.reverse() : corners
}

/** Mid-ordinate of a quarter circle: R(1 − cos 45°). */
export const quarterRise = (radiusM: number): number => radiusM * (1 - Math.SQRT1_2)

/** `from` continues the ids of a site that is already drawn. */
export const startDraft = (from = 1): Draft => {
  let next = from
  const id = (kind: string) => `${kind}${next++}`
  const path = (corners: readonly Corner[], open?: 'open'): Path => {
    const pathId = id('r')
    const vertices: Vertex[] = corners.map(({ at, roundM }) => ({
      id: id('v'),
      at,
      ...(roundM === undefined ? {} : { roundM }),
    }))
    const leaving = open === undefined ? corners : corners.slice(0, -1)
    const edges = leaving.map(({ riseM }) => ({ id: id('e'), ...(riseM === undefined ? {} : { riseM }) }))
    return { id: pathId, vertices, edges }
  }
  const circle = ([x, y]: Pt, radiusM: number, turn: 'counterClockwise' | 'clockwise'): Path => {
    const riseM = turn === 'counterClockwise' ? quarterRise(radiusM) : -quarterRise(radiusM)
    const around: Pt[] = [
      [x + radiusM, y],
      [x, y + radiusM],
      [x - radiusM, y],
      [x, y - radiusM],
    ]
    if (turn === 'clockwise') around.reverse()
    return path(around.map(at => ({ at, riseM })))
  }
  return { id, path, circle, nextId: () => next }
}
