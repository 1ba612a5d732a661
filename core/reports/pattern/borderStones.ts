/** The courses of borders and bands: stones that stand square to the edge or line they run along. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'
import type { Band } from '../../../shared/document/slab'
import type { CurveEdge, CurveRing } from '../../geometry/curve'
import { pointAt } from '../../geometry/edgeAt'
import { edgeLength } from '../../geometry/edgeLength'
import { resolvePath } from '../../geometry/resolvePath'
import { type Stone, toneOf } from './finishPattern'
import { inwardAt } from './inwardAt'

/** Patterns that a border or band shows as courses across it; the others run on as they do in a field. */
const coursed: ReadonlySet<Finish['pattern']> = new Set(['plank', 'runningBond', 'ashlar'])

export const isCoursed = (pattern: Finish['pattern']): boolean => coursed.has(pattern)

/** A course is about this wide, 6 in or 1 ft, a whole number of them along each edge. */
const courseM: Readonly<Partial<Record<Finish['pattern'], number>>> = {
  plank: 0.1524,
  runningBond: 0.2042,
  ashlar: 0.3048,
}

/** Stones reach over the edges by this, so that a clip to the border leaves no gap. */
const overM = 0.01

/**
 * Stones from the edge to `depthM` inwards along `ring`, in plan meters: to be clipped to the border. At a corner the
 * later edge's courses lie over the earlier one's.
 */
export function borderStones(ring: CurveRing, depthM: number, pattern: Finish['pattern']): Stone[] {
  const wishM = courseM[pattern] ?? 0.3048
  return ring.flatMap((edge, e) => {
    const count = Math.max(1, Math.round(edgeLength(edge) / wishM))
    const across = Array.from({ length: count + 1 }, (_, i): readonly [Pt, Pt] => {
      const [x, y] = pointAt(edge, i / count)
      const [nx, ny] = inwardAt(edge, x, y)
      return [
        [x - nx * overM, y - ny * overM],
        [x + nx * (depthM + overM), y + ny * (depthM + overM)],
      ]
    })
    const stones = across.slice(1).map((next, i): Stone => {
      const before = across[i]!
      return { points: [before[0], next[0], next[1], before[1]], tone: toneOf(e * 1009 + i) }
    })
    const corner = cornerStone(across.at(-1)!, edge, ring[(e + 1) % ring.length]!, depthM)
    return corner === null ? stones : [...stones, { points: corner, tone: toneOf(e * 1009 + 1008) }]
  })
}

/** At a re-entrant corner one stone more fills the square between the two runs; null at any other. */
function cornerStone(
  [out, deep]: readonly [Pt, Pt],
  edge: CurveEdge,
  next: CurveEdge,
  depthM: number,
): readonly Pt[] | null {
  if (edge.arc || next.arc) return null
  const direction = ({ from, to }: CurveEdge): Pt => {
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    return [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
  }
  const [u, v] = [direction(edge), direction(next)]
  // Concrete lies on the left: a turn to the right leaves a square uncovered.
  if (u[0] * v[1] - u[1] * v[0] > -1e-6) return null
  const on = ([x, y]: Pt): Pt => [x + u[0] * (depthM + overM), y + u[1] * (depthM + overM)]
  return [out, on(out), on(deep), deep]
}

/** A line across a band: its ends, how far along the edge it stands, and how far its ends lean along it. */
interface Cut {
  readonly ends: readonly [Pt, Pt]
  readonly atM: number
  readonly slantM: number
}

/**
 * Stones across a band, half its width to either side of its line, in plan meters: to be clipped to the band. At a corner
 * of two straight edges they meet on the miter.
 */
export function bandStones({ id, line: path, widthM }: Band, pattern: Finish['pattern']): Stone[] {
  const closed = path.edges.length === path.vertices.length
  const line = resolvePath(path, id, closed).ring
  const wishM = courseM[pattern] ?? 0.3048
  const halfM = widthM / 2 + overM
  return line.flatMap((edge, e) => {
    const before = e > 0 || closed ? line.at(e - 1) : undefined
    const after = e + 1 < line.length || closed ? line[(e + 1) % line.length] : undefined
    const lengthM = edgeLength(edge)
    const count = Math.max(1, Math.round(lengthM / wishM))
    const cuts = Array.from({ length: count + 1 }, (_, i): Cut => {
      const [x, y] = pointAt(edge, i / count)
      const own = inwardAt(edge, x, y)
      const neighbor = i === 0 ? before : i === count ? after : undefined
      const [mx, my] = neighbor === undefined ? own : miter(own, inwardAt(neighbor, x, y))
      const ends: readonly [Pt, Pt] = [
        [x - mx * halfM, y - my * halfM],
        [x + mx * halfM, y + my * halfM],
      ]
      return { ends, atM: (i / count) * lengthM, slantM: Math.hypot(mx - own[0], my - own[1]) * halfM }
    })
    // A miter takes the place of the cuts it would cross.
    const across = cuts
      .filter(({ atM }, i) => i === 0 || i === count || (atM > cuts[0]!.slantM && atM < lengthM - cuts.at(-1)!.slantM))
      .map(({ ends }) => ends)
    // Ends of the line run on to whatever the band is cut by.
    const [first, last] = [across[0]!, across.at(-1)!]
    if (before === undefined) across[0] = movedAlong(first, widthM)
    if (after === undefined) across[across.length - 1] = movedAlong(last, -widthM)
    return across.slice(1).map((next, i): Stone => {
      const [out, deep] = across[i]!
      return { points: [out, next[0], next[1], deep], tone: toneOf(e * 1009 + i) }
    })
  })
}

/** Where both sides of two edges meet, for one meter of depth; no longer than three times that at a sharp corner. */
function miter([ax, ay]: Pt, [bx, by]: Pt): Pt {
  const [sx, sy] = [ax + bx, ay + by]
  const reach = 2 / Math.max(sx * sx + sy * sy, 4 / 9)
  return [sx * reach, sy * reach]
}

/** A cut across a band, moved against the direction of travel. */
function movedAlong([out, deep]: readonly [Pt, Pt], byM: number): readonly [Pt, Pt] {
  const [nx, ny] = [deep[0] - out[0], deep[1] - out[1]]
  const long = Math.hypot(nx, ny)
  const [dx, dy] = [(-ny / long) * byM, (nx / long) * byM]
  return [
    [out[0] + dx, out[1] + dy],
    [deep[0] + dx, deep[1] + dy],
  ]
}
