import { expect } from 'playwright/test'
import { openSample, stageButton, test } from '../renderer/planner'

test('weather comes in by hand, by table and from the forecast; a proposed pour is dragged along the hours', async ({
  page,
  planner,
}) => {
  await openSample(page, planner, /^Alder Court patio(?!,)/)
  await stageButton(page, 'Pours').click()
  const forms = page.getByRole('region', { name: 'Crew, mix and weather' })
  const fold = (name: string) => forms.locator('summary').filter({ hasText: name })
  await expect(fold('Weather')).toHaveText('Weather: not entered')
  await fold('Weather').click()
  const use = forms.getByRole('button', { name: 'Use this weather' })
  const fault = forms.getByRole('alert')
  for (const [label, typed] of [
    ['High, °F', '50'],
    ['Low, °F', '61'],
    ['Dew point, °F', '48'],
    ['Wind, as forecast, mph', '7'],
  ] as const)
    await forms.getByLabel(label).fill(typed)
  await use.click()
  await expect(fault).toContainText('The high of 50 °F is under the low of 61 °F')
  await forms.getByLabel('Chance of rain, %').fill('140')
  await use.click()
  await expect(fault).toHaveText('Chance of rain: “140” is not taken, a number from 0 to 100 %.')
  await forms.getByLabel('Chance of rain, %').fill('20 %')
  await forms.getByLabel('High, °F').fill('92')
  await use.click()
  await expect(fold('Weather')).toHaveText('Weather: Tue Jul 21, 61 °F to 92 °F')

  await forms.getByLabel('From', { exact: true }).selectOption('An hourly table or file')
  const table = forms.getByRole('textbox', { name: /^Paste it here/ })
  const read = forms.getByRole('button', { name: 'Read the table' })
  const rows = (noon: string) =>
    `time,temp,dew point\n${Array.from({ length: 24 }, (_, i) => `${i}:00,${i === 12 ? noon : 60 + i},48`).join('\n')}`
  await table.fill(rows('warm'))
  await read.click()
  await expect(fault).toContainText('Line 14 of the weather table cannot be read: “12:00,warm,48”')
  await table.fill(rows('75'))
  await read.click()
  await expect(fold('Weather')).toHaveText('Weather: hourly from Tue Jul 21, 60 °F to 83 °F')

  await forms.getByLabel('From', { exact: true }).selectOption('The public forecast, US')
  await forms.getByRole('button', { name: 'Ask for this place' }).click()
  await expect(forms.getByRole('status')).toHaveText('Taken: an answer kept from 40 min ago.')
  await fold('Crew').click()
  await forms.getByLabel('Hands of a crew').fill('6')
  await forms.getByLabel('Hands of a crew').press('Enter')
  await expect(fold('Crew')).toHaveText('Crew: 6 hands, steady')

  // By hand: the pours are chosen as it is let go, in one step with the start; by keys the row keeps the focus.
  const row = page.getByRole('listitem', { name: /^Pour 2,/ })
  const start = page.getByRole('slider', { name: 'First truck of pour 2' })
  await expect(row).toHaveAccessibleName(/min (slack|too late) in \w/, { timeout: 60_000 })
  await expect(start).toHaveAttribute('aria-valuetext', '7:00 am', { timeout: 60_000 })
  const box = (await start.boundingBox())!
  await page.mouse.move(box.x + 12, box.y + 12)
  await page.mouse.down()
  await page.mouse.move(box.x + 72, box.y + 12, { steps: 4 })
  await expect(start).not.toHaveAttribute('aria-valuetext', '7:00 am')
  await expect(page.getByRole('button', { name: /^Undo/ })).toHaveText('Undo crew')
  await page.mouse.up()
  const undo = page.getByRole('button', { name: 'Undo split into 2, start of pour 2' })
  await expect(undo).toBeVisible()
  await undo.click()
  await expect(start).toHaveAttribute('aria-valuetext', '7:00 am', { timeout: 60_000 })
  await start.press('ArrowRight')
  await start.press('ArrowRight')
  await expect(start).toHaveAttribute('aria-valuetext', '7:30 am')
  await expect(start).toBeFocused()
  await expect(row).toHaveAccessibleName(/min (slack|too late) in \w/, { timeout: 60_000 })
})
