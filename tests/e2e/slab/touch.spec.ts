/** Fingers and a pen on a tablet, by real touch events. */
import { expect, type Page } from 'playwright/test'
import { openSample, stageButton, test } from '../renderer/planner'
import { newSite, sheetPoints } from './slabPage'

test.use({ viewport: { width: 1024, height: 700 }, hasTouch: true, isMobile: true })

type Spot = readonly [x: number, y: number]

async function handOn(page: Page) {
  const wire = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...spots: readonly Spot[]) =>
    wire.send('Input.dispatchTouchEvent', { type, touchPoints: spots.map(([x, y], id) => ({ x, y, id })) })
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', [x, y]: Spot) =>
    wire.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      pointerType: 'pen',
      ...(type === 'mouseMoved' ? {} : { button: 'left', clickCount: 1 }),
      buttons: type === 'mouseReleased' ? 0 : 1,
    })
  return {
    touch,
    pen,
    /** Both ends at once: else a busy machine takes the tap for a press that rests. */
    tap: (spot: Spot) => Promise.all([touch('touchStart', spot), touch('touchEnd')]),
    /** A finger that comes down somewhere, slides, and is lifted. */
    async slide(...spots: readonly Spot[]) {
      await touch('touchStart', spots[0]!)
      for (const spot of spots.slice(1)) await touch('touchMove', spot)
      await touch('touchEnd')
    },
  }
}

const middleOf = async (page: Page, name: RegExp): Promise<Spot> => {
  const box = (await page.getByRole('button', { name }).boundingBox())!
  return [box.x + box.width / 2, box.y + box.height / 2]
}

test('a finger aims and sets where it is lifted, two fingers pinch, a pen draws while the fingers move the plan', async ({
  page,
  planner,
}) => {
  await newSite(page, planner.address)
  const { at } = await sheetPoints(page)
  const { touch, pen, tap, slide } = await handOn(page)
  // Seen from afar the plan is held on every fourth foot.
  await slide(at(-12, -8))
  // The finger comes down beside the corner and slides to it: nothing is set before it is lifted.
  await slide(at(6, -2), at(9, -5), at(12, -8))
  await expect(page.getByRole('button', { name: 'Take back' })).toBeVisible()
  // Boxes over the next corner are carried off by their bar; nothing is set by it.
  const boxes = page.locator('.entry')
  const stood = (await boxes.boundingBox())!
  const bar: Spot = [stood.x + stood.width / 2, stood.y + 6]
  await slide(bar, [bar[0] - 10, bar[1] - 20], [bar[0] - 30, bar[1] - 40])
  await expect.poll(async () => (await boxes.boundingBox())?.y).toBe(stood.y - 40)
  await expect(page.locator('.say')).toContainText('Tap the next corner')
  // A second finger takes back what the first one aims at, and the plan is pinched instead.
  const before = await page.locator('.scale-bar').textContent()
  const [a, b] = [at(-3, 0), at(3, 0)]
  await touch('touchStart', a)
  await touch('touchStart', a, b)
  for (const far of [20, 60, 100]) await touch('touchMove', [a[0] - far, a[1]], [b[0] + far, b[1]])
  await touch('touchEnd')
  await expect(page.locator('.scale-bar')).not.toHaveText(before ?? '')
  await page.getByRole('button', { name: 'Fit' }).click()
  await expect(page.locator('.scale-bar')).toHaveText(before ?? '')
  await slide(at(12, 8))
  // Lifted at speed, and a button tapped at once.
  await slide(at(0, 12), at(-6, 10), at(-12, 8))
  await page.getByRole('button', { name: 'Close it' }).click({ trial: true })
  await tap(await middleOf(page, /^Close it$/))
  await expect(stageButton(page, 'Slab')).toContainText('384 ft²')

  // Nothing chosen under it and no action in hand: one finger moves the plan.
  const side = /^24 ft, A to B of Patio/
  const was = await middleOf(page, side)
  await slide(at(-26, 12), at(-22, 13), at(-18, 14))
  await expect.poll(async () => (await middleOf(page, side))[0]).toBeGreaterThan(was[0] + 20)
  const now = await middleOf(page, side)

  await page.getByRole('button', { name: 'Building', exact: true }).click()
  await page.getByLabel('Drawn as').selectOption('rectangle')
  const [x, y] = now
  await pen('mouseMoved', [x - 100, y - 300])
  await pen('mousePressed', [x - 100, y - 300])
  await pen('mouseMoved', [x, y - 240])
  // The palm comes down beside the pen and is not meant.
  await touch('touchStart', [x + 120, y - 60])
  await pen('mouseMoved', [x + 60, y - 220])
  await touch('touchEnd')
  await pen('mouseReleased', [x + 60, y - 220])
  const house = page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option', { name: /^House/ })
  await expect(house).toHaveCount(1)
  await page.getByRole('button', { name: 'Fence', exact: true }).click()
  await slide([x, y - 120], [x + 40, y - 120], [x + 80, y - 120])
  await expect(page.getByRole('button', { name: 'Take back' })).toHaveCount(0)
  await pen('mousePressed', [x - 120, y - 120])
  await pen('mouseReleased', [x - 120, y - 120])
  await expect(page.getByRole('button', { name: 'Take back' })).toBeVisible()
})

test('a finger that rests adds to what is chosen; nothing is smaller than a fingertip', async ({ page, planner }) => {
  await openSample(page, planner)
  const { touch, slide } = await handOn(page)
  const plan = (await page.getByRole('application').boundingBox())!
  const spot = (share: Spot): Spot => [plan.x + plan.width * share[0], plan.y + plan.height * share[1]]
  // The house lies below the slab.
  const [slab, house] = [spot([0.42, 0.6]), spot([0.45, 0.78])]
  await slide(slab)
  const chosen = page.getByRole('region', { name: 'What is chosen' })
  await expect(chosen.getByRole('heading', { name: 'Patio' })).toBeVisible()
  await touch('touchStart', house)
  await expect(chosen.getByRole('heading', { name: '2 chosen' })).toBeVisible()
  await touch('touchEnd')
  await expect(chosen.getByRole('heading', { name: '2 chosen' })).toBeVisible()
  const small = () =>
    page.$$eval('button, input, select, summary', elements =>
      elements
        .filter(each => each.checkVisibility() && !each.matches('[type=radio], [type=checkbox]'))
        .map(each => ({ words: each.outerHTML.slice(0, 90), box: each.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 1 && box.height > 1 && (box.width < 44 || box.height < 44))
        .map(({ words }) => words),
    )
  expect(await small()).toEqual([])
  await slide(slab)
  await expect(chosen.getByRole('heading', { name: 'Patio' })).toBeVisible()
  expect(await small()).toEqual([])
  // A keyboard that comes up on the screen takes half of the plan, and nothing of what is typed.
  await page
    .getByRole('button', { name: /: type another length$/ })
    .first()
    .click()
  const length = page.getByLabel(/^Length /)
  await length.pressSequentially('19')
  await page.setViewportSize({ width: 1024, height: 380 })
  await expect(length).toHaveValue('19')
  await expect(page.getByRole('button', { name: 'Set it' })).toBeInViewport({ ratio: 1 })
  await page.setViewportSize({ width: 1024, height: 700 })
  await page.getByRole('button', { name: 'Leave it' }).click()
  await page.getByRole('toolbar', { name: 'Drawing actions' }).getByRole('button', { name: 'Slab' }).click()
  expect(await small()).toEqual([])
})
