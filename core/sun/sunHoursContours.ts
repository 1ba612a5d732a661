/** Lines of equal sun on a slab, for drawing. */
import type { Pt } from '../../shared/document/primitives'
import { intersectRings } from '../geometry/clip'
import type { Region, Ring } from '../geometry/curve'
import { flatArea } from '../geometry/flatArea'
import { flattenRegion } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { cellSunMinutes } from './cellMasks'
import type { Exposure } from './exposure'

export interface SunHoursContour {
  readonly hours: number
  /** Where direct sun lasts at least so long, on the concrete. */
  readonly regions: readonly Region[]
  readonly areaM2: number
}

interface Field {
  readonly values: Float64Array
  readonly columns: number
  readonly rows: number
  /** Place of the first value. */
  readonly minX: number
  readonly minY: number
  readonly stepM: number
}

/** Values at the cells' centers, carried on by one cell beyond the grid (so that the slab's edge is covered), and closed
 * by a rim of no sun. */
const padded = ({ grid }: Exposure, minutes: Float64Array): Field => {
  const columns = grid.columns + 4
  const rows = grid.rows + 4
  const values = new Float64Array(columns * rows).fill(-1)
  const held = (i: number, count: number) => Math.min(count - 1, Math.max(0, i - 2))
  for (let row = 1; row < rows - 1; row++)
    for (let column = 1; column < columns - 1; column++)
      values[row * columns + column] = minutes[held(row, grid.rows) * grid.columns + held(column, grid.columns)]!
  return {
    values,
    columns,
    rows,
    minX: grid.minX - 1.5 * grid.cellM,
    minY: grid.minY - 1.5 * grid.cellM,
    stepM: grid.cellM,
  }
}

/** Sides of a square of four values, around from the bottom. */
const [bottom, right, top, left] = [0, 1, 2, 3]

/** From side to side with the high ground on the left, for each pattern of high corners (bit 0 lower left, then
 * counter-clockwise); the two saddles, 5 and 10, are decided by their middle. */
const crossings: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  1: [[bottom, left]],
  2: [[right, bottom]],
  3: [[right, left]],
  4: [[top, right]],
  6: [[top, bottom]],
  7: [[top, left]],
  8: [[left, top]],
  9: [[bottom, top]],
  11: [[right, top]],
  12: [[left, right]],
  13: [[bottom, right]],
  14: [[left, bottom]],
}

const saddle = (pattern: number, middleIsHigh: boolean): readonly (readonly [number, number])[] => {
  if (pattern === 5)
    return middleIsHigh
      ? [
          [bottom, right],
          [top, left],
        ]
      : [
          [bottom, left],
          [top, right],
        ]
  return middleIsHigh
    ? [
        [left, bottom],
        [right, top],
      ]
    : [
        [right, bottom],
        [left, top],
      ]
}

/** Closed rings around all that is at least `level`, high ground on the left. */
const ringsAt = ({ values, columns, rows, minX, minY, stepM }: Field, level: number): Ring[] => {
  const next = new Map<number, number>()
  /** Number of a side: twice its lower left node, + 1 for one that goes up. */
  const sideOf = (node: number, side: number): number => {
    if (side === bottom) return 2 * node
    if (side === top) return 2 * (node + columns)
    return side === left ? 2 * node + 1 : 2 * (node + 1) + 1
  }
  for (let row = 0; row < rows - 1; row++)
    for (let column = 0; column < columns - 1; column++) {
      const node = row * columns + column
      const around = [values[node]!, values[node + 1]!, values[node + columns + 1]!, values[node + columns]!]
      const pattern = around.reduce((sum, value, i) => sum + (value >= level ? 1 << i : 0), 0)
      if (pattern === 0 || pattern === 15) continue
      const mean = around.reduce((sum, value) => sum + value, 0) / 4
      for (const [from, to] of crossings[pattern] ?? saddle(pattern, mean >= level))
        next.set(sideOf(node, from), sideOf(node, to))
    }
  const pointOf = (side: number): Pt => {
    const node = side >> 1
    const up = side & 1
    const a = values[node]!
    const b = values[up ? node + columns : node + 1]!
    const share = (level - a) / (b - a)
    const column = node % columns
    const row = (node - column) / columns
    return [minX + (column + (up ? 0 : share)) * stepM, minY + (row + (up ? share : 0)) * stepM]
  }
  const rings: Ring[] = []
  for (const start of [...next.keys()]) {
    const ring: Pt[] = []
    for (let side: number | undefined = start; side !== undefined && next.has(side); ) {
      ring.push(pointOf(side))
      const following: number | undefined = next.get(side)
      next.delete(side)
      side = following
    }
    if (ring.length > 2) rings.push(ring)
  }
  return rings
}

/**
 * For each number of hours, the part of the slab whose direct sun lasts at least so long: marching squares over the
 * minutes of the cells, straight between their centers, clipped to the concrete.
 * Source: W. E. Lorensen and H. E. Cline, "Marching Cubes", Computer Graphics 21(4), 1987, in the plane; saddles by
 * their middle.
 */
export const sunHoursContours = (
  exposed: Exposure,
  slab: Pick<ResolvedSlab, 'net'>,
  hours: readonly number[],
): readonly SunHoursContour[] => {
  const field = padded(exposed, cellSunMinutes(exposed))
  const net = slab.net.map(region => flattenRegion(region))
  const netRings = net.flatMap(({ ring, holes }) => [ring, ...holes])
  return hours.map(each => {
    // No sun at all is everywhere "at least 0".
    const regions = each <= 0 ? net : intersectRings(ringsAt(field, each * 60), netRings)
    return { hours: each, regions, areaM2: flatArea(regions) }
  })
}
