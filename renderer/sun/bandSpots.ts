import type { SunMap } from '../../core/plan/deriveScreen'
import type { Pt } from '../../shared/document/primitives'
import { bandOf, type SunBands } from './sunBands'

/** A name may lie this much over its neighbors' bands, as a share of its own ground. */
const leastShare = 0.75
const mostSpots = 5

/** The map's cells by band, with what is summed over boxes of them. */
interface BandCells {
  /** Band of each cell, −1 off the slab. */
  readonly own: Int8Array
  /** Steps to the nearest cell of another band or off the slab. */
  readonly far: Int32Array
  /** Cells of the slab in the box from the grid's first corner, and those of each band. */
  readonly onSlab: Int32Array
  readonly ofBand: readonly Int32Array[]
}

type Spots = readonly (readonly Pt[])[]

const known = new WeakMap<SunMap, { readonly bands: SunBands; readonly cells: BandCells }>()
/** Of the last size of names: only a zoom changes it. */
const lastSpots = new WeakMap<BandCells, { readonly sizes: string; readonly spots: Spots }>()

function cellsOf(map: SunMap, bands: SunBands): BandCells {
  const made = known.get(map)
  if (made?.bands === bands) return made.cells
  const { columns, rows } = map.grid
  const own = new Int8Array(columns * rows).fill(-1)
  for (let cell = 0; cell < own.length; cell++)
    if (map.weights[cell]! >= 1) own[cell] = bandOf(bands, map.minutes[cell]! / 60)
  const cells = {
    own,
    far: stepsToOther(own, columns, rows),
    onSlab: boxSums(own, columns, rows, band => band >= 0),
    ofBand: bands.names.map((_, band) => boxSums(own, columns, rows, each => each === band)),
  }
  known.set(map, { bands, cells })
  return cells
}

/** City-block distance, sweeping there and back. */
function stepsToOther(own: Int8Array, columns: number, rows: number): Int32Array {
  const far = new Int32Array(columns * rows)
  const look = (cell: number, x: number, y: number, dx: number, dy: number): number => {
    const [nx, ny] = [x + dx, y + dy]
    if (nx < 0 || ny < 0 || nx >= columns || ny >= rows) return 0
    const next = ny * columns + nx
    return own[next] === own[cell] ? far[next]! : 0
  }
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const cell = y * columns + x
      if (own[cell] !== -1) far[cell] = 1 + Math.min(look(cell, x, y, -1, 0), look(cell, x, y, 0, -1))
    }
  for (let y = rows - 1; y >= 0; y--)
    for (let x = columns - 1; x >= 0; x--) {
      const cell = y * columns + x
      if (own[cell] !== -1)
        far[cell] = Math.min(far[cell]!, 1 + Math.min(look(cell, x, y, 1, 0), look(cell, x, y, 0, 1)))
    }
  return far
}

/** A summed-area table: entry (x, y) counts the cells below and left of it, one column and row more than the grid. */
function boxSums(own: Int8Array, columns: number, rows: number, counts: (band: number) => boolean): Int32Array {
  const sums = new Int32Array((columns + 1) * (rows + 1))
  const wide = columns + 1
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++)
      sums[(y + 1) * wide + x + 1] =
        sums[y * wide + x + 1]! +
        sums[(y + 1) * wide + x]! -
        sums[y * wide + x]! +
        (counts(own[y * columns + x]!) ? 1 : 0)
  return sums
}

const inBox = (sums: Int32Array, wide: number, x0: number, y0: number, x1: number, y1: number): number =>
  sums[y1 * wide + x1]! - sums[y0 * wide + x1]! - sums[y1 * wide + x0]! + sums[y0 * wide + x0]!

/**
 * Where the name of each band may stand so that it lies on the slab and on its own band, the best place first; none for
 * a band too small for its name. `widthsM` is the width of each name, `heightM` the height of all.
 */
export function bandSpots(map: SunMap, bands: SunBands, widthsM: readonly number[], heightM: number): Spots {
  const cells = cellsOf(map, bands)
  const sizes = [heightM, ...widthsM].join()
  const last = lastSpots.get(cells)
  if (last?.sizes === sizes) return last.spots
  const spots = findSpots(map, bands, cells, widthsM, heightM)
  lastSpots.set(cells, { sizes, spots })
  return spots
}

function findSpots(
  { grid: { columns, rows, minX, minY, cellM } }: SunMap,
  bands: SunBands,
  { own, far, onSlab, ofBand }: BandCells,
  widthsM: readonly number[],
  heightM: number,
): Spots {
  const wide = columns + 1
  const halfHigh = Math.ceil(heightM / cellM / 2)
  const halfWide = widthsM.map(widthM => Math.ceil(widthM / cellM / 2))
  const found = bands.names.map((): number[] => [])
  const isFree = (cell: number, taken: readonly number[]): boolean =>
    taken.every(
      other =>
        Math.abs((other % columns) - (cell % columns)) > 2 * halfHigh ||
        Math.abs(Math.floor(other / columns) - Math.floor(cell / columns)) > 2 * halfHigh,
    )
  for (let round = 0; round < mostSpots; round++) {
    const best = bands.names.map(() => ({ cell: -1, score: 0 }))
    for (let y = halfHigh; y < rows - halfHigh; y++)
      for (let x = 0; x < columns; x++) {
        const cell = y * columns + x
        const band = own[cell]!
        if (band < 0) continue
        const half = halfWide[band]!
        if (x < half || x >= columns - half) continue
        const box = [wide, x - half, y - halfHigh, x + half + 1, y + halfHigh + 1] as const
        const all = (2 * half + 1) * (2 * halfHigh + 1)
        if (inBox(onSlab, ...box) < all) continue
        const share = inBox(ofBand[band]!, ...box) / all
        if (share < leastShare) continue
        // Among places of equal share the one deepest in the band.
        const score = share + far[cell]! * 1e-6
        if (score > best[band]!.score && isFree(cell, found[band]!)) best[band] = { cell, score }
      }
    for (const [band, { cell }] of best.entries()) if (cell >= 0) found[band]!.push(cell)
  }
  return found.map(cells =>
    cells.map(
      (cell): Pt => [minX + ((cell % columns) + 0.5) * cellM, minY + (Math.floor(cell / columns) + 0.5) * cellM],
    ),
  )
}
