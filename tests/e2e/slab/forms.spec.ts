/** The forms of the Slab stage: what stands on a slab, how it falls, what lies under it, when its ways must be open. */

import { expect, type Page } from 'playwright/test'
import { axeOn } from '../axe'
import { openSample, test } from '../renderer/planner'
import { figure } from './slabPage'

const themes = ['light', 'dark', 'sunlight'] as const

/** Axe on the ledger in each theme; ends in the theme it began with. */
async function expectAccessible(page: Page, what: string): Promise<void> {
  for (const [i, theme] of themes.entries()) {
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
    const { violations } = await axeOn(page, theme).include('[aria-label=Ledger]').analyze()
    expect(violations.map(v => `${what}, ${theme}: ${v.id} ${v.nodes[0]?.html}`)).toEqual([])
    await page.getByRole('button', { name: `${theme[0]!.toUpperCase()}${theme.slice(1)} theme` }).click()
    await expect(page.locator('html')).toHaveAttribute('data-theme', themes[(i + 1) % themes.length]!)
  }
}

test('slope, base by string line, steps, hours of a way and the site’s own forms, in every theme', async ({
  page,
  planner,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openSample(page, planner)
  const chosen = page.getByRole('region', { name: 'What is chosen' })
  const undo = (step: string) => expect(page.getByRole('button', { name: `Undo ${step}`, exact: true })).toBeEnabled()
  const set = async (label: string, text: string) => {
    await chosen.getByLabel(label).fill(text)
    await chosen.getByLabel(label).press('Enter')
  }
  const site = page.getByRole('region', { name: 'The site' })
  for (const each of await site.locator('summary').all()) await each.click()
  await expectAccessible(page, 'the site')

  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  const outline = page.getByRole('listbox', { name: 'Outline of the plan' })
  const pick = (name: RegExp) => outline.getByRole('option', { name }).first().click()
  await pick(/^Patio, outline/)

  // What was typed for one thing, and refused, does not stand in the box of the next.
  const goTo = (label: string) => chosen.getByLabel('Go to').selectOption({ label })
  await goTo('edge A to B')
  await set('Length', 'two yards')
  await expect(chosen.getByLabel('Length')).toHaveValue('two yards')
  await goTo('edge B to C')
  await expect(chosen.getByLabel('Length')).toHaveValue(/′/)
  await expect(chosen.getByLabel('Length')).not.toHaveAttribute('aria-invalid')
  await pick(/^Patio, outline/)
  await chosen.getByText('Slope, 2 %').click()
  await set('Fall', '1.5')
  await undo('slope')
  await expect(chosen.getByText('Slope, 1.5 %')).toBeVisible()
  await set('Fall', '40')
  await expect(chosen.getByRole('alert')).toContainText('30')
  await expect(chosen.getByText('Slope, 1.5 %')).toBeVisible()

  await chosen.getByText('Base by string line').click()
  // 1,588.2 ft² over 5 in, then over the mean of 5 in and 3 in: 1588.2 × 5 / 12 / 27 and 1588.2 × 4 / 12 / 27 yd³.
  for (const [i, [depth, yd3]] of (
    [
      [`5"`, '24.5'],
      [`3"`, '19.6'],
    ] as const
  ).entries()) {
    await chosen.getByRole('button', { name: 'Point out a reading' }).click()
    const boxes = page.locator('.entry input')
    await boxes.nth(0).fill(`${4 + 8 * i}ft`)
    await boxes.nth(1).fill('4ft')
    await boxes.nth(1).press('Enter')
    await set(`Reading ${i + 1}, depth`, depth)
    await expect(figure(page, 'Base volume, compacted')).toContainText(yd3)
  }
  await expect(chosen.getByText('Base by string line, 2 readings')).toBeVisible()
  await chosen.getByRole('button', { name: 'Remove reading 2' }).click()
  await undo('base readings')
  await expectAccessible(page, 'a slab')

  await chosen.getByLabel('Go to').selectOption({ label: 'edge B to C' })
  await chosen.getByRole('button', { name: 'Steps down from this edge' }).click()
  await pick(/^Steps/)
  await set('Risers', '3')
  await undo('steps')
  await expect(outline.getByRole('option', { name: /^Steps/ })).toContainText('3 risers')

  await pick(/^Back door/)
  await expect(chosen.getByRole('heading', { name: 'Way in and out' })).toBeVisible()
  await chosen.getByLabel('Until').first().fill('18:00')
  await chosen.getByRole('button', { name: 'Add hours' }).click()
  await chosen.getByLabel('Days').last().selectOption('Saturday')
  await undo('hours of the way')
  await expect(chosen.getByRole('group', { name: 'Hours 2' })).toBeVisible()
  await expectAccessible(page, 'a way')
})
