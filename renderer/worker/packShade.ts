/**
 * The shade of a day as it crosses from the worker: the points of its outlines in one block of numbers, which is copied
 * in no time, and made into rings again only when somebody asks for them.
 */
import type { Region, Ring } from '../../core/geometry/curve'
import type { HourShadow, PlanShade } from '../../core/plan/plan'

/** Points of the outer ring, then of each hole. */
type RingCounts = readonly number[]

interface PackedShadow extends Omit<HourShadow, 'polygons' | 'dapple'> {
  readonly polygons: readonly RingCounts[]
  readonly dapple: readonly { readonly transmission: number; readonly region: RingCounts }[]
}

export interface PackedShade extends Omit<PlanShade, 'shadows'> {
  readonly shadows: readonly PackedShadow[]
  /** x0, y0, x1, y1 … of all rings in order, meters. */
  readonly points: Float64Array
}

export function packShade({ shadows, ...rest }: PlanShade): PackedShade {
  const numbers: number[] = []
  const pack = ({ ring, holes }: Region): RingCounts =>
    [ring, ...holes].map(each => {
      for (const [x, y] of each) numbers.push(x, y)
      return each.length
    })
  const packed = shadows.map(({ polygons, dapple, ...head }) => ({
    ...head,
    polygons: polygons.map(pack),
    dapple: dapple.map(({ region, transmission }) => ({ transmission, region: pack(region) })),
  }))
  return { ...rest, shadows: packed, points: Float64Array.from(numbers) }
}

export function unpackShade({ shadows, points, ...rest }: PackedShade): PlanShade {
  let made: readonly HourShadow[] | undefined
  return {
    ...rest,
    get shadows() {
      made ??= unpackShadows(shadows, points)
      return made
    },
  }
}

function unpackShadows(shadows: readonly PackedShadow[], points: Float64Array): readonly HourShadow[] {
  let at = 0
  const ring = (count: number): Ring =>
    Array.from({ length: count }, () => {
      at += 2
      return [points[at - 2]!, points[at - 1]!]
    })
  const region = (counts: RingCounts): Region => {
    const [outer = [], ...holes] = counts.map(ring)
    return { ring: outer, holes }
  }
  return shadows.map(({ polygons, dapple, ...head }) => ({
    ...head,
    polygons: polygons.map(region),
    dapple: dapple.map(each => ({ transmission: each.transmission, region: region(each.region) })),
  }))
}
