/** Pairs of polygons full of coincident edges, shared corners and touching points, and an independent answer for them. */
import polygonClipping, { type MultiPolygon } from 'polygon-clipping'
import type { Region, Ring } from '../../core/geometry/curve'
import { flatRingArea } from '../../core/geometry/flatArea'
import type { Pt } from '../../shared/document/primitives'

/** A star-shaped polygon with its corners on a coarse grid, so that pairs share corners and edges; counter-clockwise. */
function gridStar(random: () => number, corners: number, step: number): Ring {
  const points: Pt[] = []
  for (let i = 0; i < corners; i++) {
    const angle = ((i + random() * 0.9) / corners) * 2 * Math.PI
    const reach = 1 + random() * 4
    const p: Pt = [
      Math.round((reach * Math.cos(angle)) / step) * step + Math.round(random()) * step,
      Math.round((reach * Math.sin(angle)) / step) * step,
    ]
    const before = points[points.length - 1]
    if (!before || before[0] !== p[0] || before[1] !== p[1]) points.push(p)
  }
  return points
}

const blocks = (random: () => number): Ring => {
  const x = Math.floor(random() * 5) * 0.5
  const y = Math.floor(random() * 5) * 0.5
  const w = 0.5 + Math.floor(random() * 5) * 0.5
  const h = 0.5 + Math.floor(random() * 5) * 0.5
  return [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ]
}

const crossesItself = (ring: Ring): boolean => {
  const cross = (o: Pt, a: Pt, b: Pt) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
  const within = (a: Pt, b: Pt, p: Pt) =>
    cross(a, b, p) === 0 && (p[0] - a[0]) * (p[0] - b[0]) + (p[1] - a[1]) * (p[1] - b[1]) <= 0
  const n = ring.length
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const [a, b, c, d] = [ring[i]!, ring[(i + 1) % n]!, ring[j]!, ring[(j + 1) % n]!]
      if (j === i + 1 || (j + 1) % n === i) {
        const [p, q, r] = j === i + 1 ? [a, b, d] : [c, a, b]
        if (within(p, q, r) || within(q, r, p)) return true
        continue
      }
      if (within(a, b, c) || within(a, b, d) || within(c, d, a) || within(c, d, b)) return true
      if (cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0) return true
    }
  return false
}

/** A simple polygon of one of three kinds: grid star, block, or free star. */
function somePolygon(random: () => number): Ring {
  for (;;) {
    const kind = random()
    const ring =
      kind < 0.4
        ? gridStar(random, 3 + Math.floor(random() * 9), 0.5)
        : kind < 0.7
          ? blocks(random)
          : gridStar(random, 12, 0.001)
    if (ring.length >= 3 && !crossesItself(ring) && flatRingArea(ring) > 0) return ring
  }
}

/** Two polygons; every third time the second shares an edge or a corner with the first. */
export function degeneratePair(random: () => number): [Region, Region] {
  const a = somePolygon(random)
  let b = somePolygon(random)
  if (random() < 0.33) {
    const [p, q] = [a[Math.floor(random() * a.length)]!, b[0]!]
    b = b.map(([x, y]): Pt => [x - q[0] + p[0], y - q[1] + p[1]])
  }
  return [
    { ring: a, holes: [] },
    { ring: b, holes: [] },
  ]
}

const closed = (ring: Ring): [number, number][] => [...ring, ring[0]!].map(([x, y]) => [x, y])
const polygon = ({ ring, holes }: Region) => [closed(ring), ...holes.map(closed)]

const areaOf = (answer: MultiPolygon): number =>
  answer.reduce(
    (sum, [outer, ...holes]) =>
      sum + holes.reduce((s, h) => s - Math.abs(flatRingArea(h.slice(1))), Math.abs(flatRingArea(outer!.slice(1)))),
    0,
  )

/** Areas by polygon-clipping (M. Fogel's implementation of the Martinez–Rueda–Feito sweep, robust predicates). */
export const oracle = {
  union: (a: Region, b: Region) => areaOf(polygonClipping.union(polygon(a), polygon(b))),
  intersection: (a: Region, b: Region) => areaOf(polygonClipping.intersection(polygon(a), polygon(b))),
  difference: (a: Region, b: Region) => areaOf(polygonClipping.difference(polygon(a), polygon(b))),
}
