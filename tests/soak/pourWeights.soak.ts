import { mkdirSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type LoadGround, loadGround } from '../../core/pours/loadGround'
import type { Proposal } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { type Weights, weightTable } from '../../core/pours/weights'
import { shapesOf } from '../pours/baselines'
import { benchSlabs } from '../pours/randomSlabs'
import { ft2M2 } from '../pours/shapes'

const capM2 = 900 * ft2M2
/** Enough to find what a plan at rest finds on most of these slabs. */
const budget = 300_000

type Split = { readonly weights?: Partial<Weights>; readonly loads?: LoadGround }

/** Weights that bear on a bare slab; the rest need a site, a pattern, a border or more pours than asked for. */
const doubled: readonly (readonly (keyof Weights)[])[] = [
  ['jointLength'],
  ['acuteCorner', 'acuteFloor'],
  ['nearCorner'],
  ['finger'],
  ['reentrantLeft'],
  ['holeInside'],
  ['aspect', 'aspectMost'],
  ['narrow'],
  ['imbalance'],
  ['extraJoint'],
  ['teeOffset', 'teeFloor'],
  ['reach'],
]

const jointFt = (all: readonly Proposal[]): number =>
  all.reduce((sum, { joints }) => joints.reduce((n, { lengthM }) => n + lengthM / 0.3048, sum), 0)

/** Joints of `now` with no joint of `before` within half a foot of both ends. */
function movedPours(now: Proposal, before: Proposal): number {
  const near = (p: readonly [number, number], q: readonly [number, number]) =>
    Math.hypot(p[0] - q[0], p[1] - q[1]) < 0.15
  const stays = ({ from, to }: Proposal['joints'][number]): boolean =>
    before.joints.some(o => (near(from, o.from) && near(to, o.to)) || (near(from, o.to) && near(to, o.from)))
  return new Set(now.joints.filter(joint => !stays(joint)).flatMap(({ pours }) => pours)).size
}

describe('how the answer moves when a weight doubles', () => {
  it('is told term by term over the bench slabs of two to five pours', { timeout: 3_600_000 }, () => {
    const slabs = benchSlabs().filter(({ region }) => {
      const { lowerBound } = proposePours({ slabId: 's1', part: 'whole', region, capM2, budget: 1 })
      return lowerBound > 1 && lowerBound <= 5
    })
    const run = (more: Split): Proposal[] =>
      slabs.map(({ region }) => proposePours({ slabId: 's1', part: 'whole', region, capM2, budget, ...more }))
    const loads = loadGround({ thicknessM: 0.1016, pumped: false, units: 'ftin', settings: undefined }, capM2)
    const twice = {
      ...loads,
      envelope: loads.envelope.map(({ areaM2, cost }) => ({ areaM2, cost: 2 * cost })),
      weights: { unusedTruck: 2 * loads.weights.unusedTruck, shortLoad: 2 * loads.weights.shortLoad },
    }
    const bare = run({})
    const loaded = run({ loads })
    const weightOf = (name: keyof Weights): number => weightTable[name].value
    const rows = [
      ...doubled.map(names => ({
        names: names.join(', '),
        before: bare,
        now: run({ weights: Object.fromEntries(names.map(name => [name, 2 * weightOf(name)])) }),
      })),
      { names: 'unusedTruck, shortLoad (against none)', before: bare, now: loaded },
      { names: 'unusedTruck, shortLoad', before: loaded, now: run({ loads: twice }) },
    ]
    const figures = (all: readonly Proposal[]) =>
      shapesOf(all.flatMap(({ pours }) => pours.map(p => toCutRegion(p.region))))
    const signed = (n: number): string => (n > 0 ? `+${n}` : n < 0 ? `−${-n}` : '0')
    const lines = rows.map(({ names, before, now }) => {
      const [was, is] = [figures(before), figures(now)]
      const change = 100 * (jointFt(now) / jointFt(before) - 1)
      const moved = now.reduce((sum, plan, i) => sum + movedPours(plan, before[i]!), 0)
      const share = Math.round((100 * moved) / now.reduce((sum, { pours }) => sum + pours.length, 0))
      expect(
        now.every(({ pours, lowerBound }) => pours.length === lowerBound),
        names,
      ).toBe(true)
      return [
        names,
        `${change < 0 ? '−' : '+'}${Math.abs(change).toFixed(1)} %`,
        `${share} %`,
        signed(is.cornersUnder60 - was.cornersUnder60),
        signed(is.reentrantLeft - was.reentrantLeft),
        signed(is.shortLoads - was.shortLoads),
      ]
    })
    const heads = [
      'doubled',
      'joint length',
      'pours whose joints move',
      'with a corner < 60°',
      're-entrant left',
      'short loads',
    ]
    const table = [heads, heads.map(() => '---'), ...lines].map(cells => `| ${cells.join(' | ')} |`).join('\n')
    mkdirSync('dist/pours', { recursive: true })
    writeFileSync('dist/pours/weights.md', `${table}\n`)
    // Dearer joints are never longer in sum, dearer corners never more.
    expect(jointFt(rows[0]!.now)).toBeLessThanOrEqual(1.01 * jointFt(bare))
    expect(figures(rows[4]!.now).reentrantLeft).toBeLessThanOrEqual(figures(bare).reentrantLeft)
  })
})
