/** Seeded wishes for a slab: required lines, lines and areas without joints, here and there beside the slab. */
import { regionContains } from '../../core/geometry/contains'
import type { CurveRegion, CurveRing } from '../../core/geometry/curve'
import type { JointWishes } from '../../core/pours/wishes/jointWishes'
import type { Pt } from '../../shared/document/primitives'
import { flatRing } from './curveMeasures'
import { moved } from './randomSlabs'
import { seeded } from './seeded'
import { circle, rectangle, region } from './shapes'

const ftM = 0.3048

export interface WishCounts {
  readonly required: number
  readonly lines: number
  readonly areas: number
  /** Whether a least width is wished as well. */
  readonly width?: true
}

export function randomWishes(slab: CurveRegion, seed: number, most: WishCounts): JointWishes {
  const random = seeded(seed)
  const between = (low: number, high: number) => low + (high - low) * random()
  const points = flatRing(slab.outer, 8)
  const [xs, ys] = [points.map(p => p[0]), points.map(p => p[1])]
  const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
  const anywhere = (): Pt => [between(box.x0, box.x1), between(box.y0, box.y1)]
  const inside = (): Pt => {
    for (let i = 0; i < 200; i++) {
      const p = anywhere()
      if (regionContains(slab, p)) return p
    }
    return anywhere()
  }
  const count = (n: number) => Math.floor(random() * (n + 1))
  const reach = Math.hypot(box.x1 - box.x0, box.y1 - box.y0)
  /** Along an edge of the slab, square to one, or any which way. */
  const direction = (): number => {
    const edge = slab.outer[Math.floor(random() * slab.outer.length)]!
    const along = Math.atan2(edge.to[1] - edge.from[1], edge.to[0] - edge.from[0])
    const kind = random()
    return kind < 0.4 ? along : kind < 0.8 ? along + Math.PI / 2 : between(0, Math.PI)
  }
  const line = (): readonly [Pt, Pt] => {
    const [x, y] = inside()
    const angle = direction()
    const [back, on] = random() < 0.7 ? [reach, reach] : [between(1, 8), between(1, 8)]
    return [
      [x - back * Math.cos(angle), y - back * Math.sin(angle)],
      [x + on * Math.cos(angle), y + on * Math.sin(angle)],
    ]
  }
  const area = (): CurveRing => {
    const [x, y] = anywhere()
    const shape = random() < 0.4 ? circle(0, 0, between(2, 9)) : rectangle(0, 0, between(3, 20), between(3, 20))
    return moved(region(shape), direction(), x, y).outer
  }
  return {
    required: Array.from({ length: count(most.required) }, (_, i) => {
      const [from, to] = line()
      return { id: `y${i + 1}`, from, to }
    }),
    forbiddenLines: Array.from({ length: count(most.lines) }, (_, i) => {
      const [x, y] = anywhere()
      const corners = Array.from(
        { length: 2 + count(2) },
        (): Pt => [x + between(-12, 12) * ftM, y + between(-12, 12) * ftM],
      )
      return { id: `l${i + 1}`, line: corners }
    }),
    forbiddenAreas: Array.from({ length: count(most.areas) }, (_, i) => ({ id: `a${i + 1}`, ring: area() })),
    ...(most.width ? { leastWidthM: between(3, 16) * ftM } : {}),
  }
}
