/** Seeded slabs of many kinds, in feet inside, in meters outside. */
import type { CurveRegion, CurveRing } from '../../core/geometry/curve'
import { seeded } from './seeded'
import { arcPath, circle, type NamedSlab, namedSlabs, planter, polygon, region, reversed } from './shapes'

type Corner = readonly [number, number]
type Random = () => number

const between = (random: Random, low: number, high: number): number => low + (high - low) * random()

/** A run of columns with their own floor and ceiling, each overlapping the last by at least `lapFt`. */
export function rectilinear(random: Random, scaleFt: number): CurveRegion {
  const columns = 2 + Math.floor(random() * 4)
  const tops: number[] = []
  const bottoms: number[] = []
  const widths: number[] = []
  const lapFt = 8
  let low = 0
  let high = scaleFt * between(random, 0.8, 1.4)
  for (let i = 0; i < columns; i++) {
    if (i > 0) {
      const floor = between(random, low - scaleFt * 0.6, high - lapFt)
      const ceiling = between(random, Math.max(floor, low) + lapFt, high + scaleFt * 0.6)
      low = floor
      high = ceiling
    }
    bottoms.push(low)
    tops.push(high)
    widths.push(between(random, 10, scaleFt))
  }
  const below: Corner[] = []
  const above: Corner[] = []
  let x = 0
  for (let i = 0; i < columns; i++) {
    below.push([x, bottoms[i]!], [x + widths[i]!, bottoms[i]!])
    above.push([x, tops[i]!], [x + widths[i]!, tops[i]!])
    x += widths[i]!
  }
  return region(polygon([...below, ...above.reverse()]))
}

/** A star-shaped ring of arcs; every edge bulges by its own turn. */
function bulged(random: Random, radiusFt: number, corners: number): CurveRing {
  const turn = between(random, 0, 6)
  return arcPath(
    Array.from({ length: corners }, (_, i) => {
      const angle = turn + (2 * Math.PI * (i + between(random, -0.25, 0.25))) / corners
      const r = radiusFt * between(random, 0.7, 1.25)
      return [r * Math.cos(angle), r * Math.sin(angle), between(random, -0.35, 0.9)] as const
    }),
  )
}

export const blob = (random: Random, radiusFt: number): CurveRegion =>
  region(bulged(random, radiusFt, 5 + Math.floor(random() * 4)))

export function blobWithOpening(random: Random, radiusFt: number): CurveRegion {
  const outer = bulged(random, radiusFt, 6 + Math.floor(random() * 3))
  const size = radiusFt * between(random, 0.15, 0.4)
  const opening =
    random() < 0.5
      ? reversed(circle(between(random, -2, 2), between(random, -2, 2), size))
      : planter(-size * 0.7, -size * 0.5, size * 1.4, size)
  return region(outer, opening)
}

/** A rectangle with corners rounded by `roundFt` and an oval pool. */
export function roundedDeck(random: Random, widthFt: number, heightFt: number): CurveRegion {
  const r = between(random, 3, 10)
  const quarter = Math.PI / 2
  const outer = arcPath([
    [r, 0, 0],
    [widthFt - r, 0, quarter],
    [widthFt, r, 0],
    [widthFt, heightFt - r, quarter],
    [widthFt - r, heightFt, 0],
    [r, heightFt, quarter],
    [0, heightFt - r, 0],
    [0, r, quarter],
  ])
  const poolFt = between(random, 0.25, 0.4) * heightFt
  const x = widthFt * between(random, 0.4, 0.5)
  const y = heightFt / 2
  const pool = arcPath([
    [x - poolFt / 2, y - poolFt / 2, 0],
    [x + poolFt / 2, y - poolFt / 2, Math.PI],
    [x + poolFt / 2, y + poolFt / 2, 0],
    [x - poolFt / 2, y + poolFt / 2, Math.PI],
  ])
  return region(outer, reversed(pool))
}

/** A strip of even width along a line that turns by at most 70° at each of its points. */
export function walk(random: Random, widthFt: number, legs: number): CurveRegion {
  let heading = 0
  const points: Corner[] = [[0, 0]]
  const headings: number[] = []
  for (let i = 0; i < legs; i++) {
    if (i > 0) heading += between(random, 0.3, 1.2) * (i % 2 === 1 ? 1 : -1)
    headings.push(heading)
    const [x, y] = points[i]!
    const length = between(random, 40, 120)
    points.push([x + length * Math.cos(heading), y + length * Math.sin(heading)])
  }
  const side = (half: number): Corner[] =>
    points.map(([x, y], i) => {
      const before = headings[Math.max(0, i - 1)]!
      const after = headings[Math.min(headings.length - 1, i)]!
      const middle = (before + after) / 2
      const reach = half / Math.cos((after - before) / 2)
      return [x - reach * Math.sin(middle), y + reach * Math.cos(middle)]
    })
  return region(polygon([...side(-widthFt / 2), ...side(widthFt / 2).reverse()]))
}

/** A large rectangle with planters on an uneven lattice. */
export function court(random: Random, widthFt: number, heightFt: number, columns: number, rows: number): CurveRegion {
  const planters: CurveRing[] = []
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const size = between(random, 5, 10)
      const x = ((i + 0.5) * widthFt) / columns + between(random, -5, 5)
      const y = ((j + 0.5) * heightFt) / rows + between(random, -5, 5)
      planters.push(random() < 0.7 ? planter(x, y, size, size) : reversed(circle(x, y, size / 2)))
    }
  return region(
    polygon([
      [0, 0],
      [widthFt, 0],
      [widthFt, heightFt],
      [0, heightFt],
    ]),
    ...planters,
  )
}

/** The same slab turned about the drawing's origin and moved. */
export function moved(slab: CurveRegion, turnRad: number, dxM: number, dyM: number): CurveRegion {
  const c = Math.cos(turnRad)
  const s = Math.sin(turnRad)
  const at = ([x, y]: readonly [number, number]): readonly [number, number] => [
    c * x - s * y + dxM,
    s * x + c * y + dyM,
  ]
  const ring = (r: CurveRing): CurveRing =>
    r.map(e => ({
      edgeId: e.edgeId,
      from: at(e.from),
      to: at(e.to),
      ...(e.arc ? { arc: { ...e.arc, center: at(e.arc.center) } } : {}),
    }))
  return { outer: ring(slab.outer), holes: slab.holes.map(ring) }
}

/** A slab of any kind, turned and moved by chance. */
export function randomSlab(seed: number): CurveRegion {
  const random = seeded(seed)
  const kinds: (() => CurveRegion)[] = [
    () => rectilinear(random, between(random, 18, 45)),
    () => rectilinear(random, between(random, 18, 45)),
    () => blob(random, between(random, 18, 34)),
    () => blobWithOpening(random, between(random, 18, 36)),
    () => roundedDeck(random, between(random, 45, 90), between(random, 30, 56)),
    () => walk(random, between(random, 4, 9), 2 + Math.floor(random() * 3)),
    () => court(random, between(random, 60, 110), between(random, 50, 90), 2, 1 + Math.floor(random() * 2)),
  ]
  const slab = kinds[Math.floor(random() * kinds.length)]!()
  return random() < 0.3
    ? slab
    : moved(slab, between(random, 0, 6.28), between(random, -300, 300), between(random, -300, 300))
}

/** The mirror image in the y axis, rings turned back to their winding. */
export function mirrored(slab: CurveRegion): CurveRegion {
  const ring = (r: CurveRing): CurveRing =>
    reversed(r).map(e => ({
      edgeId: e.edgeId,
      from: [-e.from[0], e.from[1]],
      to: [-e.to[0], e.to[1]],
      ...(e.arc
        ? { arc: { center: [-e.arc.center[0], e.arc.center[1]], radiusM: e.arc.radiusM, sweepRad: -e.arc.sweepRad } }
        : {}),
    }))
  return { outer: ring(slab.outer), holes: slab.holes.map(ring) }
}

/** The same rings, begun `by` edges later. */
export function startedLater(slab: CurveRegion, by: number): CurveRegion {
  const ring = (r: CurveRing): CurveRing => [...r.slice(by % r.length), ...r.slice(0, by % r.length)]
  return { outer: ring(slab.outer), holes: slab.holes.map(ring) }
}

/** The bench's slabs: named, rectilinear, rounded, with openings, walks, courts and plazas. */
export function benchSlabs(): NamedSlab[] {
  const random = seeded(20240611)
  const slabs: NamedSlab[] = namedSlabs()
  const add = (name: string, slab: CurveRegion, turned = true): void => {
    slabs.push({ name, region: turned ? moved(slab, between(random, 0, Math.PI), 0, 0) : slab })
  }
  for (let i = 1; i <= 16; i++) add(`rectilinear ${i}`, rectilinear(random, between(random, 20, 45)), i % 2 === 0)
  for (let i = 1; i <= 8; i++) add(`blob ${i}`, blob(random, between(random, 18, 34)))
  for (let i = 1; i <= 8; i++) add(`blob with opening ${i}`, blobWithOpening(random, between(random, 20, 36)))
  for (let i = 1; i <= 6; i++)
    add(`rounded deck ${i}`, roundedDeck(random, between(random, 50, 90), between(random, 34, 56)))
  for (let i = 1; i <= 5; i++) add(`walk ${i}`, walk(random, between(random, 4, 9), 3 + (i % 3)))
  for (let i = 1; i <= 4; i++)
    add(`court ${i}`, court(random, between(random, 110, 150), between(random, 80, 110), 3, 2))
  for (let i = 1; i <= 2; i++) add(`plaza ${i}`, court(random, 250, 200, 4, 3), i === 2)
  add('plaza 85', court(random, 300, 250, 5, 4), false)
  return slabs
}
