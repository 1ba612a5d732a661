/** Sun and shade of every cell of a slab through a day. */
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import { joinBounds, ringBounds } from '../geometry/bounds'
import type { CurveRegion, Region } from '../geometry/curve'
import { flattenRegion } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { crossesApart } from './casterShadow'
import { cellCoverage, type Grid } from './cellCoverage'
import type { ResolvedCaster } from './resolveCaster'
import { addCycle, resolveBits, type ShadeGrid, shadeGrid, wordsPerRow } from './shadeGrid'
import { canReach } from './shadowBox'
import { dayInstants, type SiteDay } from './siteDay'
import { isSunUp, sunlitSpans } from './sunlitSpans'
import { type SunPosition, shadowPerMeter, sunPosition } from './sunPosition'
import { traceShadow } from './traceShadow'
import { transmission } from './transmission'

/** Cells a slab's box is cut into at most. */
const mostCells = 40_000
/** 6 in: no cell is smaller. */
const leastCellM = 0.1524

/** Cells shaded by casters of one transmission, counted in binary: bit k of a cell's count is its bit in `counts[k]`. */
export interface DappleClass {
  readonly transmission: number
  readonly counts: readonly Int32Array[]
}

/**
 * One plane of bits per instant with the sun up: word = (step · rows + row) · words + (column >> 5). A cell's state is
 * that of its center. Nothing in here is written after it is returned.
 */
export interface Exposure {
  readonly slabId: string
  readonly levelM: number
  readonly grid: Grid
  readonly words: number
  /** Side of a cell, meters. */
  readonly cellSizeM: number
  readonly place: Place
  readonly day: SiteDay
  readonly settings: SettingOverrides | undefined
  /** Every step of the day, UTC milliseconds. */
  readonly instants: readonly number[]
  readonly sun: readonly SunPosition[]
  /** Indices of the instants with the sun at or above the threshold, in order: the steps of the planes. */
  readonly lit: readonly number[]
  /** Minutes of the sunlit day that each of those instants stands for; they sum to its length. */
  readonly litMin: readonly number[]
  /** Covered share of each cell by the slab's net area, 0 … 1. */
  readonly weights: Float64Array
  readonly opaque: Int32Array
  /** Difference grids of the opaque casters, one per step. */
  readonly change: Int16Array
  readonly touched: Int32Array
  readonly dapple: readonly DappleClass[]
}

const gridOver = (slab: ResolvedSlab): Grid => {
  const { minX, minY, maxX, maxY } = joinBounds(slab.net.map(region => ringBounds(region.outer)))
  if (!(maxX > minX && maxY > minY)) return { minX: 0, minY: 0, cellM: leastCellM, columns: 1, rows: 1 }
  const width = maxX - minX
  const height = maxY - minY
  const cellM = Math.max(leastCellM, Math.sqrt((width * height) / mostCells))
  // A crumb of rounding must not add a row.
  const columns = Math.max(1, Math.ceil(width / cellM - 1e-9))
  const rows = Math.max(1, Math.ceil(height / cellM - 1e-9))
  return {
    minX: minX - (columns * cellM - width) / 2,
    minY: minY - (rows * cellM - height) / 2,
    cellM,
    columns,
    rows,
  }
}

/** Minutes for which each lit instant stands: halfway to its neighbors, the outer ones to where the sun crosses the
 * threshold. A sunlit span that no instant falls into is lost. */
const minutesOf = (litMs: readonly number[], spans: readonly { fromMs: number; toMs: number }[]): number[] =>
  litMs.map((ms, index) => {
    const span = spans.find(({ fromMs, toMs }) => ms >= fromMs - 1000 && ms <= toMs + 1000)
    if (span === undefined) return 0
    const before = litMs[index - 1]
    const after = litMs[index + 1]
    const from = before !== undefined && before >= span.fromMs ? (before + ms) / 2 : span.fromMs
    const to = after !== undefined && after <= span.toMs ? (ms + after) / 2 : span.toMs
    return (to - from) / 60_000
  })

type Frame = Pick<Exposure, 'grid' | 'words' | 'levelM' | 'place' | 'sun' | 'lit' | 'day' | 'settings'>

const gridBox = ({ minX, minY, cellM, columns, rows }: Grid) => ({
  minX,
  minY,
  maxX: minX + columns * cellM,
  maxY: minY + rows * cellM,
})

const traceInto = (
  target: ShadeGrid,
  resolved: ResolvedCaster,
  only: number | null,
  levelM: number,
  kx: number,
  ky: number,
  sign: 1 | -1,
): boolean => {
  const box = gridBox(target.grid)
  let reached = false
  for (let index = 0; index < resolved.solids.length; index++) {
    if (only !== null && only !== index) continue
    const solid = resolved.solids[index]!
    if (!canReach(solid, resolved.boxes[index]!, box, levelM, kx, ky)) continue
    reached = true
    traceShadow(solid, levelM, kx, ky, (cycle, count) => addCycle(target, cycle, count, sign))
  }
  return reached
}

const shadowReaches = ({ lit, sun, place }: Frame): readonly (readonly [number, number])[] =>
  lit.map(index => shadowPerMeter(sun[index]!, place.northDeg))

/** The grid of one step as a window into those of all steps. */
const stepGrid = (frame: Frame, change: Int16Array, touched: Int32Array, step: number): ShadeGrid => {
  const cells = frame.grid.columns * frame.grid.rows
  const words = frame.words * frame.grid.rows
  return shadeGrid(
    frame.grid,
    change.subarray(step * cells, (step + 1) * cells),
    touched.subarray(step * words, (step + 1) * words),
  )
}

/** Adds the plane to the binary counts from word `at`, or takes it away. */
const countPlane = (counts: Int32Array[], plane: Int32Array, at: number, length: number, sign: 1 | -1): void => {
  for (let word = 0; word < plane.length; word++) {
    let carry = plane[word]!
    for (let bit = 0; carry !== 0; bit++) {
      if (bit === counts.length) counts.push(new Int32Array(length))
      const count = counts[bit]!
      const old = count[at + word]!
      count[at + word] = old ^ carry
      carry = sign === 1 ? old & carry : ~old & carry
    }
  }
}

type Counts = Map<number, Int32Array[]>

const countDapple = (frame: Frame, counts: Counts, resolved: ResolvedCaster, share: number, sign: 1 | -1): void => {
  const { grid, words, lit, levelM } = frame
  const planeWords = words * grid.rows
  const own = counts.get(share) ?? []
  counts.set(share, own)
  const scratch = shadeGrid(grid)
  const plane = new Int32Array(planeWords)
  const groups = crossesApart(resolved, share) ? resolved.solids.map((_, index) => index) : [null]
  shadowReaches(frame).forEach(([kx, ky], step) => {
    for (const only of groups) {
      if (!traceInto(scratch, resolved, only, levelM, kx, ky, 1)) continue
      plane.fill(0)
      resolveBits(scratch, plane, 0, true)
      countPlane(own, plane, step * planeWords, lit.length * planeWords, sign)
    }
  })
}

const classesOf = (counts: Counts): DappleClass[] =>
  [...counts]
    .map(([share, planes]) => ({ transmission: share, counts: planes }))
    .filter(each => each.counts.some(plane => plane.some(word => word !== 0)))
    .sort((a, b) => a.transmission - b.transmission)

/** Puts casters in (or takes them out) and says which steps of the opaque planes they changed. */
const applyCasters = (
  frame: Frame,
  casters: readonly ResolvedCaster[],
  sign: 1 | -1,
  change: Int16Array,
  touched: Int32Array,
  counts: Counts,
  changed: Uint8Array,
): void => {
  const opaque: ResolvedCaster[] = []
  for (const caster of casters) {
    const share = transmission(caster.caster, frame.day.date, frame.settings)
    if (share === 0) opaque.push(caster)
    else if (share < 1) countDapple(frame, counts, caster, share, sign)
  }
  shadowReaches(frame).forEach(([kx, ky], step) => {
    const target = stepGrid(frame, change, touched, step)
    for (const caster of opaque) if (traceInto(target, caster, null, frame.levelM, kx, ky, sign)) changed[step] = 1
  })
}

const resolveSteps = (
  frame: Frame,
  change: Int16Array,
  touched: Int32Array,
  opaque: Int32Array,
  changed: Uint8Array,
): void => {
  const planeWords = frame.words * frame.grid.rows
  for (let step = 0; step < frame.lit.length; step++) {
    if (changed[step] === 0) continue
    const at = step * planeWords
    opaque.fill(0, at, at + planeWords)
    resolveBits(stepGrid(frame, change, touched, step), opaque, at, false)
  }
}

/**
 * The exposure of a slab through a day. Cells of max(6 in, √(box area / 40,000)).
 * @param stepMin minutes between the instants, > 0
 */
export const exposure = (
  slab: ResolvedSlab,
  casters: readonly ResolvedCaster[],
  place: Place,
  day: SiteDay,
  stepMin: number,
  settings: SettingOverrides | undefined,
): Exposure => {
  const grid = gridOver(slab)
  const words = wordsPerRow(grid)
  const instants = dayInstants(day, stepMin)
  const sun = instants.map(ms => sunPosition(ms, place.latDeg, place.lonDeg))
  const lit = instants.map((_, index) => index).filter(index => isSunUp(sun[index]!.altitudeDeg, settings))
  const { spans } = sunlitSpans(place, day, settings)
  const frame = { grid, words, levelM: slab.levelM, place, sun, lit, day, settings }
  const change = new Int16Array(lit.length * grid.columns * grid.rows)
  const touched = new Int32Array(lit.length * words * grid.rows)
  const opaque = new Int32Array(lit.length * words * grid.rows)
  const counts: Counts = new Map()
  const changed = new Uint8Array(lit.length)
  applyCasters(frame, casters, 1, change, touched, counts, changed)
  resolveSteps(frame, change, touched, opaque, changed)
  return {
    ...frame,
    slabId: slab.id,
    cellSizeM: grid.cellM,
    instants,
    litMin: minutesOf(
      lit.map(index => instants[index]!),
      spans,
    ),
    weights: cellCoverage(
      slab.net.map(region => flattenRegion(region)),
      grid,
    ),
    opaque,
    change,
    touched,
    dapple: classesOf(counts),
  }
}

/**
 * The exposure after casters were taken out and others put in, without tracing the rest again: for a caster that moved,
 * its old form in `removed` and the new one in `added`. `before` stays as it is.
 */
export const updateExposure = (
  before: Exposure,
  removed: readonly ResolvedCaster[],
  added: readonly ResolvedCaster[],
): Exposure => {
  const change = before.change.slice()
  const touched = before.touched.slice()
  const opaque = before.opaque.slice()
  const counts: Counts = new Map(
    before.dapple.map(each => [each.transmission, each.counts.map(plane => plane.slice())]),
  )
  const changed = new Uint8Array(before.lit.length)
  applyCasters(before, removed, -1, change, touched, counts, changed)
  applyCasters(before, added, 1, change, touched, counts, changed)
  resolveSteps(before, change, touched, opaque, changed)
  return { ...before, change, touched, opaque, dapple: classesOf(counts) }
}

/** An area within a slab, arcs exact or already flat. */
export type Area = CurveRegion | readonly (Region | CurveRegion)[]

/** The covered share of each cell by an area within the slab, row by row from the grid's lower left; the slab's own if
 * left out. */
export const weightsOf = (exposed: Exposure, area: Area | undefined): Float64Array => {
  if (area === undefined) return exposed.weights
  const shapes = 'outer' in area ? [area] : area
  return cellCoverage(
    shapes.map(shape => ('outer' in shape ? flattenRegion(shape) : shape)),
    exposed.grid,
  )
}
