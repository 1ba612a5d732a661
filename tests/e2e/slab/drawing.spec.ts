import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, type Locator, type Page } from 'playwright/test'
import { openSample, stageButton, test } from '../renderer/planner'
import { figure, newSite, sheetPoints } from './slabPage'

/** 24 × 14 ft with one corner of 6 ft radius: 336 − (1 − π/4)·36 ft². The border takes 12 in off all around: the rest
 * is 22 × 12 ft with a corner of 5 ft, 264 − (1 − π/4)·25. Sector and rectangle of elementary geometry. */
const areaFt2 = 336 - (1 - Math.PI / 4) * 36
const fieldFt2 = 264 - (1 - Math.PI / 4) * 25

async function expectPatio(page: Page): Promise<void> {
  await expect(figure(page, 'Slab')).toContainText(areaFt2.toFixed(1))
  await expect(figure(page, 'Field')).toContainText(fieldFt2.toFixed(1))
}

async function saveAndReopen(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+s')
  const dialog = page.getByRole('dialog', { name: 'Save as' })
  await dialog.getByLabel('Name').fill(name)
  await dialog.getByRole('button', { name: 'Save' }).click()
  await expect(page.getByText(/^Kept \d/)).toBeVisible()
  await page.getByTitle('Back to the start page').click()
  await page.getByRole('button', { name: 'Open a file' }).click()
  await page
    .getByRole('dialog', { name: 'Open a file' })
    .getByRole('button', { name: new RegExp(name) })
    .click()
}

test('by typing alone: a patio with a rounded corner, a border and a house, saved and opened again', async ({
  page,
  planner,
}) => {
  await newSite(page, planner.address)
  const type = (text: string) => page.keyboard.type(`${text}\n`)
  await page.keyboard.type('24\n14\n24\n14\n')
  await expect(stageButton(page, 'Slab')).toContainText('336 ft²')
  await page.getByLabel('Corner C, radius').focus()
  await type(`6'`)
  await page.getByRole('button', { name: /Add a border, 12″ all around/ }).press('Enter')
  await expectPatio(page)
  await page.locator('.actions [data-action="border"], .actions [tabindex="0"]').first().focus()
  await page.keyboard.press('Home')
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown')
  await expect(page.getByRole('button', { name: 'Building' })).toHaveAttribute('aria-pressed', 'true')
  await page.getByLabel('Drawn as').selectOption('rectangle')
  await page.getByRole('application').focus()
  for (const [across, up] of [
    ['0', '14'],
    ['24', '20'],
  ] as const) {
    await page.keyboard.type(across)
    await page.keyboard.press('Tab')
    await page.keyboard.type(`${up}\n`)
  }
  await expect(
    page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option', { name: /^House/ }),
  ).toBeAttached()
  await expectPatio(page)
  await saveAndReopen(page, 'Typed patio')
  await expectPatio(page)
  await expect(
    page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option', { name: /^House/ }),
  ).toBeAttached()
})

test('no key is lost, however fast and however early it comes', async ({ page, planner }) => {
  await page.goto(planner.address)
  await expect(page.getByRole('button', { name: 'New site', exact: true })).toBeVisible()
  const wire = await page.context().newCDPSession(page)
  // A slow tablet: the page takes many times longer to draw than the hands to type.
  await wire.send('Emulation.setCPUThrottlingRate', { rate: 6 })
  // In one task, so that nothing can be painted in between: the button, then the first keys.
  await page.evaluate(() => {
    const press = (key: string, rest = {}) => {
      const target = document.activeElement ?? document.body
      target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...rest }))
    }
    const start = [...document.querySelectorAll('button')].find(each => each.textContent === 'New site')!
    start.click()
    start.blur()
    for (const key of ['2', '4', 'Enter', '1', '4', `'`, 'Tab', '9', '0', 'Enter', '2', '4']) press(key)
  })
  await page.getByLabel('Length', { exact: true }).waitFor()
  await page.keyboard.type('\n14\n')
  await wire.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  await expect(page.getByRole('button', { name: /^24 ft, A to B of/ })).toBeAttached()
  await expect(page.getByRole('button', { name: /^14 ft, B to C of/ })).toBeAttached()
  await expect(stageButton(page, 'Slab')).toContainText('336 ft²')
  await page.getByTitle('Back to the start page').click()
  await page.getByRole('button', { name: 'Throw away' }).click()
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('dialog', { name: 'Save as' })).toBeVisible()
})

test('by pointer alone: the patio, its rounded corner, its border, the house; undone to empty and done again', async ({
  page,
  planner,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 })
  await newSite(page, planner.address)
  const { at, zoom } = await sheetPoints(page)
  const click = async (xFt: number, yFt: number) => {
    await page.mouse.move(...at(xFt, yFt), { steps: 3 })
    await page.mouse.down()
    await page.mouse.up()
  }
  // What the mark on the plan says is also said with the boxes.
  const caught = page.getByRole('textbox', { name: 'Length' })
  await click(-12, -7)
  await click(12, -7)
  await page.mouse.move(...at(12, 7), { steps: 3 })
  await expect(caught).toHaveAccessibleDescription(/^Square to what is drawn, 14′ 0″/)
  await click(12, 7)
  await click(-12, 7)
  await page.mouse.move(...at(-12, -7), { steps: 3 })
  await expect(caught).toHaveAccessibleDescription(/^First corner a click closes it/)
  await click(-12, -7)
  await expect(stageButton(page, 'Slab')).toContainText('336 ft²')
  // A click on a corner of what is chosen narrows the choice to it; the ring beside it rounds it: 6 ft at a right angle
  // is 6(√2 − 1) ft along the line that halves it. The ring stands 30 px off.
  await click(12, 7)
  await expect(page.getByRole('spinbutton', { name: 'Corner C, radius' })).toBeVisible()
  const [x, y] = at(12, 7)
  const off = 30 / Math.SQRT2
  const far = (6 * 0.3048 * zoom * (Math.SQRT2 - 1)) / Math.SQRT2
  await page.mouse.move(x - off, y + off)
  await page.mouse.down()
  await page.mouse.move(x - off - far, y + off + far, { steps: 5 })
  await page.mouse.up()
  await expect(page.getByRole('button', { name: 'Undo corner radius' })).toBeVisible()
  await expect(figure(page, 'Slab')).toContainText(areaFt2.toFixed(1))
  await page.getByRole('button', { name: 'Border', exact: true }).click()
  for (const [xFt, yFt] of [
    [0, -7],
    [12, 0],
    [0, 7],
    [-12, 0],
  ] as const)
    await click(xFt, yFt)
  await expect(page.getByText('4 edges chosen. Enter sets the border.')).toBeVisible()
  await page.getByRole('button', { name: 'Set the border' }).click()
  await expectPatio(page)
  await page.getByRole('button', { name: 'Building', exact: true }).click()
  await page.getByLabel('Drawn as').selectOption('rectangle')
  await page.mouse.move(...at(-12, 7), { steps: 3 })
  await page.mouse.down()
  await page.mouse.move(...at(12, 22), { steps: 5 })
  await page.mouse.up()
  const house = page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option', { name: /^House/ })
  await expect(house).toBeAttached()
  const fileMenu = async (entry: string) => {
    await page.getByRole('button', { name: 'File', exact: true }).click()
    await page.getByRole('menuitem', { name: entry, exact: true }).click()
  }
  const kept = () => readFileSync(join(planner.folder, 'New site.slabwright.json'), 'utf8')
  await fileMenu('Save')
  await page.getByRole('dialog', { name: 'Save as' }).getByRole('button', { name: 'Save' }).click()
  await expect(page.getByText(/^Kept .* in New site/)).toBeVisible()
  const drawn = kept()
  for (let i = 0; i < 4; i++) await page.getByRole('button', { name: /^Undo/ }).click()
  await expect(stageButton(page, 'Slab')).toContainText('nothing drawn')
  await fileMenu('Save')
  await expect.poll(() => JSON.parse(kept()).slabs).toEqual([])
  for (let i = 0; i < 4; i++) await page.getByRole('button', { name: /^Redo/ }).click()
  await expectPatio(page)
  await fileMenu('Save')
  await expect.poll(kept).toBe(drawn)
  await page.getByTitle('Back to the start page').click()
  await page.getByRole('button', { name: 'Open a file' }).click()
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^New site/ })
    .click()
  await expectPatio(page)
  await expect(house).toBeAttached()
})

test('by the keys alone: the whole patio, from the start page to the file opened again', async ({ page, planner }) => {
  await page.goto(planner.address)
  const { keyboard } = page
  /** Tab until the focus is there. */
  const reach = async (target: Locator, key = 'Tab') => {
    await expect(target).toBeAttached()
    for (let i = 0; i < 120; i++) {
      if (await target.evaluate(element => element === document.activeElement)) return
      await keyboard.press(key)
    }
    throw new Error(`${key} never reaches ${target}`)
  }
  const plan = page.getByRole('application')
  await reach(page.getByRole('button', { name: 'New site', exact: true }))
  await keyboard.press('Enter')
  await expect(plan).toBeFocused()
  // The arrows carry the point by a foot, Enter sets it.
  const carry = async (key: string, times: number) => {
    for (let i = 0; i < times; i++) await keyboard.press(key)
    await keyboard.press('Enter')
  }
  await carry('ArrowRight', 1)
  await carry('ArrowRight', 24)
  await carry('ArrowUp', 14)
  await carry('ArrowLeft', 24)
  await keyboard.press('Enter')
  await expect(stageButton(page, 'Slab')).toContainText('336 ft²')
  // Enter goes to the form of what is chosen, Esc back to the plan; the list of parts keeps the focus from form to form.
  await keyboard.press('Enter')
  await expect(page.getByRole('region', { name: 'What is chosen' }).getByLabel('Name', { exact: true })).toBeFocused()
  await keyboard.press('Escape')
  await expect(plan).toBeFocused()
  await reach(page.getByLabel('Go to'))
  await keyboard.press('ArrowDown')
  await expect(page.getByRole('heading', { name: 'Edge A to B' })).toBeVisible()
  await expect(page.getByLabel('Go to')).toBeFocused()
  await keyboard.press('ArrowUp')
  await expect(page.getByLabel('Go to')).toBeFocused()
  await reach(page.getByRole('spinbutton', { name: 'Corner C, radius' }), 'Shift+Tab')
  await keyboard.type(`6'\n`)
  await expect(figure(page, 'Slab')).toContainText(areaFt2.toFixed(1))
  await reach(page.getByRole('button', { name: /Add a border, 12″ all around/ }), 'Shift+Tab')
  await keyboard.press('Enter')
  await expectPatio(page)
  const actions = page.getByRole('toolbar', { name: 'Drawing actions' })
  await reach(actions.getByRole('button', { name: 'Select' }), 'Shift+Tab')
  for (let i = 0; i < 4; i++) await keyboard.press('ArrowDown')
  await expect(actions.getByRole('button', { name: 'Building' })).toBeFocused()
  await reach(page.getByLabel('Drawn as'))
  await keyboard.press('ArrowDown')
  await expect(page.getByLabel('Drawn as')).toHaveValue('rectangle')
  await reach(plan, 'Shift+Tab')
  for (const [across, up] of [
    ['0', '14'],
    ['24', '20'],
  ] as const) {
    await keyboard.type(across)
    await keyboard.press('Tab')
    await keyboard.type(`${up}\n`)
  }
  const house = page.getByRole('listbox', { name: 'Outline of the plan' }).getByRole('option', { name: /^House/ })
  await expect(house).toBeAttached()
  await keyboard.press('Control+s')
  await expect(page.getByRole('dialog', { name: 'Save as' }).getByLabel('Name')).toBeFocused()
  await keyboard.press('Control+a')
  await keyboard.type('Patio by keys\n')
  await expect(page.getByText(/^Kept .* in Patio by keys/)).toBeVisible()
  await expect(page.getByRole('status').filter({ hasText: /^Kept in Patio by keys\.$/ })).toBeAttached()
  await reach(page.getByTitle('Back to the start page'), 'Shift+Tab')
  await keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Slabwright' })).toBeFocused()
  await reach(page.getByRole('button', { name: 'Open a file' }))
  await keyboard.press('Enter')
  await reach(page.getByRole('dialog').getByRole('button', { name: /Patio by keys/ }))
  await keyboard.press('Enter')
  await expectPatio(page)
  await expect(house).toBeAttached()
})

test('a dimension on the plan is typed over, and it is said which end moves', async ({ page, planner }) => {
  await openSample(page, planner)
  await page
    .getByRole('button', { name: /^28 ft, . to . of/ })
    .first()
    .click()
  await page.getByLabel(/^Length . to .$/).fill(`30'`)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Undo length' })).toBeVisible()
  await expect(page.getByRole('button', { name: /^30 ft, . to . of/ }).first()).toBeAttached()
  await page
    .getByRole('button', { name: /^radius 6 ft, corner . of/ })
    .first()
    .click()
  await page.getByLabel(/^Radius of corner/).fill(`4'`)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Undo corner radius' })).toBeVisible()
  await expect(page.getByRole('button', { name: /^radius 4 ft, corner . of/ })).toBeAttached()
})

test('by the platform’s keys things are copied within a site, and from one window into another site', async ({
  page,
  planner,
}) => {
  const outlineOf = (of: Page) => of.getByRole('listbox', { name: 'Outline of the plan' })
  const plan = page.getByRole('application')
  await openSample(page, planner)
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  await outlineOf(page)
    .getByRole('option', { name: /^Maple/ })
    .click()
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  await plan.focus()
  await page.keyboard.press('Control+c')
  await page.keyboard.press('Control+v')
  await expect(outlineOf(page).getByRole('option', { name: /^Maple/ })).toHaveCount(2)
  await expect(page.getByRole('button', { name: 'Undo copy' })).toBeVisible()
  // The slab with all that is on it goes to an empty site in a window of its own.
  await page.keyboard.press('Escape')
  const box = (await plan.boundingBox())!
  await plan.click({ position: { x: box.width * 0.5, y: box.height * 0.72 } })
  await expect(
    page.getByRole('region', { name: 'What is chosen' }).getByRole('heading', { name: 'Patio' }),
  ).toBeVisible()
  await page.keyboard.press('Control+c')
  const other = await page.context().newPage()
  await newSite(other, planner.address)
  await other.getByRole('application').focus()
  await other.keyboard.press('Control+v')
  await expect(stageButton(other, 'Slab')).toContainText('1,588 ft²')
  for (const part of [/^Patio/, /planter/, /border/, /^Downspout/])
    await expect(outlineOf(other).getByRole('option', { name: part }).first()).toBeAttached()
  await expect(outlineOf(other).getByRole('option', { name: /^House/ })).toHaveCount(0)
  await other.getByRole('button', { name: 'Undo paste' }).click()
  await expect(stageButton(other, 'Slab')).toContainText('nothing drawn')
  // By buttons: told where the browser keeps its clipboard to itself, the same copy where it does not.
  await other.getByRole('button', { name: 'Paste', exact: true }).click()
  await expect(other.getByText('The browser keeps its clipboard to itself.').first()).toBeVisible()
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await page.bringToFront()
  const chosen = page.getByRole('region', { name: 'What is chosen' })
  await chosen.getByRole('button', { name: 'Copy', exact: true }).click()
  await expect(chosen.getByText('Copied.')).toBeVisible()
  await other.bringToFront()
  await other.getByRole('button', { name: 'Paste', exact: true }).click()
  await expect(stageButton(other, 'Slab')).toContainText('1,588 ft²')
  await other.getByRole('button', { name: 'Undo paste' }).click()
  // A text from elsewhere is refused in words, and nothing is drawn of it.
  await page.bringToFront()
  const name = page.getByRole('region', { name: 'What is chosen' }).getByLabel('Name', { exact: true })
  await name.focus()
  await page.keyboard.press('Control+a')
  await page.keyboard.press('Control+c')
  await other.bringToFront()
  await other.getByRole('application').focus()
  await other.keyboard.press('Control+v')
  await expect(other.getByText(/clipboard|copied/i).first()).toBeVisible()
  await expect(stageButton(other, 'Slab')).toContainText('nothing drawn')
  await other.close()
})

test('tape ties: points from field notes become a slab', async ({ page, planner }) => {
  await newSite(page, planner.address)
  await page.getByRole('button', { name: 'Tape', exact: true }).click()
  await page.getByLabel('First to second point').fill('20')
  await page.getByRole('button', { name: 'Set both points' }).click()
  const [first, second] = [
    page.getByLabel('Distance', { exact: true }).nth(0),
    page.getByLabel('Distance', { exact: true }).nth(1),
  ]
  // 12-16-20 and 15-20-25: right triangles over the 20 ft line.
  await first.fill('25')
  await second.fill('15')
  await page.getByRole('button', { name: 'Set the point' }).click()
  await first.fill('15')
  await second.fill('25')
  await page.getByRole('button', { name: 'Set the point' }).click()
  await page.getByRole('button', { name: 'Slab through the 4 tied points' }).click()
  await expect(stageButton(page, 'Slab')).toContainText('300 ft²')
})

test('an irregular five-sided patio with one arc, from field notes, in less than three minutes of a hand', async ({
  page,
  planner,
}) => {
  await newSite(page, planner.address)
  // A click takes a hand 1.2 s, a key 0.25 s.
  let spentS = 0
  const click = async (name: string) => {
    await page.getByRole('button', { name, exact: true }).click()
    spentS += 1.2
  }
  const write = async (label: string, text: string, nth = 0) => {
    const box = page.getByLabel(label, { exact: true }).nth(nth)
    await box.click()
    await page.keyboard.type(text)
    spentS += 1.2 + 0.25 * text.length
  }
  await click('Tape')
  await write('First to second point', '24\n')
  // From the notes: the tapes to C (30, 10), D (12, 20) and E (−4, 12) from A (0, 0) and B (24, 0), by Pythagoras.
  const ties = [
    [`31' 7 1/2"`, `11' 8"`],
    [`23' 3 7/8"`, `23' 3 7/8"`],
    [`12' 7 3/4"`, `30' 5 1/2"`],
  ] as const
  await page.getByLabel('Distance', { exact: true }).first().waitFor()
  if (!(await page.getByRole('button', { name: 'Set the point' }).isVisible())) await click('Set both points')
  for (const [first, second] of ties) {
    await write('Distance', first)
    await write('Distance', `${second}\n`, 1)
  }
  await click('Slab through the 5 tied points')
  // Shoelace over A to E: 472 ft²; the tapes are read to the eighth of an inch.
  await expect(stageButton(page, 'Slab')).toContainText('472 ft²')
  await page.getByLabel('Go to').selectOption({ label: 'edge C to D' })
  spentS += 2.4
  await write('Rise (0 = straight)', '2\n')
  await expect(page.getByRole('spinbutton', { name: 'Rise (0 = straight)' })).toHaveAttribute('aria-valuetext', '2 ft')
  expect(spentS).toBeLessThanOrEqual(180)

  // The arc stands on the plan with its radius and its length, and is typed over there. Over a chord c of √(18² + 10²)
  // the radius is c²/8s + s/2 (CRC Standard Mathematical Tables, circular segment): 27 ft 6 in for s = 2 ft, less what
  // the tapes were read short.
  expect((18 ** 2 + 10 ** 2) / 16 + 1).toBe(27.5)
  await page.getByRole('button', { name: /^radius 27 ft (5 7\/8|6) in, arc C to D of/ }).click()
  await page.getByLabel('Radius, both ends stay').fill(`20'`)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Undo arc' })).toBeVisible()
  await page.getByRole('button', { name: /^radius 20 ft, arc C to D of/ }).click()
  await page.getByLabel('C to D along the arc').fill(`22'`)
  await page.getByLabel('C moves, D stays').check()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /^22 ft along, arc C to D of/ })).toBeAttached()
})
