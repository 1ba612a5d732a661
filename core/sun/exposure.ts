/** Sun and shade of every cell of a slab through a day. */
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import { type Box, joinBounds, ringBounds } from '../geometry/bounds'
import type { CurveRegion, Region } from '../geometry/curve'
import { flattenRegion } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { crossesApart } from './casterShadow'
import { type CoveredCells, coveredCells, type Grid } from './cellCoverage'
import type { ResolvedCaster } from './resolveCaster'
import { addCycle, resolveChanges, type ShadeGrid, shadeGrid, wordsPerRow } from './shadeGrid'
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
  readonly casters: readonly ResolvedCaster[]
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
  /** What the slab's net area covers. */
  readonly covered: CoveredCells
  readonly opaque: Int32Array
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

/** Traces solids into planes, with a grid of its own to work in. */
class Tracer {
  private readonly target: ShadeGrid
  private readonly box: Box
  private bits: Int32Array = new Int32Array(0)
  private at = 0
  private held = false

  constructor(private readonly frame: Frame) {
    const { minX, minY, cellM, columns, rows } = frame.grid
    this.target = shadeGrid(frame.grid)
    this.box = { minX, minY, maxX: minX + columns * cellM, maxY: minY + rows * cellM }
  }

  /** Adds the shade of solids to the plane that starts at word `at`; false if none of them reaches the grid. */
  trace(casters: readonly ResolvedCaster[], only: number | null, reach: Pt, bits: Int32Array, at: number): boolean {
    this.bits = bits
    this.at = at
    this.held = false
    const [kx, ky] = reach
    const { levelM } = this.frame
    let reached = false
    for (const { solids, boxes } of casters)
      for (let i = 0; i < solids.length; i++) {
        if (only !== null && only !== i) continue
        if (!canReach(solids[i]!, boxes[i]!, this.box, levelM, kx, ky)) continue
        reached = true
        traceShadow(solids[i]!, levelM, kx, ky, this.take)
      }
    if (this.held) resolveChanges(this.target, bits, at)
    return reached
  }

  reaches(casters: readonly ResolvedCaster[], [kx, ky]: Pt): boolean {
    return casters.some(({ solids, boxes }) =>
      solids.some((solid, i) => canReach(solid, boxes[i]!, this.box, this.frame.levelM, kx, ky)),
    )
  }

  private readonly take = (cycle: Float64Array, count: number, alone: boolean): void => {
    if (addCycle(this.target, cycle, count, alone, this.bits, this.at)) this.held = true
  }
}

const shadowReaches = ({ lit, sun, place }: Frame): readonly Pt[] =>
  lit.map(index => shadowPerMeter(sun[index]!, place.northDeg))

/** Adds a plane to the binary counts from word `at`, or takes it away. */
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

const shareOf = (frame: Frame, resolved: ResolvedCaster): number =>
  transmission(resolved.caster, frame.day.date, frame.settings)

/** Counts translucent casters into the planes of their transmission, or out of them. */
const countDapple = (frame: Frame, counts: Counts, casters: readonly ResolvedCaster[], sign: 1 | -1): void => {
  const planeWords = frame.words * frame.grid.rows
  const plane = new Int32Array(planeWords)
  const tracer = new Tracer(frame)
  for (const resolved of casters) {
    const share = shareOf(frame, resolved)
    if (share === 0 || share >= 1) continue
    const own = counts.get(share) ?? []
    counts.set(share, own)
    const groups = crossesApart(resolved, share) ? resolved.solids.map((_, index) => index) : [null]
    shadowReaches(frame).forEach((reach, step) => {
      for (const only of groups) {
        if (!tracer.trace([resolved], only, reach, plane, 0)) continue
        countPlane(own, plane, step * planeWords, frame.lit.length * planeWords, sign)
        plane.fill(0)
      }
    })
  }
}

const classesOf = (counts: Counts): DappleClass[] =>
  [...counts]
    .map(([share, planes]) => ({ transmission: share, counts: planes }))
    .filter(each => each.counts.some(plane => plane.some(word => word !== 0)))
    .sort((a, b) => a.transmission - b.transmission)

const opaqueOf = (frame: Frame, casters: readonly ResolvedCaster[]): readonly ResolvedCaster[] =>
  casters.filter(caster => shareOf(frame, caster) === 0)

/**
 * The planes of all opaque casters, one per step, into `planes` (all zero).
 * Exported for the bench, which sets it against touching every cell at every step once.
 */
export const fillOpaque = (frame: Frame, casters: readonly ResolvedCaster[], planes: Int32Array): void => {
  const planeWords = frame.words * frame.grid.rows
  const tracer = new Tracer(frame)
  const opaque = opaqueOf(frame, casters)
  shadowReaches(frame).forEach((reach, step) => {
    tracer.trace(opaque, null, reach, planes, step * planeWords)
  })
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
  const opaque = new Int32Array(lit.length * words * grid.rows)
  const counts: Counts = new Map()
  fillOpaque(frame, casters, opaque)
  countDapple(frame, counts, casters, 1)
  return {
    ...frame,
    slabId: slab.id,
    casters,
    cellSizeM: grid.cellM,
    instants,
    litMin: minutesOf(
      lit.map(index => instants[index]!),
      spans,
    ),
    covered: coveredCells(
      slab.net.map(region => flattenRegion(region)),
      grid,
    ),
    opaque,
    dapple: classesOf(counts),
  }
}

/**
 * The exposure with other casters, taking over what those in both lists (the same object) have in common: translucent
 * ones that changed are counted out and in; opaque planes are drawn anew only at the steps that a changed caster reaches.
 * `before` stays as it is.
 */
export const updateExposure = (before: Exposure, casters: readonly ResolvedCaster[]): Exposure => {
  const kept = new Set(casters.filter(caster => before.casters.includes(caster)))
  const removed = before.casters.filter(caster => !kept.has(caster))
  const added = casters.filter(caster => !kept.has(caster))
  const planeWords = before.words * before.grid.rows
  const tracer = new Tracer(before)
  const changed = opaqueOf(before, [...removed, ...added])
  const opaqueCasters = opaqueOf(before, casters)
  const opaque = changed.length === 0 ? before.opaque : before.opaque.slice()
  if (changed.length > 0)
    shadowReaches(before).forEach((reach, step) => {
      if (!tracer.reaches(changed, reach)) return
      const at = step * planeWords
      opaque.fill(0, at, at + planeWords)
      tracer.trace(opaqueCasters, null, reach, opaque, at)
    })
  const dappleChanged = [...removed, ...added].some(caster => shareOf(before, caster) > 0)
  if (!dappleChanged) return { ...before, casters, opaque }
  const counts: Counts = new Map(
    before.dapple.map(each => [each.transmission, each.counts.map(plane => plane.slice())]),
  )
  countDapple(before, counts, removed, -1)
  countDapple(before, counts, added, 1)
  return { ...before, casters, opaque, dapple: classesOf(counts) }
}

/** An area within a slab, arcs exact or already flat. */
export type Area = CurveRegion | readonly (Region | CurveRegion)[]

/** The cells that an area within the slab covers; those of the slab itself if left out. */
export const cellsOf = (exposed: Exposure, area: Area | undefined): CoveredCells => {
  if (area === undefined) return exposed.covered
  const shapes = 'outer' in area ? [area] : area
  return coveredCells(
    shapes.map(shape => ('outer' in shape ? flattenRegion(shape) : shape)),
    exposed.grid,
  )
}
