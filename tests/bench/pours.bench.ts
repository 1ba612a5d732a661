import { readFileSync } from 'node:fs'
import { pourFaces } from '../../core/pours/pourFaces'
import type { Proposal } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { acceptProposal } from '../pours/acceptProposal'
import { capacityGrid, greedyStrips, type PourShapes, powerDiagram, shapesOf } from '../pours/baselines'
import { regionArea, regionPerimeter } from '../pours/curveMeasures'
import { benchSlabs, court } from '../pours/randomSlabs'
import { seeded } from '../pours/seeded'
import { ft2M2 } from '../pours/shapes'
import type { Bench, BenchRow } from './row'

const capM2 = 900 * ft2M2
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length
const jointM = (proposal: Proposal): number => proposal.joints.reduce((sum, joint) => sum + joint.lengthM, 0)

interface Timed {
  readonly name: string
  readonly proposal: Proposal
  readonly ms: number
}

const timeMs = (run: () => unknown, times: number): number =>
  median(
    Array.from({ length: times }, () => {
      const start = performance.now()
      run()
      return performance.now() - start
    }),
  )

export const bench: Bench = async () => {
  const rows: BenchRow[] = []
  const add = (
    id: string,
    what: string,
    value: number,
    unit: string,
    target: string | null,
    ok: boolean | null,
    peer: string | null = null,
  ): void => {
    rows.push({ id: `pours.${id}`, what, value, unit, peer, target, ok })
  }
  const slabs = benchSlabs()
  const split = (region: (typeof slabs)[number]['region'], more: { readonly directions?: 'any' } = {}): Proposal =>
    proposePours({ slabId: 's1', part: 'whole', region, capM2, ...more })
  for (const { region } of slabs.slice(0, 12)) split(region)
  const timed: Timed[] = slabs.map(({ name, region }) => {
    const start = performance.now()
    const proposal = split(region)
    return { name, proposal, ms: performance.now() - start }
  })
  const all = timed.map(t => t.proposal)
  add('slabs', 'slabs of the generator', slabs.length, 'slabs', '≥ 60', slabs.length >= 60)
  const extra = all.reduce((sum, p) => sum + p.pours.length - p.lowerBound, 0)
  add('extra', 'pours over the fewest possible, all slabs', extra, 'pours', '0', extra === 0)
  const over = all.reduce((sum, p) => sum + p.pours.filter(q => q.areaM2 > capM2 * (1 + 1e-9)).length, 0)
  add('over-cap', 'pours over the cap', over, 'pours', '0', over === 0)
  const closure = Math.max(
    ...slabs.map(({ region }, i) => {
      const area = regionArea(region)
      return Math.abs(all[i]!.pours.reduce((sum, p) => sum + regionArea(p.region), 0) - area) / area
    }),
  )
  add('closure', 'worst area error of the pours together, relative', closure, '1', '≤ 1e-9', closure <= 1e-9)
  const lengths = Math.max(
    ...slabs.map(({ region }, i) => {
      const around = all[i]!.pours.reduce((sum, p) => sum + regionPerimeter(p.region), 0)
      return Math.abs((around - regionPerimeter(region)) / 2 - jointM(all[i]!)) / around
    }),
  )
  add('lengths', 'worst error of Σ joint length = (ΣP − P₀)/2, relative', lengths, '1', '≤ 1e-9', lengths <= 1e-9)

  const clocked = <T>(run: () => T): { readonly value: T; readonly ms: number } => {
    const start = performance.now()
    const value = run()
    return { value, ms: performance.now() - start }
  }
  const gridRun = clocked(() => slabs.map(({ region }) => capacityGrid(region, capM2)))
  const stripRun = clocked(() => slabs.map(({ region }) => greedyStrips(region, capM2)))
  const grids = gridRun.value
  const strips = stripRun.value
  const cut = slabs.flatMap((_, i) => (all[i]!.pours.length > 1 ? [i] : []))
  const ratio = mean(cut.map(i => jointM(all[i]!))) / mean(cut.map(i => grids[i]!.jointM))
  add('grid-length', 'joint length of all slabs together', ratio, '×', null, null, 'capacity grid')
  const each = mean(cut.filter(i => grids[i]!.jointM > 0).map(i => jointM(all[i]!) / grids[i]!.jointM))
  add('grid-length-each', 'joint length, mean of the ratios', each, '×', '≤ 0.70', each <= 0.7, 'capacity grid')
  const sum = (list: readonly { readonly pours: number }[]): number =>
    list.reduce((total, b, i) => total + b.pours - all[i]!.lowerBound, 0)
  add('grid-extra', 'pours over the fewest possible', sum(grids), 'pours', null, null, 'capacity grid')
  add('strips-extra', 'pours over the fewest possible', sum(strips), 'pours', null, null, 'greedy strips')
  const stripRatio = mean(cut.map(i => jointM(all[i]!))) / mean(cut.map(i => strips[i]!.jointM))
  add('strips-length', 'joint length, mean over the slabs', stripRatio, '×', null, null, 'greedy strips')
  const powerStart = performance.now()
  const few = cut.filter(i => all[i]!.pours.length <= 15)
  const cells = few.map(i => powerDiagram(slabs[i]!.region, capM2))
  const powerMs = performance.now() - powerStart
  const powerRatio = mean(few.map(i => jointM(all[i]!))) / mean(cells.map(cell => cell.jointM))
  add(
    'power-length',
    'joint length, mean over slabs of ≤ 15 pours',
    powerRatio,
    '×',
    null,
    null,
    'power diagram, any angle',
  )

  const shapes = all.map(p => shapesOf(p.pours.map(({ region }) => toCutRegion(region))))
  const every = slabs.map((_, i) => i)
  type Way = readonly [string, string | null, readonly (PourShapes | null)[], readonly number[], number]
  const ways: readonly Way[] = [
    ['', null, shapes, every, timed.reduce((total, { ms }) => total + ms, 0)],
    ['-grid', 'capacity grid', grids.map(({ shape }) => shape), every, gridRun.ms],
    ['-strips', 'greedy strips', strips.map(({ shape }) => shape), every, stripRun.ms],
    // Larger slabs are left out on both sides: the lattice takes too long there.
    [
      '-few',
      'ours, slabs of 2 to 15 pours',
      few.map(i => shapes[i]!),
      few,
      few.reduce((sum, i) => sum + timed[i]!.ms, 0),
    ],
    ['-power', 'power diagram, slabs of 2 to 15 pours', cells.map(({ shape }) => shape), few, powerMs],
  ]
  for (const [suffix, peer, found, of, ms] of ways) {
    const known = found.flatMap(shape => (shape ? [shape] : []))
    const total = (count: (shape: PourShapes) => number): number => known.reduce((n, shape) => n + count(shape), 0)
    const worst = Math.max(
      ...found.flatMap((shape, i) => (shape && !slabs[of[i]!]!.name.includes('walk') ? [shape.aspect] : [])),
    )
    const row = (id: string, what: string, value: number, unit: string): void =>
      add(`${id}${suffix}`, peer ? `${what}: ${peer}` : what, value, unit, null, null)
    row('aspect', 'worst length ÷ width, walks apart', worst, '1')
    row(
      'sharp',
      'pours with a corner under 60°, edge directions only',
      total(s => s.cornersUnder60),
      'pours',
    )
    row(
      'reentrant',
      're-entrant corners left inside pours',
      total(s => s.reentrantLeft),
      'corners',
    )
    row(
      'short-loads',
      'pours whose last load is short, 4 in thick',
      total(s => s.shortLoads),
      'pours',
    )
    row('ms-all', 'all slabs', ms, 'ms')
  }
  const anySharp = slabs.flatMap(({ name, region }) => {
    const whole = proposePours({ slabId: 's1', part: 'whole', region, capM2: 1e9 }).pours[0]!.minCornerDeg
    if (whole !== null && whole < 60) return []
    const worst = Math.min(...split(region, { directions: 'any' }).pours.map(p => p.minCornerDeg ?? 180))
    return worst < 60 - 1e-9 ? [name] : []
  })
  add(
    'sharp-any',
    'slabs with a corner under 60° though twelve directions are allowed and the slab has none',
    anySharp.length,
    'slabs',
    '0',
    anySharp.length === 0,
  )
  const proven = all.filter(p => p.pours.length <= 5)
  add('proven', 'slabs of ≤ 5 pours proven', proven.filter(p => p.proven).length / proven.length, '1', null, null)
  const gaps = proven.filter(p => p.pours.length > 1).map(p => 100 * p.gap)
  add('gap-mean', 'mean gap to the bound, slabs of 2 to 5 pours', mean(gaps), '%', null, null)
  add('gap-most', 'widest gap to the bound, slabs of 2 to 5 pours', Math.max(...gaps), '%', null, null)
  const manyGaps = all.filter(p => p.pours.length > 5).map(p => 100 * p.gap)
  add('gap-many', 'mean gap to the bound, slabs of more than 5 pours', mean(manyGaps), '%', null, null)

  const optima: Record<string, number> = JSON.parse(readFileSync('tests/pours/optima.json', 'utf8'))
  const worse = timed.flatMap(({ name, proposal }) =>
    name in optima ? [proposal.totalCost / Math.max(optima[name]!, 1e-9) - 1] : [],
  )
  if (worse.length > 0) {
    const most = Math.max(...worse)
    add(
      'optimum',
      'worst cost over the stored optimum, slabs of ≤ 5 pours',
      100 * most,
      '%',
      '≤ 1',
      most <= 0.01,
      'tests/pours/optima.json',
    )
  }

  const small = timed.filter(t => t.proposal.pours.length <= 5)
  add('ms-5', 'slowest slab of ≤ 5 pours', Math.max(...small.map(t => t.ms)), 'ms', '≤ 600', null)
  add('ms-5-median', 'median slab of ≤ 5 pours', median(small.map(t => t.ms)), 'ms', null, null)
  const random = seeded(5)
  const large = [12, 24, 30, 48, 85].map(k => {
    const side = Math.sqrt(k * 890)
    const region = court(random, side * 1.2, side / 1.2, 2, 2)
    const ms = timeMs(() => split(region), 3)
    return { k, ms }
  })
  add('ms-30', '30 pours', large.find(l => l.k === 30)!.ms, 'ms', '≤ 500', null)
  add('ms-85', '85 pours', large.find(l => l.k === 85)!.ms, 'ms', '≤ 1000', null)
  const xs = large.map(l => Math.log(l.k))
  const ys = large.map(l => Math.log(l.ms))
  const slope =
    xs.reduce((s, x, i) => s + (x - mean(xs)) * (ys[i]! - mean(ys)), 0) /
    xs.reduce((s, x) => s + (x - mean(xs)) ** 2, 0)
  add('exponent', 'growth of the time with the pours, 12 to 85', slope, '1', '≤ 1.2', slope <= 1.2)

  const plaza = slabs.find(s => s.name === 'L 1,588')!.region
  const accepted = acceptProposal(split(plaza))
  add(
    'faces-ms',
    'areas after a dragged joint, L patio',
    timeMs(() => pourFaces(plaza, accepted), 41),
    'ms',
    '≤ 8',
    null,
  )
  const big = slabs.find(s => s.name === 'plaza 50,000')!.region
  const bigAccepted = acceptProposal(split(big))
  add(
    'faces-big-ms',
    'areas after a dragged joint, 56 pours',
    timeMs(() => pourFaces(big, bigAccepted), 11),
    'ms',
    '≤ 8',
    null,
  )
  return rows
}
