import { expect } from 'playwright/test'
import { siteText } from '../../fault/hostFolders'
import { changeUnits, chooseFileAct, expectAccessible, openFromFolder, test, watchPolicy } from '../files/deskTest'

test.describe.configure({ timeout: 180_000 })

test('the theme chosen on the start page is there at the next start', async ({ page, desk }) => {
  await page.goto(await desk.startHost())
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light')
  await page.getByRole('radio', { name: 'sunlight', exact: true }).check()
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sunlight')
  await expect(async () => {
    await page.goto('about:blank')
    await page.goto(await desk.startHost())
    await expect(page.getByRole('radio', { name: 'sunlight', exact: true })).toBeChecked({ timeout: 1_000 })
  }).toPass({ timeout: 15_000 })
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sunlight')
})

test('samples are named at once and read only when they come into view', async ({ page, desk }) => {
  const read: string[] = []
  page.on('request', request => {
    if (request.url().endsWith('/api/sampleText')) read.push(String(request.postDataJSON().sampleId))
  })
  await page.setViewportSize({ width: 1024, height: 700 })
  await page.goto(await desk.startHost())
  const cards = page.getByRole('region', { name: 'Sample sites' }).getByRole('listitem')
  await expect(page.locator('canvas.site-picture').first()).toBeVisible()
  const all = (await cards.count()) - 1
  expect(read.length).toBeLessThan(all)
  await cards.last().scrollIntoViewIfNeeded()
  await expect(cards.nth(all - 1).locator('canvas')).toBeVisible()
})

test('every dialog and menu passes the accessibility check in every theme, and the policy', async ({ page, desk }) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  const violations = await watchPolicy(page)
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const address = await desk.startHost()
  await page.goto(address)
  await page.getByRole('radio', { name: 'sunlight', exact: true }).check()
  await expectAccessible(page, 'start')
  await page.getByRole('button', { name: 'Open a file' }).click()
  await expectAccessible(page, 'open')
  await page.keyboard.press('Escape')
  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)

  await page.getByTitle('Back to the start page').click()
  await expect(page.getByRole('dialog', { name: /^Keep the changes/ })).toBeVisible()
  await expectAccessible(page, 'closing')
  await page.keyboard.press('Escape')

  await page.getByRole('button', { name: 'File', exact: true }).click()
  await expect(page.getByRole('menu', { name: 'File' })).toBeVisible()
  await expectAccessible(page, 'menu')
  await page.keyboard.press('Escape')

  await chooseFileAct(page, 'Save as')
  await expect(page.getByRole('dialog', { name: 'Save as' })).toBeVisible()
  await expectAccessible(page, 'save as')
  desk.disk.put('Mill gate.slabwright.json', siteText('Mill gate'))
  await page.getByRole('dialog').getByLabel('Name').fill('Mill gate')
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
  await expect(page.getByRole('dialog', { name: 'A file of that name is there already' })).toBeVisible()
  await expectAccessible(page, 'name taken')
  expect(await violations()).toEqual([])
})

test('what is said of a file another program, drive or window has passes the same checks', async ({
  page,
  context,
  desk,
}) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  const violations = await watchPolicy(page)
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const address = await desk.startHost()
  await page.goto(address)
  await page.getByRole('radio', { name: 'sunlight', exact: true }).check()
  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)

  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard changed'))
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('dialog', { name: /changed by another program/ })).toBeVisible()
  await expectAccessible(page, 'changed outside')
  await page.getByRole('button', { name: 'Save over it' }).click()
  await expect(page.getByText(/^Kept .* in Mill yard/)).toBeVisible()

  await chooseFileAct(page, 'Kept versions')
  await expect(
    page
      .getByRole('dialog', { name: 'Kept versions' })
      .getByText(/^147.5 m²/)
      .first(),
  ).toBeVisible()
  await expectAccessible(page, 'versions')
  await page.keyboard.press('Escape')

  desk.files.fail('create', 'ENOSPC', 'documents')
  await changeUnits(page)
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('alert')).toBeVisible()
  await expectAccessible(page, 'not saved')
  desk.files.fail('create', null)

  const second = await context.newPage()
  const secondViolations = await watchPolicy(second)
  await second.goto(address)
  await openFromFolder(second, 'Mill yard')
  await expect(second.getByRole('dialog', { name: /is open in another window$/ })).toBeVisible()
  await expect(second.locator('html')).toHaveAttribute('data-theme', 'sunlight')
  await expectAccessible(second, 'open elsewhere')
  await second.keyboard.press('Escape')
  await changeUnits(second)
  await second.getByTitle('Back to the start page').click()
  await second.getByRole('dialog').getByRole('button', { name: 'Set aside' }).click()
  await second.getByRole('button', { name: /^Throw away/ }).click()
  await expect(second.getByRole('dialog', { name: /^Throw away the unsaved work/ })).toBeVisible()
  await expectAccessible(second, 'throw away')

  expect(await violations()).toEqual([])
  expect(await secondViolations()).toEqual([])
})
