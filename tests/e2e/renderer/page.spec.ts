import { expect, type Page } from 'playwright/test'
import { axeOn, faultsInEveryTheme } from '../axe'
import { openSample, stageButton, test } from './planner'

interface Watched {
  readonly faults: string[]
  violations(): Promise<string[]>
}

/** Collects what the console calls an error, and every violation of the policy, from the first moment on. */
async function watch(page: Page): Promise<Watched> {
  const faults: string[] = []
  page.on('console', message => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
  })
  page.on('pageerror', error => faults.push(error.message))
  await page.addInitScript(() => {
    const seen: string[] = []
    Object.assign(window, { seenViolations: seen })
    document.addEventListener('securitypolicyviolation', event => {
      seen.push(`${event.violatedDirective} ${event.blockedURI}`)
    })
  })
  return {
    faults,
    violations: () => page.evaluate(() => (window as unknown as { seenViolations: string[] }).seenViolations),
  }
}

test('start page and every stage pass the accessibility check in every theme', async ({ page, planner }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.goto(planner.address)
  const faults = await faultsInEveryTheme(page, 'start')
  await openSample(page, planner)
  for (const stage of ['Slab', 'Sun', 'Pours', 'Numbers', 'Sheets', 'Log']) {
    await stageButton(page, stage).click()
    await expect(page.getByText('working')).toHaveCount(0)
    faults.push(...(await faultsInEveryTheme(page, stage)))
  }
  await stageButton(page, 'Slab').click()
  await page.getByRole('button', { name: 'How Slab is computed' }).click()
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  faults.push(...(await faultsInEveryTheme(page, 'opened')))
  expect(faults).toEqual([])
})

test('nothing on any stage breaks the policy or writes an error', async ({ page, planner }) => {
  const seen = await watch(page)
  await openSample(page, planner)
  for (const stage of ['Sun', 'Pours', 'Numbers', 'Sheets', 'Log', 'Slab']) await stageButton(page, stage).click()
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  await page.getByRole('button', { name: 'Client view' }).click()
  await expect(page.getByText('working')).toHaveCount(0)
  expect(await seen.violations()).toEqual([])
  expect(seen.faults).toEqual([])
})

test('the ledger shows the exact areas and opens each to its formula with numbers', async ({ page, planner }) => {
  await openSample(page, planner)
  const ledger = page.getByRole('complementary', { name: 'Ledger' })
  // 28 × 42 + 22 × 20 ft less two corners of 6 ft radius, (2 − π/2) × 36, less a planter of 2 ft radius, 4π.
  const netFt2 = 28 * 42 + 22 * 20 - (2 - Math.PI / 2) * 36 - 4 * Math.PI
  await expect(ledger.getByText(Math.round(netFt2).toLocaleString('en-US'), { exact: false }).first()).toBeVisible()
  await page.getByRole('button', { name: 'How Slab is computed' }).click()
  await expect(ledger.getByText('slab = gross area − opening area')).toBeVisible()
  await expect(ledger.getByText('1,601 ft² − 12.6 ft²')).toBeVisible()
  await expect(ledger.getByText(/straight edges by coordinates/)).toBeVisible()
})

test('the worker brings pours, concrete and shade, and each stage tells its figure', async ({ page, planner }) => {
  await openSample(page, planner)
  await expect(stageButton(page, 'Slab')).toContainText('1,588 ft²')
  await expect(stageButton(page, 'Pours')).toContainText(/\d pours?/)
  await expect(stageButton(page, 'Numbers')).toContainText('yd³')
  await stageButton(page, 'Pours').click()
  await expect(page.getByRole('list', { name: 'The day of each pour' }).getByRole('listitem')).not.toHaveCount(0)
})

test('the hour moves by keys, by typing and by dragging', async ({ page, planner }) => {
  await openSample(page, planner)
  const hour = page.getByRole('slider', { name: 'Hour shown' })
  await hour.focus()
  await expect(hour).toHaveAttribute('aria-valuetext', /^10:00 am/)
  await page.keyboard.press('ArrowRight')
  await expect(hour).toHaveAttribute('aria-valuetext', /^10:05 am/)
  await page.keyboard.press('PageDown')
  await expect(hour).toHaveAttribute('aria-valuetext', /^9:05 am/)
  await page.getByRole('textbox', { name: 'Hour' }).fill('2:30')
  await page.keyboard.press('Enter')
  await expect(hour).toHaveAttribute('aria-valuetext', /^2:30 pm/)
  const box = (await hour.boundingBox())!
  await page.mouse.move(box.x + box.width / 2, box.y + 20)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 3, box.y + 20, { steps: 5 })
  await page.mouse.up()
  await expect(hour).not.toHaveAttribute('aria-valuetext', /^2:30 pm/)
})

test('selection on the canvas and in the outline is one', async ({ page, planner }) => {
  await openSample(page, planner)
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  const outline = page.getByRole('listbox', { name: 'Outline of the plan' })
  await outline.getByRole('option', { name: 'Maple' }).click()
  await expect(outline.getByRole('option', { name: 'Maple' })).toHaveAttribute('aria-selected', 'true')
  const plan = page.getByRole('application')
  const box = (await plan.boundingBox())!
  await plan.click({ position: { x: box.width * 0.5, y: box.height * 0.72 } })
  await expect(outline.getByRole('option', { name: /Patio, outline/ })).toHaveAttribute('aria-selected', 'true')
  await expect(outline.getByRole('option', { name: 'Maple' })).toHaveAttribute('aria-selected', 'false')
})

test('an edit is one named step; undo and redo by the platform keys; Esc takes nothing', async ({ page, planner }) => {
  await openSample(page, planner)
  await page.getByRole('button', { name: 'feet and inches' }).click()
  await expect(stageButton(page, 'Slab')).toContainText('147.5 m²')
  await expect(page.getByRole('button', { name: 'Undo units' })).toBeVisible()
  await page.keyboard.press('Control+z')
  await expect(stageButton(page, 'Slab')).toContainText('1,588 ft²')
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+Shift+z')
  await expect(stageButton(page, 'Slab')).toContainText('147.5 m²')
})

test('digits change the stage only while the stage bar has the focus', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Slab').focus()
  await page.keyboard.press('3')
  await expect(stageButton(page, 'Pours')).toHaveAttribute('aria-current', 'step')
  await page.keyboard.press('ArrowLeft')
  await expect(stageButton(page, 'Sun')).toHaveAttribute('aria-current', 'step')
  await page.getByRole('application').focus()
  await page.keyboard.press('1')
  await expect(stageButton(page, 'Sun')).toHaveAttribute('aria-current', 'step')
})

test('a worker that dies is started again from the whole document', async ({ page, planner }) => {
  await page.addInitScript(() => {
    const Real = Worker
    let made = 0
    Object.assign(window, {
      Worker: class extends Real {
        constructor(...from: ConstructorParameters<typeof Worker>) {
          super(...from)
          made += 1
          document.documentElement.dataset.workers = String(made)
          if (made === 1) setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'killed' })), 0)
        }
      },
    })
  })
  await openSample(page, planner)
  await expect(stageButton(page, 'Pours')).toContainText(/\d pours?/)
  await expect(page.locator('html')).toHaveAttribute('data-workers', '2')
})

test('a new site starts with an empty sheet', async ({ page, planner }) => {
  await page.goto(planner.address)
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await expect(page.getByText('Type a length or click the first corner.')).toBeVisible()
  await expect(stageButton(page, 'Slab')).toContainText('nothing drawn')
})

for (const [width, height] of [
  [1440, 900],
  [1024, 700],
] as const) {
  test(`at ${width} × ${height} nothing runs over the window and targets are large enough`, async ({
    page,
    planner,
  }) => {
    await page.setViewportSize({ width, height })
    await openSample(page, planner)
    for (const stage of ['Slab', 'Sun', 'Pours', 'Numbers']) {
      await stageButton(page, stage).click()
      const overflow = await page.evaluate(() => ({
        x: document.documentElement.scrollWidth - innerWidth,
        y: document.documentElement.scrollHeight - innerHeight,
      }))
      expect(overflow).toEqual({ x: 0, y: 0 })
      const small = await page.$$eval('button, [role=slider], input', nodes =>
        nodes
          .map(node => ({ name: node.outerHTML.slice(0, 80), box: node.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 1 && (box.width < 24 || box.height < 24))
          .map(({ name }) => name),
      )
      expect(small).toEqual([])
    }
  })
}

test('a new site is named, kept in a file, and opened again from the list of the folder', async ({ page, planner }) => {
  await page.goto(planner.address)
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await page.keyboard.press('Control+s')
  const dialog = page.getByRole('dialog', { name: 'Save as' })
  await dialog.getByLabel('Name').fill('Quarry Lane drive')
  expect((await axeOn(page).include('[role=dialog]').analyze()).violations).toEqual([])
  await dialog.getByRole('button', { name: 'Save' }).click()
  await expect(page.getByText(/^Kept \d/)).toBeVisible()
  await page.getByTitle('Back to the start page').click()
  await expect(page.getByRole('list').getByRole('button', { name: /^Quarry Lane drive/ })).toBeVisible()
  await page.getByRole('button', { name: 'Open a file' }).click()
  await page
    .getByRole('dialog', { name: 'Open a file' })
    .getByRole('button', { name: /Quarry Lane drive/ })
    .click()
  await expect(stageButton(page, 'Slab')).toContainText('nothing drawn')
})
