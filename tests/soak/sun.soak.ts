/** Roofs and shadows over many more footprints than the tests take time for. */
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping'
import { expect, it } from 'vitest'
import { unionNonZero } from '../../core/geometry/clip'
import type { Ring } from '../../core/geometry/curve'
import { flatArea, flatRingArea } from '../../core/geometry/flatArea'
import { cleanRing } from '../../core/sun/cleanRing'
import { straightSkeleton } from '../../core/sun/straightSkeleton'
import { sweepRing } from '../../core/sun/sweepRing'
import type { Pt } from '../../shared/document/primitives'
import { box, seeded } from '../sun/fixtures'

const star = (random: () => number, mostCorners: number): Ring => {
  const corners = 3 + Math.floor(random() * (mostCorners - 2))
  return cleanRing(
    Array.from({ length: corners }, (_, i): Pt => {
      const angle = (2 * Math.PI * (i + 0.8 * random())) / corners
      const radius = 2 + 10 * random()
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    }),
  )
}

const blocks = (random: () => number): Ring | null => {
  const cells: Pt[] = [[0, 0]]
  const count = 2 + Math.floor(random() * 16)
  while (cells.length < count) {
    const [x, y] = cells[Math.floor(random() * cells.length)]!
    const [dx, dy] = ([[1, 0], [0, 1], [-1, 0], [0, -1]] as const)[Math.floor(random() * 4)]! // biome-ignore format: one line
    if (!cells.some(([cx, cy]) => cx === x + dx && cy === y + dy)) cells.push([x + dx, y + dy])
  }
  const sideM = 0.3048 * (1 + Math.floor(8 * random()))
  const turn = Math.PI * random()
  const [only, ...others] = unionNonZero(cells.map(([x, y]) => box(x * sideM, y * sideM, sideM, sideM)))
  if (only === undefined || others.length > 0 || only.holes.length > 0) return null
  return cleanRing(
    only.ring.map(([x, y]): Pt => [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]),
  )
}

it('a roof is found over 30,000 footprints', () => {
  const random = seeded(1001)
  let refused = 0
  for (let n = 0; n < 30_000; n++) {
    const ring = n % 2 === 0 ? star(random, 30) : blocks(random)
    if (ring === null) continue
    const pieces = straightSkeleton(
      ring,
      ring.map(() => 1),
    )
    if (pieces === null) refused++
  }
  expect(refused).toBe(0)
})

it('the shadow cycle is the union of swept edges over 3,000 footprints', () => {
  const random = seeded(1002)
  for (let n = 0; n < 3000; n++) {
    const ring = star(random, 20)
    const [sx, sy] = [20 * random() - 10, 20 * random() - 10]
    const close = (each: Ring): [number, number][] => [...each, each[0]!].map(([x, y]) => [x, y])
    const quads = ring.map(([x, y], i): Polygon => {
      const [nx, ny] = ring[(i + 1) % ring.length]!
      return [close([[x, y], [nx, ny], [nx + sx, ny + sy], [x + sx, y + sy]])] // biome-ignore format: one line
    })
    const swept: MultiPolygon = polygonClipping.union(
      [[close(ring)]],
      [[close(ring.map(([x, y]): Pt => [x + sx, y + sy]))]],
      ...quads.map((quad): MultiPolygon => [quad]),
    )
    const sweptM2 = swept.reduce(
      (sum, [outer, ...holes]) =>
        sum + holes.reduce((own, hole) => own - Math.abs(flatRingArea(hole)), Math.abs(flatRingArea(outer!))),
      0,
    )
    const out = new Float64Array(8 * ring.length)
    const count = sweepRing(Float64Array.from(ring.flat()), 0, 0, sx, sy, out, 0)
    const cycle = Array.from({ length: count / 2 }, (_, i): Pt => [out[2 * i]!, out[2 * i + 1]!])
    const areaM2 = flatArea(unionNonZero([cycle]))
    expect(flatRingArea(cycle)).toBeGreaterThan(0)
    expect(Math.abs(areaM2 - sweptM2)).toBeLessThan(2e-3)
  }
})
