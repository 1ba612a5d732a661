import { expect, type Page } from 'playwright/test'
import { faultsInEveryTheme } from '../axe'
import { openSample, stageButton, test } from '../renderer/planner'

const sample = /^Alder Court patio, three pours/

const toPours = async (page: Page) => {
  await stageButton(page, 'Pours').click()
  await expect(page.getByRole('list', { name: 'The day of each pour' }).getByRole('listitem')).toHaveCount(3, {
    timeout: 60_000,
  })
}

const row = (page: Page, number: number) => page.getByRole('listitem', { name: new RegExp(`^Pour ${number},`) })

test('the rail tells the weather and each pour’s day; its start moves by keys and by hand and is kept', async ({
  page,
  planner,
}) => {
  await openSample(page, planner, sample)
  await toPours(page)
  await expect(page.getByRole('listitem', { name: /^Air .* drying up to/ })).toBeVisible()
  await expect(page.getByRole('listitem', { name: /^Wind/ })).toBeVisible()
  await expect(row(page, 1)).toHaveAccessibleName(/(2 loads|1 load), \d+ min slack in \w/)

  // Folded until asked: then a line a strip.
  const fold = row(page, 1).getByRole('button')
  await expect(fold).toHaveAttribute('aria-expanded', 'false')
  const low = (await row(page, 1).boundingBox())!.height
  await fold.click()
  await expect(fold).toHaveAttribute('aria-expanded', 'true')
  expect((await row(page, 1).boundingBox())!.height).toBeGreaterThan(2 * low)

  const start = page.getByRole('slider', { name: 'First truck of pour 1' })
  await expect(start).toHaveAttribute('aria-valuetext', '7:00 am')
  await start.press('ArrowRight')
  await expect(start).toHaveAttribute('aria-valuetext', '7:15 am')
  await expect(page.getByRole('button', { name: 'Undo start of pour 1' })).toBeVisible()
  await expect(row(page, 1)).toHaveAccessibleName(/min slack in \w|too late in \w/, { timeout: 60_000 })

  // By hand: half an hour's way along the hours, whatever a pixel is worth.
  const box = (await start.boundingBox())!
  const at = { x: box.x + 30, y: box.y + 13 }
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 40, at.y, { steps: 4 })
  await expect(start).not.toHaveAttribute('aria-valuetext', '7:15 am')
  await page.mouse.up()
  const moved = await start.getAttribute('aria-valuetext')
  await page.getByRole('button', { name: 'Undo start of pour 1' }).click()
  await expect(start).toHaveAttribute('aria-valuetext', '7:15 am')
  expect(moved).not.toBe('7:15 am')

  // Esc leaves the start where it was.
  await start.focus()
  await page.keyboard.down('ArrowLeft')
  await page.keyboard.press('Escape')
  await page.keyboard.up('ArrowLeft')
  await expect(start).toHaveAttribute('aria-valuetext', '7:15 am')
})

test('the set map has a legend, two crews stand side by side, and hours stand against crews', async ({
  page,
  planner,
}) => {
  await openSample(page, planner, sample)
  await toPours(page)
  const day = page.getByRole('region', { name: 'Day of the pours' })
  await day.getByRole('button', { name: 'Minutes to ready on the plan' }).click()
  await expect(page.getByRole('list', { name: 'Legend of the set map' }).getByRole('listitem')).toHaveText([
    'not placed',
    'over 60 min',
    '30 to 60',
    'under 30',
    'ready',
    'too hard',
  ])
  await day.getByRole('button', { name: 'Compare with another crew or day' }).click()
  await expect(day.getByRole('button', { name: 'Done comparing' })).toBeFocused()
  const figures = day.getByRole('figure')
  await expect(figures).toHaveCount(2, { timeout: 60_000 })
  await expect(figures.nth(0)).toContainText('5 hands')
  await expect(figures.nth(1)).toContainText('6 hands')
  await day.getByRole('textbox', { name: 'Hands' }).fill('2')
  await day.getByRole('textbox', { name: 'Hands' }).press('Enter')
  await expect(day.getByText(/A crew of 2|2 hands/).first()).toBeVisible({ timeout: 60_000 })
  await expect(figures).toHaveCount(1)
  const table = day.getByRole('table')
  await expect(table.getByRole('columnheader')).toHaveCount(6)
  expect(await table.getByRole('row').count()).toBeGreaterThan(4)
})

test('the day on rail, plan and ledger passes the accessibility check in every theme', async ({ page, planner }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openSample(page, planner, sample)
  await toPours(page)
  await row(page, 1).getByRole('button').click()
  const day = page.getByRole('region', { name: 'Day of the pours' })
  await day.getByRole('button', { name: 'Minutes to ready on the plan' }).click()
  await day.getByRole('button', { name: 'Compare with another crew or day' }).click()
  await expect(day.getByRole('figure')).toHaveCount(2, { timeout: 60_000 })
  await expect(day.getByRole('table')).toBeVisible({ timeout: 60_000 })
  expect(await faultsInEveryTheme(page, 'day')).toEqual([])
})
