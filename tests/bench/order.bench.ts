import { spawnSync } from 'node:child_process'
import { shiftJoint } from '../../core/pours/editing/moveJoint'
import { type OrderAnswer, orderBudgets, searchOrder } from '../../core/pours/order/searchOrder'
import { acceptedSite } from '../jointEditing/acceptedSlab'
import { gridPuzzle } from '../order/puzzles'
import type { Bench, BenchRow } from './row'

const medianMs = (runs: number, work: () => unknown): number => {
  work()
  const times = Array.from({ length: runs }, () => {
    const from = process.hrtime.bigint()
    work()
    return Number(process.hrtime.bigint() - from) / 1e6
  })
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!
}

const time = (id: string, what: string, value: number, target: string): BenchRow => ({
  id,
  what,
  value,
  unit: 'ms',
  peer: null,
  target,
  ok: null,
})

const cases = [
  ['order-10', '10 pours, two crews, proven', gridPuzzle(5, 2, { perDay: 2 }), '≤ 1000', true],
  ['order-12', '12 pours, two crews, proven', gridPuzzle(4, 3, { perDay: 2 }), '≤ 3000', true],
  [
    'order-12-age',
    '12 pours, neighbors two days old, proven',
    gridPuzzle(4, 3, { perDay: 2, neighborAge: 2, crossAge: 2 }),
    '≤ 3000',
    true,
  ],
  ['order-55', '55 pours, one crew', gridPuzzle(11, 5), '≤ 2000', false],
  ['order-55-two', '55 pours, two crews', gridPuzzle(11, 5, { perDay: 2 }), '≤ 2000', false],
  ['order-200', '200 pours, two crews', gridPuzzle(20, 10, { perDay: 2 }), '≤ 5000', false],
] as const

/** What the memory is measured of: read by a process of its own, below. */
export const orderAll = (): void => {
  for (const [, , problem] of cases) searchOrder(problem, orderBudgets.full)
}

/** Peak memory of a process that does nothing else: in this one lies what the benches before have left. */
function measureMemory(): number {
  const script = `const { orderAll } = await import(${JSON.stringify(import.meta.url)});orderAll();process.stdout.write(String(process.resourceUsage().maxRSS))`
  const { stdout } = spawnSync(process.execPath, ['--input-type=module', '--eval', script], { encoding: 'utf8' })
  return Number(stdout || Number.NaN) / 1024
}

export const bench: Bench = async () => {
  const rows: BenchRow[] = []
  for (const [id, what, problem, target, mustProve] of cases) {
    let answer: OrderAnswer | null = null
    rows.push(
      time(
        id,
        what,
        medianMs(3, () => {
          answer = searchOrder(problem, orderBudgets.full)
        }),
        target,
      ),
    )
    const found = answer as OrderAnswer | null
    const gap = found?.gap ?? 1
    rows.push({
      id: `${id}-gap`,
      what: mustProve ? 'above the cheapest, share of the cost' : 'above the lower bound, share of the cost',
      value: gap,
      unit: '1',
      peer: 'lower bound',
      target: mustProve ? '= 0' : '≤ 0.02',
      ok: mustProve ? found?.proven === true : gap <= 0.02,
    })
  }
  const site = acceptedSite([
    [0, 0],
    [120, 0],
    [120, 60],
    [60, 60],
    [60, 120],
    [0, 120],
  ])
  const jointId = site.accepted[0]!.joints[0]!.id
  let step = 0
  rows.push(
    time(
      'joint-drag',
      `a joint of ${site.accepted[0]!.pours.length} pours dragged`,
      medianMs(15, () => shiftJoint(site, jointId, 0.01 * ++step)),
      '≤ 8',
    ),
  )
  rows.push({
    id: 'order-memory',
    what: 'peak memory of a process that finds these orders',
    value: measureMemory(),
    unit: 'MB',
    peer: null,
    target: '≤ 300',
    ok: null,
  })
  return rows
}
