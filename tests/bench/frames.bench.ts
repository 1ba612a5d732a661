/** What a frame of the plan costs the page itself while a hand moves on it: script, style and layout, not paint. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { addTree } from '../../core/document/commands/addCaster'
import { serializeSite } from '../../core/document/serializeSite'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'
import { drawn, percentile, withBenchPage } from './benchPage'
import { type FrameCost, traceFrames } from './frameCosts'
import type { Bench, BenchRow } from './row'

const mostCasters = 100
const window = { width: 1400, height: 900 }
/** Moves of one hand: two seconds at 60 frames a second. Their first ones run code that is not compiled hot yet. */
const [steps, firstSteps] = [120, 30]

/** The court with trees around it until a hundred things throw shade. */
function crowdedCourt(): Site {
  let site: Site = { ...schoolCourt(), name: 'Crowded court' }
  for (let i = 0; site.casters.length < mostCasters; i++) {
    const angle = (2 * Math.PI * i) / 89
    const made = addTree({
      name: `Tree ${i + 1}`,
      at: [25 + 38 * Math.cos(angle), 12 + 30 * Math.sin(angle)],
      heightM: 7,
      trunkHeightM: 2,
      crownRadiusM: 2.5,
      density: 'medium',
      leaves: 'evergreen',
    })(site)
    if (!made.ok) throw new Error(JSON.stringify(made.error))
    site = made.value
  }
  return site
}

interface Gesture {
  readonly id: string
  readonly what: string
  begin(page: Page): Promise<void>
  /** One move of the hand. */
  step(page: Page, i: number): Promise<void>
  end(page: Page): Promise<void>
}

const plan = (page: Page) => page.getByRole('application')
const middle = { x: 560, y: 430 } as const
const circle = (i: number, radius: number): readonly [number, number] => {
  const angle = (2 * Math.PI * i) / 30
  return [middle.x + radius * Math.cos(angle), middle.y + radius * Math.sin(angle)]
}

const gestures: readonly Gesture[] = [
  {
    id: 'pan',
    what: 'panning',
    async begin(page) {
      await page.mouse.move(...circle(0, 60))
      await page.mouse.down()
    },
    step: (page, i) => page.mouse.move(...circle(i, 60)),
    end: page => page.mouse.up(),
  },
  {
    id: 'zoom',
    what: 'zooming',
    begin: page => page.mouse.move(middle.x, middle.y),
    step: (page, i) => page.mouse.wheel(0, i % 20 < 10 ? -40 : 40),
    async end() {},
  },
  {
    id: 'draw',
    what: 'drawing an outline',
    async begin(page) {
      await page.getByRole('button', { name: 'Slab', exact: true }).click()
      for (const i of [0, 15]) {
        await page.mouse.move(...circle(i, 200))
        await page.mouse.down()
        await page.mouse.up()
      }
    },
    step: (page, i) => page.mouse.move(...circle(i, 240)),
    async end(page) {
      await plan(page).press('Escape')
      await plan(page).press('Escape')
    },
  },
  {
    id: 'corner',
    what: 'moving a corner of the court by the arrows',
    async begin(page) {
      const outline = page.getByRole('button', { name: 'Outline', exact: true })
      await outline.press('Enter')
      const first = page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option').first()
      await first.focus()
      await first.press('Space')
      await outline.press('Enter')
      await page.getByLabel('Go to').selectOption({ label: 'corner A' })
      await plan(page).focus()
    },
    step: (page, i) => page.keyboard.press(i % 2 === 0 ? 'ArrowLeft' : 'ArrowRight'),
    async end() {},
  },
  {
    id: 'hour',
    what: 'dragging the hour',
    async begin(page) {
      await page.getByRole('slider', { name: 'Hour shown' }).focus()
    },
    step: page => page.keyboard.press('ArrowRight'),
    async end() {},
  },
]

/** A frame in which the page itself did next to nothing tells nothing of what the hand cost. */
const idleMs = 0.5

async function measure(page: Page, gesture: Gesture): Promise<readonly BenchRow[]> {
  await gesture.begin(page)
  const move = async (i: number) => {
    await gesture.step(page, i)
    await drawn(page)
  }
  // The first moves warm the page up.
  for (let i = -4; i < 0; i++) await move(i)
  await page.evaluate(() => {
    ;(globalThis as unknown as { cleared: number }).cleared = 0
  })
  const movesFrom = (begin: number, end: number) =>
    traceFrames(page, async () => {
      for (let i = begin; i < end; i++) await move(i)
    })
  const isBusy = ({ ownMs }: FrameCost) => ownMs >= idleMs
  const first = (await movesFrom(0, firstSteps)).filter(isBusy)
  const busy = [...first, ...(await movesFrom(firstSteps, steps)).filter(isBusy)]
  const cleared = await page.evaluate(() => (globalThis as unknown as { cleared: number }).cleared)
  await gesture.end(page)
  if (busy.length < steps / 2) throw new Error(`${gesture.id}: ${busy.length} frames of ${steps} moves were seen`)
  const of = (name: keyof FrameCost, share: number, frames = busy) =>
    percentile(
      frames.map(frame => frame[name]),
      share,
    )
  const row = (id: string, what: string, value: number, unit: string, target: string | null): BenchRow => ({
    id: `frames.${gesture.id}.${id}`,
    what: `${gesture.what}: ${what}`,
    value,
    unit,
    peer: null,
    target,
    ok: null,
  })
  return [
    row('median', 'own script and layout a frame, median', of('ownMs', 0.5), 'ms', null),
    row('p95', 'own script and layout a frame, 95th of 100', of('ownMs', 0.95), 'ms', '≤ 8'),
    row('first', 'the same of the first 30 moves', of('ownMs', 0.95, first), 'ms', '≤ 8'),
    row('longest', 'own script and layout of one task, most', of('longestMs', 1), 'ms', '≤ 50'),
    row('paint', 'paint a frame, median', of('paintMs', 0.5), 'ms', null),
    row('interval', 'from frame to frame, median', of('intervalMs', 0.5), 'ms', null),
    row('canvases', 'canvases drawn again a move', cleared / steps, '1', null),
  ]
}

async function measureAll(page: Page): Promise<readonly BenchRow[]> {
  await page.evaluate(() => {
    const counted = globalThis as unknown as { cleared: number }
    const { clearRect } = CanvasRenderingContext2D.prototype
    CanvasRenderingContext2D.prototype.clearRect = function count(...args) {
      counted.cleared += 1
      clearRect.apply(this, args)
    }
  })
  await page.getByRole('button', { name: 'Open a file' }).click()
  await page
    .getByRole('dialog', { name: 'Open a file' })
    .getByRole('button', { name: /Crowded court/ })
    .click()
  await plan(page).waitFor()
  // The first plan is worked out beside the page; what is measured is the hand's part.
  await page.waitForTimeout(8_000)
  const rows: BenchRow[] = []
  for (const gesture of gestures) rows.push(...(await measure(page, gesture)))
  return rows
}

export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-frames-'))
  writeFileSync(join(folder, 'Crowded court.slabwright.json'), serializeSite(crowdedCourt()))
  try {
    return await withBenchPage(folder, window, measureAll)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
