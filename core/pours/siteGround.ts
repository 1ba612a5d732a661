/** What a pour costs for where it lies on the site: a shade line across it, or two ways of placing. */
import type { Pt } from '../../shared/document/primitives'
import { overGrid } from '../sun/cellCoverage'
import type { Exposure } from '../sun/exposure'
import { cellShare } from '../sun/sunShares'
import { ft2M2 } from './pourCost'
import { openHours, type PourClock } from './provisionalDay'
import type { CutRegion } from './region/cutRegion'
import type { Direction } from './search/searchContext'
import type { Weights } from './weights'

export interface SiteTerms {
  /** Minutes with sun and shade on one pour, between placing and stamping. */
  shadeLine: number
  /** Part of a pour placed one way, by chute say, the rest another. */
  mixedPlacing: number
}

export interface SiteGround {
  /** Adds feet of joint to the terms. */
  addCost(pour: CutRegion, weights: Weights, terms: SiteTerms): void
  /** Minutes between placing and stamping with at least a tenth of the pour in sun and a tenth in shade. */
  mixedSunMin(pour: CutRegion): number
  /** Along the shade line when the first mat goes down, where it is all but straight. */
  readonly shadeLine: Direction | null
}

export interface SiteGroundOf {
  readonly exposed: Exposure
  readonly clock: PourClock
  /** The largest pour (m²): no pour is open longer than one of this area. */
  readonly capM2: number
  readonly truckSpots: readonly Pt[]
  /** Distances from a truck at which the way of placing changes (m), rising; none where it is one everywhere. */
  readonly zonesM: readonly number[]
}

/** Samples along the longer side of the slab's box: shares are good to about two hundredths. */
const mostSamples = 48
/** The smaller of sun and shade on a pour below which all of it sets alike: own assumption, share of its area. */
const leastMix = 0.1
/** Light that is no longer shade. */
const sunnyShare = 0.5
const hourMs = 3_600_000
/** A shade line is straight when its points lie this close to a line, as a share of their spread. */
const mostBend = 0.06
const leastLinePoints = 12

/** Where the samples lie, and how many of a row's first samples a plane counts. */
interface Samples {
  readonly minX: number
  readonly minY: number
  readonly stepM: number
  readonly columns: number
  readonly rows: number
}

interface Plane {
  /** UTC milliseconds. */
  readonly ms: number
  readonly minutes: number
  /** Row by row, one more than the columns. */
  readonly before: Int32Array
}

function countPlane({ columns, rows }: Samples, isIn: (column: number, row: number) => boolean): Int32Array {
  const before = new Int32Array(rows * (columns + 1))
  for (let row = 0; row < rows; row++) {
    let count = 0
    for (let column = 0; column < columns; column++) {
      if (isIn(column, row)) count++
      before[row * (columns + 1) + column + 1] = count
    }
  }
  return before
}

function samplesOf({ grid }: Exposure): Samples {
  const stride = Math.max(1, Math.ceil(Math.max(grid.columns, grid.rows) / mostSamples))
  return {
    minX: grid.minX,
    minY: grid.minY,
    stepM: stride * grid.cellM,
    columns: Math.ceil(grid.columns / stride),
    rows: Math.ceil(grid.rows / stride),
  }
}

/** The spans of sample columns inside a pour: row, first, past the last, one after the other. */
function spansIn({ minX, minY, stepM, columns, rows }: Samples, pour: CutRegion): number[] {
  const crossings: number[][] = []
  const addLine = (ax: number, ay: number, bx: number, by: number): void => {
    const [low, high] = ay < by ? [ay, by] : [by, ay]
    const from = Math.max(0, Math.ceil((low - minY) / stepM - 0.5))
    const to = Math.min(rows - 1, Math.ceil((high - minY) / stepM - 0.5) - 1)
    for (let row = from; row <= to; row++) {
      const y = minY + (row + 0.5) * stepM
      const x = ax + ((bx - ax) * (y - ay)) / (by - ay)
      const own = crossings[row]
      if (own) own.push(x)
      else crossings[row] = [x]
    }
  }
  for (const { sides } of pour.rings)
    for (let i = 0; i < sides.length; i++) {
      const s = sides[i]!
      const e = sides[i + 1 === sides.length ? 0 : i + 1]!
      if (s.sweep === 0) {
        addLine(s.x, s.y, e.x, e.y)
        continue
      }
      const start = Math.atan2(s.y - s.cy, s.x - s.cx)
      let [x, y] = [s.x, s.y]
      for (let part = 1; part <= 4; part++) {
        const angle = start + (s.sweep * part) / 4
        const [nx, ny] = part === 4 ? [e.x, e.y] : [s.cx + s.r * Math.cos(angle), s.cy + s.r * Math.sin(angle)]
        addLine(x, y, nx, ny)
        ;[x, y] = [nx, ny]
      }
    }
  const spans: number[] = []
  const columnAt = (x: number) => Math.max(0, Math.min(columns, Math.ceil((x - minX) / stepM - 0.5)))
  for (let row = 0; row < crossings.length; row++) {
    const at = crossings[row]?.sort((a, b) => a - b)
    if (!at) continue
    for (let i = 0; i + 1 < at.length; i += 2) {
      const from = columnAt(at[i]!)
      const to = columnAt(at[i + 1]!)
      if (to > from) spans.push(row, from, to)
    }
  }
  return spans
}

/** How much of the samples lies on the smaller side of the plane, 0 … ½. */
function mixOf(spans: readonly number[], before: Int32Array, width: number, total: number): number {
  let inside = 0
  for (let i = 0; i < spans.length; i += 3) {
    const row = spans[i]! * width
    inside += before[row + spans[i + 2]!]! - before[row + spans[i + 1]!]!
  }
  const share = inside / total
  return Math.min(share, 1 - share)
}

/** The direction of the line between sun and shade, where it is one straight line. */
function lineIn(samples: Samples, isSlab: Int32Array, before: Int32Array): Direction | null {
  const { columns, rows, stepM } = samples
  const width = columns + 1
  const at = (plane: Int32Array, column: number, row: number) =>
    plane[row * width + column + 1]! - plane[row * width + column]!
  const points: (readonly [number, number])[] = []
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      if (at(isSlab, column, row) === 0) continue
      const sunny = at(before, column, row)
      if (column + 1 < columns && at(isSlab, column + 1, row) === 1 && at(before, column + 1, row) !== sunny)
        points.push([column + 0.5, row])
      if (row + 1 < rows && at(isSlab, column, row + 1) === 1 && at(before, column, row + 1) !== sunny)
        points.push([column, row + 0.5])
    }
  if (points.length < leastLinePoints) return null
  const mx = points.reduce((sum, p) => sum + p[0], 0) / points.length
  const my = points.reduce((sum, p) => sum + p[1], 0) / points.length
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - mx) * (x - mx)
    xy += (x - mx) * (y - my)
    yy += (y - my) * (y - my)
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const spread = Math.hypot(xx - yy, 2 * xy)
  const [most, least] = [(xx + yy + spread) / 2, (xx + yy - spread) / 2]
  if (stepM <= 0 || Math.sqrt(least / most) > mostBend) return null
  return { ux: Math.cos(angle), uy: Math.sin(angle) }
}

/** Null where nothing on the site tells one split from another. */
export function siteGround({ exposed, clock, capM2, truckSpots, zonesM }: SiteGroundOf): SiteGround | null {
  const samples = samplesOf(exposed)
  const { grid } = exposed
  const width = samples.columns + 1
  const covered = overGrid(exposed.covered, grid)
  const cellAt = (column: number, row: number): number => {
    const x = Math.min(grid.columns - 1, Math.floor(((column + 0.5) * samples.stepM) / grid.cellM))
    const y = Math.min(grid.rows - 1, Math.floor(((row + 0.5) * samples.stepM) / grid.cellM))
    return y * grid.columns + x
  }
  const isSlab = countPlane(samples, (column, row) => covered[cellAt(column, row)]! > 0.5)
  const onSlab = (inside: Int32Array): number => {
    let sum = 0
    for (let row = 0; row < samples.rows; row++) sum += inside[row * width + samples.columns]!
    return sum
  }
  const slabCount = onSlab(isSlab)
  if (slabCount === 0) return null
  const isMixed = (plane: Int32Array): boolean => onSlab(plane) > 0 && onSlab(plane) < slabCount
  const endMs = clock.startMs + openHours(capM2, clock) * hourMs
  const planes = exposed.lit.flatMap((index, step): Plane[] => {
    const ms = exposed.instants[index]!
    // Every other step will do: it stands for the one before it too.
    if (step % 2 === 0 || ms < clock.startMs || ms > endMs) return []
    const before = countPlane(samples, (column, row) => {
      const cell = cellAt(column, row)
      return covered[cell]! > 0.5 && cellShare(exposed, cell, step) >= sunnyShare
    })
    return isMixed(before) ? [{ ms, minutes: exposed.litMin[step]! + exposed.litMin[step - 1]!, before }] : []
  })
  const withinOf = (reachM: number): Int32Array =>
    countPlane(samples, (column, row) => {
      if (covered[cellAt(column, row)]! <= 0.5) return false
      const x = samples.minX + (column + 0.5) * samples.stepM
      const y = samples.minY + (row + 0.5) * samples.stepM
      return truckSpots.some(([tx, ty]) => Math.hypot(x - tx, y - ty) <= reachM)
    })
  /** What each distance parts: nothing where all of the slab lies on one side of it. */
  const zones = truckSpots.length === 0 ? [] : zonesM.filter(Number.isFinite).map(withinOf).filter(isMixed)
  if (planes.length === 0 && zones.length === 0) return null
  const firstMatMs = clock.startMs + clock.firstMatH * hourMs
  const atFirstMat = planes.reduce<Plane | null>(
    (best, plane) => (best && Math.abs(best.ms - firstMatMs) <= Math.abs(plane.ms - firstMatMs) ? best : plane),
    null,
  )
  const lookAt = (pour: CutRegion) => {
    const spans = spansIn(samples, pour)
    let total = 0
    for (let i = 0; i < spans.length; i += 3) total += spans[i + 2]! - spans[i + 1]!
    return { spans, total, until: clock.startMs + openHours(pour.areaM2, clock) * hourMs }
  }
  return {
    shadeLine: atFirstMat && lineIn(samples, isSlab, atFirstMat.before),
    addCost(pour, w, terms) {
      const { spans, total, until } = lookAt(pour)
      if (total === 0) return
      let mixedMin = 0
      for (const { ms, minutes, before } of planes)
        if (ms <= until) mixedMin += minutes * mixOf(spans, before, width, total)
      const mix = zones.reduce((most, zone) => Math.max(most, mixOf(spans, zone, width, total)), 0)
      terms.shadeLine += Math.min(w.shadeLineMost, w.shadeLine * 10 * mixedMin)
      terms.mixedPlacing += (w.mixedPlacing * mix * pour.areaM2) / ft2M2
    },
    mixedSunMin(pour) {
      const { spans, total, until } = lookAt(pour)
      if (total === 0) return 0
      let mixedMin = 0
      for (const { ms, minutes, before } of planes)
        if (ms <= until && mixOf(spans, before, width, total) >= leastMix) mixedMin += minutes
      return mixedMin
    },
  }
}
