import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from 'playwright/test'
import { openSample, stageButton, test } from '../renderer/planner'

const sample = /^Alder Court patio, three pours/

/** 2026-07-21 is the day of pour 1; the yard is in America/Boise, 6 h behind. */
const setClock = (page: Page, localTime: string) => page.clock.setFixedTime(`2026-07-21T${localTime}:00-06:00`)

const next = (page: Page) => page.getByRole('region', { name: 'Next' })

async function enter(page: Page): Promise<void> {
  await stageButton(page, 'Pours').click()
  await page.getByRole('button', { name: /^At the slab/ }).click()
  await expect(page.getByRole('main', { name: 'At the slab' })).toBeVisible()
}

const smallTargets = (page: Page) =>
  page.$$eval('.slab button, .slab [role=slider]', nodes =>
    nodes
      .map(node => ({ name: node.textContent, box: node.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 64 || box.height < 64)
      .map(({ name, box }) => `${name} ${Math.round(box.width)} × ${Math.round(box.height)}`),
  )

test('a pour with a late truck is tapped through, and a killed page loses nothing', async ({
  page,
  planner,
  context,
}) => {
  await setClock(page, '06:20')
  await openSample(page, planner, sample)
  await enter(page)
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sunlight')
  await page.getByRole('button', { name: 'Seen, go on' }).click()
  await expect(next(page).getByRole('heading')).toHaveText('Load 1 batched?')
  const sentence = page.getByRole('main').getByRole('status').first()
  await expect(sentence).toContainText(/\d+ min of slack, least in strip \w/)

  await page.getByRole('button', { name: 'Truck 1: 15 min late' }).click()
  await page.getByRole('button', { name: 'Truck 1: 15 min late' }).click()
  await expect(page.getByRole('listitem').filter({ hasText: 'Load 1' })).toContainText('here 7:30 am')
  await setClock(page, '06:55')
  await next(page).getByRole('button', { name: 'Batched' }).click()
  await setClock(page, '07:31')
  await next(page).getByRole('button', { name: 'On site' }).click()
  await expect(next(page).getByRole('heading')).toHaveText(/Strip a placed\?|Retarder before strip a/)
  await setClock(page, '07:46')
  await page.getByRole('button', { name: 'Strip a: Placed' }).click()

  // By keys: on by a foot, then how much of the load is out.
  const front = page.getByRole('slider', { name: 'How far the concrete has come' })
  await front.focus()
  const before = await front.getAttribute('aria-valuetext')
  await page.keyboard.press('ArrowRight')
  await expect(front).not.toHaveAttribute('aria-valuetext', before!)
  await page.getByRole('button', { name: '¼ out' }).click()
  await expect(page.getByText(/^Running .*″ thick, 4″ planned/)).toBeVisible()

  await page.getByRole('button', { name: 'One hand short' }).click()
  await expect(page.getByText(/^4 hands at work/)).toBeVisible()
  await page.getByRole('button', { name: /^Undo: One hand short/ }).click()
  await expect(page.getByText(/^5 hands at work/)).toBeVisible()

  await setClock(page, '08:00')
  await page.getByRole('button', { name: 'Strip b: Placed' }).click()
  await expect(page.getByRole('button', { name: /^Undo: Strip b placed, 8:00 am/ })).toBeVisible()
  await page.close()

  const again = await context.newPage()
  await setClock(again, '08:02')
  await again.goto(planner.address)
  await again.getByRole('button', { name: sample }).and(again.locator(':not(.sample)')).first().click()
  await enter(again)
  await again.getByRole('button', { name: 'Seen, go on' }).click()
  await expect(again.getByRole('button', { name: /^Undo: Strip b placed, 8:00 am/ })).toBeVisible()
  await expect(again.getByRole('listitem').filter({ hasText: 'Strip a' })).toContainText('placed')

  // Stopped short: asked first, then the rest is planned again and the log can be corrected.
  await again.getByRole('button', { name: /^Stop short at/ }).click()
  await again.getByRole('alertdialog').getByRole('button', { name: 'Stop there' }).click()
  await expect(again.getByText(/^Pour 1 is poured: /)).toBeVisible()
  await again.getByRole('button', { name: 'Plan the rest again' }).click()
  await again.getByRole('button', { name: 'See the pours' }).click()
  await expect(again.getByRole('region', { name: 'Pours', exact: true })).toContainText('poured')
  await stageButton(again, 'Log').click()
  const log = again.getByRole('region', { name: 'Log of pour 1' })
  await expect(log.getByRole('listitem')).toHaveCount(8)
  const time = log.getByLabel('Time of Strip a placed', { exact: true })
  await time.fill('7:40 am')
  await time.press('Enter')
  await expect(time).toHaveValue('7:40 am')
  await expect(log.getByRole('listitem').filter({ hasText: 'Strip a placed' })).toContainText('typed')
  await log.getByRole('button', { name: 'Remove Strip b placed' }).click()
  await expect(log.getByRole('listitem')).toHaveCount(7)
  await again.keyboard.press('Control+z')
  await expect(log.getByRole('listitem')).toHaveCount(8)
})

test('every target is for a gloved hand, and the screen passes the accessibility check in three themes', async ({
  page,
  planner,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await setClock(page, '06:30')
  await page.setViewportSize({ width: 1024, height: 700 })
  await openSample(page, planner, sample)
  await stageButton(page, 'Pours').click()
  await expect(page.getByRole('button', { name: 'At the slab' })).toBeEnabled()
  await page.keyboard.press('F8')
  await expect(page.getByRole('button', { name: 'Seen, go on' })).toBeFocused()
  expect(await smallTargets(page)).toEqual([])
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Load 1: Batched' }).click()
  await page.getByRole('button', { name: 'Load 1: On site' }).click()
  await page.getByRole('button', { name: 'Rain coming' }).click()
  await page.getByRole('button', { name: 'On 1 ft' }).click()
  for (const size of [
    { width: 1024, height: 700 },
    { width: 768, height: 1024 },
  ]) {
    await page.setViewportSize(size)
    expect(await smallTargets(page)).toEqual([])
    expect(await page.evaluate(() => document.querySelector('.slab')!.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
  }
  for (const theme of ['sunlight', 'light', 'dark']) {
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(v => `${theme}: ${v.id} ${v.nodes[0]?.html}`)).toEqual([])
    await page.getByRole('button', { name: /^Theme: / }).click()
  }
  await page.keyboard.press('Escape')
  await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light')
})
