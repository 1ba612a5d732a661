import { expect, type Page } from 'playwright/test'
import { openSample, stageButton, test } from '../renderer/planner'

async function newSite(page: Page, address: string): Promise<void> {
  await page.goto(address)
  await page.getByRole('button', { name: 'New site', exact: true }).click()
  await expect(page.getByText('Type a length or click the first corner.')).toBeVisible()
}

/** What the ledger says beside a name. */
const figure = (page: Page, name: string) =>
  page.locator('.row', { has: page.getByRole('button', { name: `How ${name} is computed` }) }).locator('.v')

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

test('by pointer: corners clicked, the border on edges clicked, undone to empty and done again', async ({
  page,
  planner,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 })
  await newSite(page, planner.address)
  const plan = page.getByRole('application')
  const box = (await plan.boundingBox())!
  // The drawing actions stand over the left 82 px.
  const [cx, cy] = [box.x + (box.width + 82) / 2, box.y + box.height / 2]
  // Where the empty sheet stands: 20 m about the origin in the middle of the window.
  const zoom = await page.evaluate(() => {
    const { clientWidth: width, clientHeight: height } = document.querySelector('.sheet')!
    const margin = Math.min(110, height * 0.16)
    return Math.min(width - 82 - 2 * margin, height - 2 * margin) / 20
  })
  const click = async (xFt: number, yFt: number) => {
    await page.mouse.move(cx + xFt * 0.3048 * zoom, cy - yFt * 0.3048 * zoom, { steps: 3 })
    await page.mouse.down()
    await page.mouse.up()
  }
  await click(-12, -7)
  await click(12, -7)
  await click(12, 7)
  await click(-12, 7)
  await click(-12, -7)
  await expect(stageButton(page, 'Slab')).toContainText('336 ft²')
  await page.getByRole('button', { name: 'Border', exact: true }).click()
  await click(0, -7)
  await expect(page.getByText('1 edge chosen. Enter sets the border.')).toBeVisible()
  await page.getByRole('button', { name: 'Set the border' }).click()
  await expect(figure(page, 'Field')).toContainText('312')
  for (let i = 0; i < 2; i++) await page.keyboard.press('Control+z')
  await expect(stageButton(page, 'Slab')).toContainText('nothing drawn')
  for (let i = 0; i < 2; i++) await page.keyboard.press('Control+Shift+z')
  await expect(figure(page, 'Field')).toContainText('312')
})

test('by the keys alone: the arrows carry the point, Enter sets it', async ({ page, planner }) => {
  await newSite(page, planner.address)
  await page.getByRole('application').focus()
  const carry = async (key: string, times: number) => {
    for (let i = 0; i < times; i++) await page.keyboard.press(key)
    await page.keyboard.press('Enter')
  }
  await carry('ArrowRight', 1)
  await carry('ArrowRight', 8)
  await carry('ArrowUp', 6)
  await carry('ArrowLeft', 8)
  await page.keyboard.press('Enter')
  await expect(stageButton(page, 'Slab')).toContainText('48 ft²')
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
  await page.getByLabel('Length C to D along the arc').fill(`22'`)
  await page.getByLabel('C moves, D stays').check()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /^22 ft along, arc C to D of/ })).toBeAttached()
})
