/** What a tap at the slab costs the page itself until the rest of the pour is planned again and on the screen. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { drawn, ownMs, percentile, withBenchPage } from './benchPage'
import type { Bench, BenchRow } from './row'

/** Minutes after six in the morning, and the button that is pressed then. */
const taps: readonly (readonly [atMin: number, button: string])[] = [
  [25, 'Load 1: Batched'],
  [60, 'Load 1: On site'],
  [74, 'Strip a: Placed'],
  [87, 'Strip b: Placed'],
  [101, 'Strip c: Placed'],
  [115, 'Strip d: Placed'],
  [216, 'Strip a: Ready'],
  [218, 'Strip b: Ready'],
  [220, 'Strip c: Ready'],
  [235, 'Strip a: Stamped'],
  [250, 'Strip b: Stamped'],
]

async function tapThrough(page: Page): Promise<readonly BenchRow[]> {
  const setClock = (min: number) => page.clock.setFixedTime(Date.UTC(2026, 6, 21, 12, min))
  await setClock(20)
  await page
    .getByRole('button', { name: /^Alder Court patio, three pours/ })
    .and(page.locator('.sample'))
    .click()
  await page
    .getByRole('navigation', { name: 'Stages' })
    .getByRole('button', { name: /^Pours/ })
    .click()
  await page.getByRole('button', { name: /^At the slab/ }).click()
  await page.getByRole('button', { name: 'Seen, go on' }).click()
  await page.getByRole('button', { name: taps[0]![1] }).waitFor()
  const session = await page.context().newCDPSession(page)
  // Time of the thread, not of the clock: what else the machine does is not measured.
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  const costs: number[] = []
  for (const [atMin, name] of taps) {
    await setClock(atMin)
    await page.waitForTimeout(1_200)
    const button = page.getByRole('button', { name })
    await button.hover()
    const before = await ownMs(session)
    await button.click()
    await drawn(page)
    costs.push((await ownMs(session)) - before)
  }
  const row = (id: string, what: string, value: number): BenchRow => ({
    ...{ id: `taps.${id}`, what: `a tap at the slab planned again: ${what}`, value },
    ...{ unit: 'ms', peer: null, target: '≤ 50', ok: null },
  })
  return [
    row('first', 'own script and layout of the first', costs[0]!),
    row('median', 'own script and layout, median', percentile(costs, 0.5)),
    row('most', `own script and layout, most of ${taps.length}`, Math.max(...costs)),
  ]
}

export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-taps-'))
  try {
    return await withBenchPage(folder, { width: 1024, height: 768 }, tapThrough)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
