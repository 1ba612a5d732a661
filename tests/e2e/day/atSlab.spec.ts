import { expect, type Page } from 'playwright/test'
import { axeOn } from '../axe'
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

/** Pairs of targets of the ground’s column that lie over each other. */
const crossingTargets = (page: Page) =>
  page.$$eval('.slab-ground button', nodes => {
    const boxes = nodes.map(node => ({ name: node.textContent, box: node.getBoundingClientRect() }))
    return boxes.flatMap(({ name, box }, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ box: other }) =>
            Math.min(box.right, other.right) - Math.max(box.left, other.left) > 1 &&
            Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 1,
        )
        .map(other => `${name} and ${other.name}`),
    )
  })

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

  // What the load reads, by keys alone: two degrees up from the guess, logged, and the day planned on with it.
  const measure = page.getByRole('button', { name: 'Measure load 1' })
  await measure.focus()
  await page.keyboard.press('Enter')
  const concrete = page.getByRole('group', { name: 'Concrete of load 1' })
  const guessed = Number.parseInt((await concrete.getByRole('status').textContent())!.replace(/\D+/, ''), 10)
  await concrete.getByRole('button', { name: 'Concrete higher' }).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect(concrete.getByRole('button', { name: `Concrete ${guessed + 2} °F is logged` })).toBeFocused()
  await page.getByRole('button', { name: 'Log slump 4 in' }).click()
  await page.getByRole('button', { name: 'Done measuring load 1' }).click()
  await expect(page.getByRole('list', { name: 'Measured' })).toContainText(`concrete ${guessed + 2} °F, slump 4 in`)
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

  for (const left of [4, 3]) {
    await page.getByRole('button', { name: 'One hand short', exact: true }).click()
    await expect(page.getByText(`${left} hands at work`)).toBeVisible()
  }
  // Two hands cannot go on: what helps is offered with its figures.
  await page.getByRole('button', { name: 'One hand short', exact: true }).click()
  const help = page.getByRole('region', { name: 'What helps' })
  await expect(help).toContainText(/Get one hand more, 3 at work\. (Still )?\d+ min/)
  await expect(help.getByRole('button', { name: 'Stop before strip b' })).toBeVisible()
  expect(await smallTargets(page)).toEqual([])
  await help.getByRole('button', { name: 'One hand back' }).click()
  await expect(page.getByText('3 hands at work')).toBeVisible()
  await page.getByRole('button', { name: /^Undo: One hand back/ }).click()
  for (const left of [3, 4, 5]) {
    await page.getByRole('button', { name: /^Undo: One hand short/ }).click()
    await expect(page.getByText(`${left} hands at work`)).toBeVisible()
  }

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
  const taps = log.getByRole('list', { name: 'Taps' }).getByRole('listitem')
  await expect(taps).toHaveCount(8)
  const time = log.getByLabel('Time of Strip a placed', { exact: true })
  await time.fill('7:40 am')
  await time.press('Enter')
  await expect(time).toHaveValue('7:40 am')
  await expect(log.getByRole('listitem').filter({ hasText: 'Strip a placed' })).toContainText('typed')
  await log.getByRole('button', { name: 'Remove Strip b placed' }).click()
  await expect(taps).toHaveCount(7)
  await again.keyboard.press('Control+z')
  await expect(taps).toHaveCount(8)

  // The ticket and the rest of the paper boxes; what cannot be is quoted.
  const boxes = log.getByRole('list', { name: 'Loads' })
  await expect(boxes.getByLabel('Concrete')).toHaveValue(`${guessed + 2} °F`)
  await boxes.getByLabel('Ticket').fill('4411')
  await boxes.getByLabel('Ticket').press('Enter')
  await boxes.getByLabel('Air').fill('hot')
  await boxes.getByLabel('Air').press('Enter')
  await expect(boxes.getByRole('alert')).toContainText('“hot” is not taken')
  await boxes.getByLabel('Air').fill('71')
  await boxes.getByLabel('Air').press('Enter')
  await expect(boxes.getByLabel('Air')).toHaveValue('71 °F')
  await expect(boxes.getByRole('alert')).toHaveCount(0)

  // The retarder in hand, by its label.
  const retarder = again.getByRole('region', { name: 'Retarder' })
  await retarder.getByLabel('Name of the product').fill('Slow-set bags')
  await retarder.getByLabel('Name of the product').press('Enter')
  for (const [label, typed, kept] of [
    ['A package holds', '12 oz', '12 oz'],
    ['Packages on hand', '9', '9'],
    ['Label: least to most, oz for 1 yd³', '8 to 24', '8 to 24'],
    ['The least dose puts off, min', '20', '20'],
  ] as const) {
    await retarder.getByLabel(label).fill(typed)
    await retarder.getByLabel(label).press('Enter')
    await expect(retarder.getByLabel(label)).toHaveValue(kept)
  }
  await expect(retarder).toContainText('counted by this label')
  const { violations } = await axeOn(again).analyze()
  expect(violations.map(v => `${v.id} ${v.nodes[0]?.html}`)).toEqual([])
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
  await page.getByRole('button', { name: 'Measure load 1' }).click()
  for (const size of [
    { width: 1024, height: 700 },
    { width: 768, height: 1024 },
    { width: 1440, height: 900 },
  ]) {
    await page.setViewportSize(size)
    expect(await smallTargets(page)).toEqual([])
    expect(await crossingTargets(page)).toEqual([])
    expect(await page.evaluate(() => document.querySelector('.slab')!.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
  }
  for (const theme of ['sunlight', 'light', 'dark']) {
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
    const { violations } = await axeOn(page, theme).analyze()
    expect(violations.map(v => `${theme}: ${v.id} ${v.nodes[0]?.html}`)).toEqual([])
    await page.getByRole('button', { name: /^Theme: / }).click()
  }
  await page.keyboard.press('Escape')
  await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light')
})
