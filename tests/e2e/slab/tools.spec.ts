/** What is done to things once they are drawn, each by hand: turned over, lined up, made square, walked, thickened, typed. */

import { expect, type Page } from 'playwright/test'
import { axeOn } from '../axe'
import { openSample, stageButton, test } from '../renderer/planner'
import { figure, newSite } from './slabPage'

const chosenOf = (page: Page) => page.getByRole('region', { name: 'What is chosen' })
const outlineOf = (page: Page) => page.getByRole('listbox', { name: 'Outline of the plan' })
const undone = (page: Page, step: string) =>
  expect(page.getByRole('button', { name: `Undo ${step}`, exact: true })).toBeEnabled()

test('field notes walked in order close, a crooked slab is made square, turned over, lined up and thickened', async ({
  page,
  planner,
}) => {
  await newSite(page, planner.address)
  const chosen = chosenOf(page)
  await page.getByText('Field notes: edges walked in order').click()
  // Four edges of 24 and 14 ft, the last 1 in short: the walk fails to close by that inch, which is spread.
  for (const [i, length] of ['24', '14', '24', `13' 11"`].entries())
    await page.getByLabel(`Length of edge ${i + 1}`, { exact: true }).fill(length)
  // Out of square by a degree: a parallelogram.
  for (const [i, turn] of ['91 left', '89 left', '91 left'].entries())
    await page.getByLabel(`Turn before edge ${i + 2}`, { exact: true }).fill(turn)
  await page.getByRole('button', { name: 'Draw the walk' }).click()
  await expect(
    page.getByText(/^Patio is drawn\. The walk misses its start by 1″ over 75′ 11″, spread over its corners\.$/),
  ).toBeVisible()
  // Base by height of a parallelogram, the missing inch shared by two sides: 24 × 13.96 × sin 91°.
  await expect(stageButton(page, 'Slab')).toContainText('334.9 ft²')
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  await outlineOf(page)
    .getByRole('option', { name: /^Patio, outline/ })
    .click()
  await expect(chosen.getByText(/^Diagonals .* out\./)).toBeVisible()
  await chosen.getByRole('button', { name: 'Make it square' }).click()
  await undone(page, 'square')
  await expect(chosen.getByText(/Diagonals .*, square\./)).toBeVisible()

  const concrete = figure(page, 'Concrete in place')
  const flat = await concrete.textContent()
  await chosen.getByLabel('Go to').selectOption({ label: 'edge A to B' })
  await chosen.getByLabel('Thickened', { exact: true }).check()
  await chosen.getByLabel('Thickened to').fill(`12"`)
  await chosen.getByLabel('Thickened to').press('Enter')
  await undone(page, 'thickened edge')
  await expect(concrete).not.toHaveText(flat ?? '')

  await page.getByRole('toolbar', { name: 'Drawing actions' }).getByRole('button', { name: 'Tree' }).click()
  // Typed right after the action was chosen, with no click on the plan in between.
  for (const [right, up] of [
    ['30', '3'],
    ['33', '9'],
  ] as const) {
    await page.keyboard.type(right)
    await page.keyboard.press('Tab')
    await page.keyboard.type(`${up}\n`)
  }
  await page.keyboard.press('Escape')
  await page.keyboard.press('Escape')
  const rows = outlineOf(page).getByRole('option', { name: /^Tree/ })
  await rows.first().click()
  await rows.last().click({ modifiers: ['Shift'] })
  await expect(chosen.getByRole('heading', { name: '2 chosen' })).toBeVisible()
  await chosen.getByLabel('Line up with the first').selectOption({ label: 'Left sides' })
  await chosen.getByRole('button', { name: 'Line up', exact: true }).click()
  await undone(page, 'line up')
  await outlineOf(page)
    .getByRole('option', { name: /^Patio, outline/ })
    .click()
  const area = (await figure(page, 'Slab').textContent()) ?? ''
  await chosen.getByRole('button', { name: 'Mirror' }).click()
  await undone(page, 'mirror')
  await expect(figure(page, 'Slab')).toHaveText(area)
})

test('a fence is typed over, a height is taken from a shadow, and what is copied by a button is pasted in another site', async ({
  page,
  planner,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openSample(page, planner)
  const chosen = chosenOf(page)
  const pick = (name: RegExp) => outlineOf(page).getByRole('option', { name }).first().click()
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  // A ledger read to its end comes back to the form of what is chosen.
  await page.getByText('Field notes: edges walked in order').scrollIntoViewIfNeeded()
  await pick(/^House/)
  await expect(chosen.getByRole('heading', { name: 'House' })).toBeInViewport()
  await chosen.getByText('Height from its shadow').click()
  await chosen.getByLabel('Shadow of the eave').fill(`12'`)
  await chosen.getByLabel('Shadow of the eave').press('Enter')
  await expect(chosen.getByText(/The sun stands \d+\.\d° high/)).toBeVisible()
  for (const theme of ['Light', 'Dark', 'Sunlight']) {
    const { violations } = await axeOn(page).include('[aria-label="What is chosen"]').analyze()
    expect(violations.map(v => `${theme}: ${v.id} ${v.nodes[0]?.html}`)).toEqual([])
    await page.getByRole('button', { name: `${theme} theme` }).click()
  }
  await pick(/^Fence/)
  const fence = page.getByRole('button', { name: /, A to B of Fence: type another length/ })
  await page.getByRole('button', { name: 'Farther' }).click()
  await fence.press('Enter')
  await page.getByLabel('Length A to B').fill(`40'`)
  await page.keyboard.press('Enter')
  await undone(page, 'length')
  await expect(fence).toHaveAccessibleName(/^40 ft, A to B of Fence/)
  // One point of it is typed: the run that starts there is left as it stands.
  await chosen.getByLabel('Go to').selectOption({ label: 'point B' })
  await chosen.getByLabel('Length from A, B moves').fill(`42'`)
  await chosen.getByLabel('Length from A, B moves').press('Enter')
  await undone(page, 'length')
  await chosen.getByLabel('Go to').selectOption({ label: 'the whole line' })
  await expect(fence).toHaveAccessibleName(/^42 ft, A to B of Fence/)

  await pick(/^Maple/)
  await chosen.getByRole('button', { name: 'Copy', exact: true }).click()
  await page.getByTitle('Back to the start page').click()
  await page.getByRole('button', { name: 'Throw away' }).click()
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await page.getByRole('button', { name: 'Paste', exact: true }).click()
  await undone(page, 'paste')
  await expect(outlineOf(page).getByRole('option', { name: /^Maple/ })).toHaveCount(1)
})
