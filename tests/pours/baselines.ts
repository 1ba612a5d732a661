/** Ways to split a slab that the splitter is measured against. */

import { intersectRegions } from '../../core/geometry/clip'
import type { CurveRegion, CurveRing, Ring } from '../../core/geometry/curve'
import { flattenRegion } from '../../core/geometry/flattenRing'
import { loadRules, loadsOfArea } from '../../core/pours/loadGround'
import { reentrantAboveDeg } from '../../core/pours/pourCost'
import { findChords } from '../../core/pours/region/chords'
import { type CutRegion, interiorDegs, toCutRegion } from '../../core/pours/region/cutRegion'
import { minCorner } from '../../core/pours/region/minCorner'
import { minimumBox } from '../../core/pours/region/minimumBox'
import { type Segment, traceFaces } from '../../core/pours/region/traceFaces'
import type { Pt } from '../../shared/document/primitives'
import { seeded } from './seeded'

const loads = loadRules({ thicknessM: 0.1016, pumped: false, units: 'ftin', settings: undefined })

export interface Baseline {
  readonly pours: number
  readonly jointM: number
  readonly overCap: number
  /** Null where only a lattice of cells is known, not the pours' outlines. */
  readonly shape: PourShapes | null
}

/** What a foreman looks at, over all pours of a plan. */
export interface PourShapes {
  readonly aspect: number
  readonly cornersUnder60: number
  readonly reentrantLeft: number
  readonly shortLoads: number
}

/** Short loads for a slab 4 in thick at the settings' truck and least load. */
export function shapesOf(pours: readonly CutRegion[]): PourShapes {
  let aspect = 1
  let cornersUnder60 = 0
  let reentrantLeft = 0
  let shortLoads = 0
  for (const pour of pours) {
    const { longM, shortM } = minimumBox(pour.rings[0]!)
    aspect = Math.max(aspect, longM / shortM)
    const least = minCorner(pour)
    if (least !== null && least < 60 - 1e-9) cornersUnder60++
    for (const ring of pour.rings) for (const deg of interiorDegs(ring)) if (deg > reentrantAboveDeg) reentrantLeft++
    if (loadsOfArea(pour.areaM2, loads).isShort) shortLoads++
  }
  return { aspect, cornersUnder60, reentrantLeft, shortLoads }
}

const work = { done: 0 }

function summary(slab: CutRegion, faces: readonly CutRegion[], capM2: number): Baseline {
  const around = faces.reduce((sum, f) => sum + f.perimeterM, 0)
  return {
    pours: faces.length,
    jointM: (around - slab.perimeterM) / 2,
    overCap: faces.filter(f => f.areaM2 > capM2 * (1 + 1e-9)).length,
    shape: shapesOf(faces),
  }
}

function cutByLines(slab: CutRegion, lines: readonly (readonly [number, number, number])[]): readonly CutRegion[] {
  const segments: Segment[] = []
  lines.forEach(([ux, uy, offset], joint) => {
    for (const { a, b } of findChords(slab, ux, uy, offset, true, work, 'break'))
      segments.push({ a: { x: a.x, y: a.y, on: a }, b: { x: b.x, y: b.y, on: b }, joint })
  })
  return traceFaces(slab, segments).faces
}

function spanOf(slab: CutRegion, ux: number, uy: number): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const s of slab.rings[0]!.sides) {
    const d = -uy * s.x + ux * s.y
    low = Math.min(low, d)
    high = Math.max(high, d)
  }
  return [low, high]
}

const linesAcross = (slab: CutRegion, ux: number, uy: number, parts: number): (readonly [number, number, number])[] => {
  const [low, high] = spanOf(slab, ux, uy)
  return Array.from({ length: parts - 1 }, (_, i) => [ux, uy, low + ((high - low) * (i + 1)) / parts] as const)
}

/** Equal cells no larger than the cap over the least rectangle; each connected piece of a cell is a pour. */
export function capacityGrid(region: CurveRegion, capM2: number): Baseline {
  const slab = toCutRegion(region)
  const { ux, uy, longM, shortM } = minimumBox(slab.rings[0]!)
  const side = Math.sqrt(capM2)
  let columns = Math.max(1, Math.ceil(longM / side - 1e-9))
  let rows = Math.max(1, Math.ceil(shortM / side - 1e-9))
  while ((columns - 1) * rows > 0 && (longM / Math.max(1, columns - 1)) * (shortM / rows) <= capM2) columns--
  while (rows > 1 && (longM / columns) * (shortM / (rows - 1)) <= capM2) rows--
  const faces = cutByLines(slab, [...linesAcross(slab, ux, uy, rows), ...linesAcross(slab, -uy, ux, columns)])
  return summary(slab, faces, capM2)
}

/** Strips straight across the long side, each filled to the cap before the next begins; pieces are pours. */
export function greedyStrips(region: CurveRegion, capM2: number): Baseline {
  const slab = toCutRegion(region)
  const box = minimumBox(slab.rings[0]!)
  const [ux, uy] = [-box.uy, box.ux]
  const [low, high] = spanOf(slab, ux, uy)
  const steps = 600
  const lines: (readonly [number, number, number])[] = []
  let filled = 0
  for (let i = 0; i < steps; i++) {
    const offset = low + ((high - low) * (i + 0.5)) / steps
    let wide = 0
    for (const chord of findChords(slab, ux, uy, offset, true, work, 'break')) wide += chord.lengthM
    const area = (wide * (high - low)) / steps
    if (filled + area > 0.99 * capM2) {
      lines.push([ux, uy, low + ((high - low) * i) / steps])
      filled = 0
    }
    filled += area
  }
  return summary(slab, cutByLines(slab, lines), capM2)
}

/**
 * Capacity-constrained power diagram on a lattice of cells (M. Balzer, Capacity-constrained Voronoi diagrams in
 * continuous spaces, 2009): weights raise or lower each site until all have the same area, sites move to their centers.
 * Its length is that of the straight borders between neighbors, read from the lattice by the Cauchy–Crofton formula in
 * four directions.
 */
export function powerDiagram(region: CurveRegion, capM2: number): Baseline {
  const slab = toCutRegion(region)
  const count = Math.ceil(slab.areaM2 / capM2 - 1e-9)
  const { ux, uy, longM, shortM } = minimumBox(slab.rings[0]!)
  const n = Math.min(150, Math.max(60, 14 * Math.ceil(Math.sqrt(count))))
  const step = longM / n
  const rows = Math.ceil(shortM / step)
  const [v0] = spanOf(slab, ux, uy)
  const [w0] = spanOf(slab, uy, -ux)
  const cells: { readonly i: number; readonly j: number }[] = []
  const owner = new Int16Array(n * rows).fill(-1)
  for (let j = 0; j < rows; j++) {
    const offset = v0 + (j + 0.5) * step
    for (const chord of findChords(slab, ux, uy, offset, true, work, 'break'))
      for (let i = 0; i < n; i++) {
        const t = w0 + (i + 0.5) * step
        if (t > chord.t0 && t < chord.t1) cells.push({ i, j })
      }
  }
  const random = seeded(7)
  const sites = Array.from({ length: count }, () => cells[Math.floor(random() * cells.length)]!).map(c => [c.i, c.j])
  const weights = new Float64Array(count)
  const wanted = cells.length / count
  for (let round = 0; round < 60; round++) {
    const sums = sites.map(() => [0, 0, 0] as [number, number, number])
    for (const { i, j } of cells) {
      let best = 0
      let least = Number.POSITIVE_INFINITY
      for (let s = 0; s < count; s++) {
        const d = (i - sites[s]![0]!) ** 2 + (j - sites[s]![1]!) ** 2 - weights[s]!
        if (d < least) {
          least = d
          best = s
        }
      }
      owner[j * n + i] = best
      const sum = sums[best]!
      sum[0] += i
      sum[1] += j
      sum[2]++
    }
    for (let s = 0; s < count; s++) {
      const [x, y, c] = sums[s]!
      weights[s]! += (0.5 * (wanted - c)) / Math.sqrt(wanted)
      if (c > 0) sites[s] = [x / c, y / c]
    }
  }
  const links: readonly (readonly [number, number, number])[] = [
    [1, 0, Math.PI / 8],
    [0, 1, Math.PI / 8],
    [1, 1, Math.PI / 8 / Math.SQRT2],
    [1, -1, Math.PI / 8 / Math.SQRT2],
  ]
  let jointM = 0
  for (const { i, j } of cells)
    for (const [di, dj, share] of links) {
      const a = i + di
      const b = j + dj
      if (a >= n || b < 0 || b >= rows) continue
      const other = owner[b * n + a]!
      if (other >= 0 && other !== owner[j * n + i]) jointM += share * step
    }
  // The cells' outlines: the slab within the half-planes where this site is the nearest by power.
  const own = flattenRegion(region)
  const pointOf = ([i, j]: readonly [number, number]): Pt => {
    const t = w0 + (i + 0.5) * step
    const s = v0 + (j + 0.5) * step
    return [ux * t - uy * s, uy * t + ux * s]
  }
  const cellsOf = sites.flatMap(([x, y], s) => {
    let cell: [number, number][] = [
      [-n, -n],
      [2 * n, -n],
      [2 * n, rows + n],
      [-n, rows + n],
    ]
    sites.forEach(([ox, oy], o) => {
      if (o === s) return
      const [a, b] = [2 * (ox! - x!), 2 * (oy! - y!)]
      const c = ox! ** 2 + oy! ** 2 - weights[o]! - (x! ** 2 + y! ** 2 - weights[s]!)
      const miss = ([px, py]: readonly [number, number]) => a * px + b * py - c
      cell = cell.flatMap((p, i): [number, number][] => {
        const q = cell[i + 1 === cell.length ? 0 : i + 1]!
        const [mp, mq] = [miss(p), miss(q)]
        const f = mp / (mp - mq)
        const at: [number, number] = [p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])]
        return [...(mp <= 0 ? [p] : []), ...(mp < 0 !== mq < 0 ? [at] : [])]
      })
    })
    return cell.length < 3 ? [] : intersectRegions([{ ring: cell.map(pointOf), holes: [] }], [own])
  })
  const curve = (ring: Ring): CurveRing =>
    ring.map((from, i) => ({ edgeId: '', from, to: ring[i + 1 === ring.length ? 0 : i + 1]! }))
  const shape = shapesOf(cellsOf.map(({ ring, holes }) => toCutRegion({ outer: curve(ring), holes: holes.map(curve) })))
  return { pours: cellsOf.length, jointM, overCap: 0, shape }
}
