import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'playwright/test'
import { siteText } from '../../fault/hostFolders'
import { changeUnits, chooseFileAct, openFromFolder, test } from './deskTest'

test.describe.configure({ timeout: 120_000 })

const fileOf = (folder: string, name: string) =>
  JSON.parse(readFileSync(join(folder, `${name}.slabwright.json`), 'utf8')) as { units: string; name: string }

test('a kept version is looked at without a change, and taken back as one step of undo', async ({ page, desk }) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  await page.goto(await desk.startHost())
  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)
  await page.keyboard.press('Control+s')
  await expect(page.getByText(/^Kept .* in Mill yard/)).toBeVisible()
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('metric')

  await chooseFileAct(page, 'Kept versions')
  const dialog = page.getByRole('dialog', { name: 'Kept versions' })
  const rows = dialog.getByRole('navigation', { name: 'Versions' }).getByRole('button')
  await expect(rows).toHaveCount(2)
  await expect(dialog.getByText(/^147.5 m²/).first()).toBeVisible()
  await rows.nth(1).click()
  await expect(dialog.getByText(/^1,588 ft²/)).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByText(/^Kept .* in Mill yard/)).toBeVisible()

  await chooseFileAct(page, 'Kept versions')
  await rows.nth(1).click()
  await dialog.getByRole('button', { name: 'Take it back' }).click()
  const undo = page.getByRole('button', { name: /^Undo version of/ })
  await expect(undo).toBeVisible()
  await expect(page.getByText('1,588 ft²').first()).toBeVisible()
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('metric')
  await undo.click()
  await expect(page.getByText('147.5 m²').first()).toBeVisible()
  await expect(page.getByText(/^Kept .* in Mill yard/)).toBeVisible()
})

test('a save says what is true of the file: full drive, unconfirmed folder, drive that stopped answering', async ({
  page,
  desk,
}) => {
  const path = desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  await page.goto(await desk.startHost())
  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)

  desk.files.fail('create', 'ENOSPC', 'documents')
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('alert')).toContainText(
    'Not saved; the old file is whole. The drive is full. Make room and save again.',
  )
  expect(readFileSync(path, 'utf8')).toBe(siteText('Mill yard'))

  desk.files.fail('create', null)
  desk.files.fail('syncFolder', 'EIO', 'documents')
  await page.getByRole('button', { name: 'Save again' }).click()
  await expect(page.getByText(/^Saved, but the drive did not confirm it\./)).toBeVisible()
  await expect(page.getByRole('alert')).toHaveCount(0)
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('metric')
  await page.getByRole('button', { name: 'Hide this' }).click()
  await expect(page.getByText(/^Saved, but/)).toHaveCount(0)

  desk.files.fail('syncFolder', null)
  await page.getByRole('button', { name: /^Undo/ }).click()
  desk.files.fail('rename', 'EIO', 'Mill yard')
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('alert')).toContainText(/^Not sure it is saved\. .* all as before or all new\./)

  desk.files.fail('rename', null)
  desk.files.goDeaf(false)
  await page.getByRole('button', { name: 'Save again' }).click()
  await expect(page.getByText(/^Kept .* in Mill yard/)).toBeVisible()
  await expect(page.getByRole('alert')).toHaveCount(0)
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('ftin')
})

test('the second window on a file is told, may look, and works on a copy', async ({ page, context, desk }) => {
  const path = desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  const address = await desk.startHost()
  await page.goto(address)
  await openFromFolder(page, 'Mill yard')
  const second = await context.newPage()
  await second.goto(address)
  await openFromFolder(second, 'Mill yard')
  const dialog = second.getByRole('dialog', { name: /is open in another window$/ })
  await dialog.getByRole('button', { name: 'Look at it' }).click()
  await expect(second.getByRole('status').filter({ hasText: 'open in another window' })).toBeVisible()
  await changeUnits(second)
  await second.keyboard.press('Control+s')
  const name = second.getByRole('dialog', { name: 'Save as' })
  await expect(name.getByLabel('Name')).toHaveValue('Mill yard copy')
  await name.getByRole('button', { name: 'Save' }).click()
  await expect(second.getByText(/^Kept .* in Mill yard copy/)).toBeVisible()
  expect(readFileSync(path, 'utf8')).toBe(siteText('Mill yard'))
  expect(fileOf(desk.disk.folder, 'Mill yard copy').units).toBe('metric')
})

test('putting a site away with changes no file holds asks first, and each answer does what it says', async ({
  page,
  desk,
}) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  await page.goto(await desk.startHost())
  const back = page.getByTitle('Back to the start page')
  const dialog = page.getByRole('dialog', { name: 'Keep the changes to Mill yard?' })
  const newSite = page.getByRole('button', { name: 'New site' })

  await openFromFolder(page, 'Mill yard')
  await back.click()
  await expect(newSite).toBeVisible()

  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)
  await back.click()
  await expect(dialog).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(dialog).toHaveCount(0)
  await expect(page.getByText('147.5 m²').first()).toBeVisible()

  await back.click()
  await dialog.getByRole('button', { name: 'Set aside' }).click()
  const offered = page.getByRole('region', { name: 'Unsaved work' })
  await expect(offered.getByText('not yet in Mill yard')).toBeVisible()
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('ftin')
  await offered
    .getByRole('button', { name: /^Mill yard|^Alder/ })
    .first()
    .click()
  await expect(page.getByText('147.5 m²').first()).toBeVisible()

  await back.click()
  await dialog.getByRole('button', { name: 'Keep', exact: true }).click()
  await expect(newSite).toBeVisible()
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('metric')
  await expect(offered).toHaveCount(0)

  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)
  await back.click()
  await dialog.getByRole('button', { name: 'Throw away' }).click()
  await expect(newSite).toBeVisible()
  await expect(offered).toHaveCount(0)
  expect(fileOf(desk.disk.folder, 'Mill yard').units).toBe('metric')
})

test('a site that could not be kept on closing stays open and says why', async ({ page, desk }) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  await page.goto(await desk.startHost())
  await openFromFolder(page, 'Mill yard')
  // Before the change: an autosave that got through would have something to set aside.
  desk.files.fail('create', 'ENOSPC')
  await changeUnits(page)
  await page.getByTitle('Back to the start page').click()
  const dialog = page.getByRole('dialog', { name: 'Keep the changes to Mill yard?' })
  await dialog.getByRole('button', { name: 'Keep', exact: true }).click()
  await expect(page.getByRole('alert')).toContainText('Not saved; the old file is whole.')
  await page.getByTitle('Back to the start page').click()
  await dialog.getByRole('button', { name: 'Set aside' }).click()
  await expect(page.getByRole('alert')).toContainText('Your last changes are not kept yet.')
  await expect(page.getByText('147.5 m²').first()).toBeVisible()
})

test('an untitled site is named before it is put away', async ({ page, desk }) => {
  await page.goto(await desk.startHost())
  await page.getByRole('button', { name: /^Alder Court patio(?!,)/ }).click()
  await changeUnits(page)
  await page.getByTitle('Back to the start page').click()
  await page.getByRole('dialog').getByRole('button', { name: 'Keep', exact: true }).click()
  const name = page.getByRole('dialog', { name: 'Save as' })
  await name.getByLabel('Name').fill('Quarry Lane')
  await name.getByRole('button', { name: 'Save' }).click()
  await expect(page.getByRole('list').getByRole('button', { name: /^Quarry Lane/ })).toBeVisible()
  expect(readdirSync(desk.disk.folder)).toEqual(['Quarry Lane.slabwright.json'])
})

test('work left by a program that ended is offered, and thrown away only after a question', async ({
  page,
  context,
  desk,
}) => {
  desk.disk.put('Mill yard.slabwright.json', siteText('Mill yard'))
  await page.goto(await desk.startHost({ crashed: true }))
  await openFromFolder(page, 'Mill yard')
  await changeUnits(page)
  await expect(page.getByText(/^Kept .*, not in the file yet/)).toBeVisible()

  const next = await context.newPage()
  await next.goto(await desk.startHost())
  const offered = next.getByRole('region', { name: 'Unsaved work' })
  const away = offered.getByRole('button', { name: /^Throw away/ })
  await away.click()
  const ask = next.getByRole('dialog', { name: /^Throw away the unsaved work/ })
  await ask.getByRole('button', { name: 'Leave it' }).click()
  await expect(away).toBeVisible()
  await offered.getByRole('button').first().click()
  await expect(next.getByText('147.5 m²').first()).toBeVisible()
})

test('a file of a newer version is told apart and left alone', async ({ page, desk }) => {
  const text = siteText('Mill yard').replace(/"version": 1\b/, '"version": 99')
  expect(text).toContain('"version": 99')
  const path = desk.disk.put('Mill yard.slabwright.json', text)
  await page.goto(await desk.startHost())
  await openFromFolder(page, 'Mill yard')
  await expect(page.getByText(/The file has version 99; this program reads up to version 1\./)).toBeVisible()
  await expect(page.getByText(/Open it with a newer release\. Nothing in it was changed\./)).toBeVisible()
  expect(readFileSync(path, 'utf8')).toBe(text)
})
