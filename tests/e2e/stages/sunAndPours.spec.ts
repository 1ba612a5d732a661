import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import { expect, type Page } from 'playwright/test'
import { pointBounds } from '../../../core/geometry/bounds'
import { derivePlan } from '../../../core/plan/derivePlan'
import { createMemo } from '../../../core/plan/memo'
import { csvTables } from '../../../core/reports/csvTables'
import { geoJson } from '../../../core/reports/geoJson'
import { planSheetData } from '../../../core/reports/planSheetData'
import { type ShownUnits, shownUnits } from '../../../core/reports/printAsPriced'
import { pointShare } from '../../../core/sun/pointSun'
import { resolveCaster } from '../../../core/sun/resolveCaster'
import { shadeLineTimes } from '../../../core/sun/shadeLineTimes'
import { shadowPerMeter, sunPosition } from '../../../core/sun/sunPosition'
import { parseLength } from '../../../core/units/parseLength'
import { printMeasures } from '../../../core/units/printMeasures'
import { printNumber } from '../../../core/units/printNumber'
import { printDate, printHour } from '../../../renderer/app/printDate'
import { toScreen } from '../../../renderer/editor/camera/camera'
import { homeBox } from '../../../renderer/editor/camera/homeBox'
import { homeCamera } from '../../../renderer/editor/camera/homeCamera'
import { furniture } from '../../../renderer/editor/layers/furniture'
import { printFigure } from '../../../renderer/ledger/printFigure'
import { jointName } from '../../../renderer/outline/outlineOf'
import { deriveLive } from '../../../renderer/store/livePlan'
import { buildCli } from '../../../scripts/build.mjs'
import { Site } from '../../../shared/document/site'
import { PlanJson } from '../../../shared/planJson'
import { faultsInEveryTheme } from '../axe'
import { openSample, stageButton, test } from '../renderer/planner'

const site = Site.parse(JSON.parse(readFileSync('samples/l-patio.slabwright.json', 'utf8')))
const date = '2026-07-21'

const planOf = () => {
  const plan = derivePlan(site, { date })
  if (!plan.ok) throw new Error('no plan')
  return plan.value
}

const settled = async (page: Page) => {
  await expect(page.getByText('working', { exact: true })).toHaveCount(0, { timeout: 60_000 })
}

test('the time the shade leaves the slab is found, and it is that of the polygons', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Sun').click()
  await settled(page)
  const { slabs, casters, day } = planOf()
  const { changes } = shadeLineTimes(slabs[0]!.net, slabs[0]!.levelM, casters, site.place, day, site.settings)
  const leaves = changes.find(({ to }) => to === 'sun')!
  const row = page.locator('.row', { hasText: 'Shade leaves the slab' })
  await expect(row).toContainText(printHour(leaves.ms, site.place.zone, site.units, true))
})

test('a click on the slab tells that point’s hours of sun, on the rail too', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Sun').click()
  await settled(page)
  const plan = page.getByRole('application')
  const box = (await plan.boundingBox())!
  await plan.click({ position: { x: box.width * 0.42, y: box.height * 0.6 } })
  await expect(page.getByRole('region', { name: 'Point asked about' })).toContainText('Direct sun')
  await expect(page.getByRole('listitem', { name: /^Sun at the pin: .* to / })).toBeVisible()
})

test('a wrong eave height is put right by a marked shade line', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Sun').click()
  await settled(page)
  const box = (await page.getByRole('application').boundingBox())!
  const live = deriveLive(site, date, createMemo())
  const camera = homeCamera(homeBox(live), live, { size: box, asidePx: 0, corners: furniture(box, 'sun') })
  // The house as it stands is 0.4 m higher than drawn: its shade at 10:00 ends farther out.
  const house = site.casters.find(each => each.kind === 'building')!
  const trueEaveM = house.eaveM + 0.4
  const casters = site.casters.map(each => resolveCaster(each === house ? { ...house, eaveM: trueEaveM } : each).value)
  const ms = Date.parse(`${date}T10:00:00-06:00`)
  const { latDeg, lonDeg, northDeg } = site.place
  const perMeter = shadowPerMeter(sunPosition(ms, latDeg, lonDeg), northDeg)
  const slab = live.slabs[0]!
  const bounds = pointBounds(slab.outline.map(({ from }) => from))
  const x = bounds.minX + 0.3 * (bounds.maxX - bounds.minX)
  const isInSun = (y: number) => pointShare([x, y], slab.levelM, casters, perMeter, date, site.settings) >= 0.5
  let [low, high] = [bounds.minY + 0.1, bounds.maxY - 0.1]
  expect([isInSun(low), isInSun(high)]).toEqual([false, true])
  while (high - low > 1e-3) {
    const middle = (low + high) / 2
    if (isInSun(middle)) high = middle
    else low = middle
  }
  await page.getByRole('button', { name: /^Mark today/ }).click()
  const [px, py] = toScreen(camera, [x, (low + high) / 2])
  await page.getByRole('application').click({ position: { x: px, y: py } })
  await page.getByRole('button', { name: 'What would explain it' }).click()
  const card = page.getByRole('article').filter({ hasText: /eave at/ })
  const told = /eave at (.*) instead/.exec((await card.textContent()) ?? '')?.[1] ?? ''
  const eaveM = parseLength(told.replace(/′/g, "'").replace(/″/g, '"'), site.units)
  if (!eaveM.ok) throw new Error(`no length: ${told}`)
  // A pixel is a few centimeters of slab, and the sun stands 37° high.
  expect(Math.abs(eaveM.value - trueEaveM)).toBeLessThan(1.5 / camera.zoom)
  await card.getByRole('button', { name: 'Use this' }).click()
  await expect(page.getByRole('button', { name: 'Undo height by shade' })).toBeVisible()
})

test('one more pour is looked at, chosen from its card, which says what for and against, and taken back', async ({
  page,
  planner,
}) => {
  await openSample(page, planner)
  await stageButton(page, 'Pours').click()
  const capacity = page.getByRole('region', { name: 'Capacity' })
  await expect(capacity).toContainText('You set 800 ft², and that rules.')
  const card = page.getByRole('article', { name: '3 pours' })
  const fewest = page.getByRole('article', { name: '2 pours' })
  await expect(card.getByRole('listitem').filter({ hasText: 'smaller' })).toBeVisible({ timeout: 60_000 })
  await expect(card.getByRole('listitem').filter({ hasText: '1 more crew-day' })).toBeVisible()
  await expect(fewest.getByText('Recommended')).toBeVisible()
  // The price is that of its table: three days of crew and 48 ft of joint at 4 a foot, and the trucks.
  await card.getByText('Price, worked out').click()
  const row = (name: string) => card.getByRole('row', { name })
  await expect(row('Crew-days')).toContainText(/3.*1,800 a day.*5,400/)
  const worked = await card.locator('table').first().locator('tr td:last-child').allInnerTexts()
  const numbers = worked.map(text => Number(text.replace(/,/g, '')))
  expect(numbers.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(numbers.at(-1))
  await card.getByText('What the search weighed').click()
  await expect(card.getByRole('row', { name: /^Length of joint/ })).toContainText('1 ft per ft')
  await expect(card.getByRole('row', { name: /^Re-entrant|^Pours beyond/ }).first()).toContainText('common practice')
  await card.getByRole('button', { name: 'Choose 3 pours' }).click()
  await expect(card.getByText('Chosen')).toBeVisible({ timeout: 30_000 })
  await expect(stageButton(page, 'Pours')).toContainText('3 pours')
  await page.getByRole('button', { name: 'Undo split into 3 pours' }).click()
  await expect(stageButton(page, 'Pours')).toContainText('2 pours')
})

test('a pour is locked, the outline moves, and the repair is accepted as one step', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Pours').click()
  await page.getByRole('button', { name: 'Choose 2 pours' }).click({ timeout: 60_000 })
  await expect(page.getByText('as chosen')).toBeVisible()
  const pours = page.getByRole('region', { name: 'Pours', exact: true })
  const cards = pours.getByRole('article')
  await cards.nth(1).getByRole('button').first().click()
  await pours.getByRole('button', { name: 'Lock the shape' }).click()
  await expect(cards.nth(1)).toContainText('locked')
  await stageButton(page, 'Slab').click()
  // The upper wing grows by 10 ft: 28 × 10 ft more than the 794 ft² of its pour.
  await page.getByRole('button', { name: /^22 ft, D to E of/ }).click()
  await page.getByLabel('Length D to E').fill(`32'`)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Undo length' })).toBeVisible()
  await stageButton(page, 'Pours').click()
  await expect(cards.nth(1)).toContainText('794 ft²')
  await expect(page.getByText(/^Pour 1 is 1,074 ft², more than the 800 ft²/)).toBeVisible({ timeout: 60_000 })
  const repair = page.getByRole('article', { name: /^Repair of the pours/ })
  await repair.getByRole('button', { name: 'Show the repair' }).click({ timeout: 60_000 })
  await expect(repair).toContainText('Too large: pour 1. The rest is split into 2; pour 2 stays.')
  await repair.getByRole('button', { name: 'Accept the repair' }).click()
  await expect(stageButton(page, 'Pours')).toContainText('3 pours')
  await settled(page)
  await expect(repair).toHaveCount(0)
  await expect(page.getByText(/more than the 800 ft²/)).toHaveCount(0)
  await expect(cards.filter({ hasText: 'locked' })).toContainText('794 ft²')
  await page.getByRole('button', { name: 'Undo repair of the pours' }).click()
  await expect(stageButton(page, 'Pours')).toContainText('2 pours')
  await expect(page.getByRole('button', { name: 'Undo length' })).toBeVisible()
})

test('a long plan tells how far it is, is stopped, and goes on', async ({ page, planner }) => {
  await openSample(page, planner, /^Ferry Landing/)
  await stageButton(page, 'Pours').click()
  await expect(page.getByText(/^Being renewed: /)).toBeVisible()
  await page.getByRole('button', { name: 'Stop', exact: true }).click()
  await expect(page.getByText(/^Stopped\./)).toBeVisible()
  await page.getByRole('button', { name: 'Go on' }).click()
  await expect(page.getByRole('progressbar', { name: 'How far the plan is' })).toBeVisible()
})

test('a joint dragged so far that a pour is over capacity says so', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Pours').click()
  await page.getByRole('button', { name: 'Choose 2 pours' }).click({ timeout: 60_000 })
  await expect(page.getByText('as chosen')).toBeVisible()
  await settled(page)
  const plan = page.getByRole('application')
  const box = (await plan.boundingBox())!
  // Two pours of 794 ft² part about the middle of the slab's height: looked for down one column of the plan.
  const undo = page.getByRole('button', { name: 'Undo joint shifted' })
  for (let y = 0.38; y < 0.7 && !(await undo.isVisible()); y += 0.012) {
    // A press beside the joint has moved the plan.
    await page.getByRole('button', { name: 'Fit' }).click()
    await page.mouse.move(box.x + box.width * 0.42, box.y + box.height * y)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width * 0.42, box.y + box.height * y - 30, { steps: 6 })
    await page.mouse.up()
  }
  await expect(undo).toBeVisible()
  await expect(page.locator('.note.check', { hasText: /Pour \d/ }).first()).toContainText(/800 ft²/)
  await undo.click()
  // By keys: 3 in down and back is where it was; a turn is one step of its own.
  const card = page.getByRole('region', { name: 'Joint', exact: true })
  const areas = async () => /pour \d, (.*) ft², and pour \d, (.*) ft²/.exec((await card.textContent()) ?? '')?.slice(1)
  const before = await areas()
  await expect(card).toBeInViewport({ ratio: 0.9 })
  await plan.focus()
  await page.keyboard.press('ArrowUp')
  await expect(card).not.toContainText(`${before?.[0]} ft², and`)
  await page.keyboard.press('ArrowDown')
  await expect.poll(areas).toEqual(before)
  await page.keyboard.press('Control+ArrowLeft')
  await expect(page.getByRole('button', { name: 'Undo joint turned' })).toBeVisible()
  await card.getByRole('button', { name: 'Put a band on this joint' }).click()
  await expect(page.getByRole('button', { name: 'Undo band on the joint' })).toBeVisible()
})

/** What the command line prints for a sample, by a process of its own. */
async function printedJson(name: string, ...options: readonly string[]): Promise<PlanJson> {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [await buildCli(), 'plan', `samples/${name}.slabwright.json`, '--date', date, '--json', ...options],
    { encoding: 'utf8', maxBuffer: 2 ** 26 },
  )
  expect(stderr).toBe('')
  expect(status).toBe(0)
  return PlanJson.parse(JSON.parse(stdout))
}

test('every figure on the screen is that of the JSON the command line prints', async ({ page, planner }) => {
  const json = await printedJson('l-patio-accepted')
  await openSample(page, planner, /^Alder Court patio, three pours/)
  const ledger = page.getByRole('complementary', { name: 'Ledger' })
  const { units, place } = site
  const print = printMeasures(units)
  const plain = (text: string) => text.replace(/\s+/g, ' ').trim()
  const clock = (iso: string) => printHour(Date.parse(iso), place.zone, units, true)
  const { time } = print
  const wantedOf = (value: number, unit: string, shown: ShownUnits = units) => {
    const { figure, unit: shownUnit } = printFigure(value, unit, shown)
    return shownUnit ? `${figure} ${shownUnit}` : figure
  }
  const endsOne = (texts: readonly string[], wanted: string) => texts.some(text => text.endsWith(wanted))
  const endsEach = (
    texts: readonly string[],
    figures: readonly Pick<PlanJson['quantities'][number], 'value' | 'unit'>[],
  ) => figures.map(({ value, unit }) => wantedOf(value, unit)).filter(wanted => !endsOne(texts, wanted))

  // Slab: areas and lengths of outline, field and borders, no row that the JSON does not hold.
  await stageButton(page, 'Slab').click()
  await settled(page)
  const ofSlab = (await page.getByRole('region', { name: 'Patio', exact: true }).locator('.row').allInnerTexts()).map(
    plain,
  )
  const [slab] = json.slabs
  const m2 = (value: number) => ({ value, unit: 'm²' })
  const m = (value: number) => ({ value, unit: 'm' })
  expect(
    endsEach(ofSlab, [
      ...[slab!.grossAreaM2, slab!.openingAreaM2, slab!.netAreaM2, slab!.fieldAreaM2].map(m2),
      ...[slab!.perimeterM, slab!.openingPerimeterM].map(m),
      ...slab!.borders.flatMap(border => [
        m2(border.areaM2),
        ...[border.outerLengthM, border.innerLengthM, border.centerLengthM].map(m),
      ]),
    ]),
  ).toEqual([])
  const known = json.quantities.map(({ value, unit }) => wantedOf(value, unit))
  expect(ofSlab.filter(text => !known.some(each => text.endsWith(each)))).toEqual([])
  await stageButton(page, 'Numbers').click()
  await settled(page)

  // Numbers: each in the group of its pour, or in one of the site's and slab's.
  expect(json.quantities.length).toBeGreaterThan(40)
  const rowsOf = async (region: string) =>
    (await page.getByRole('region', { name: region, exact: true }).locator('.row').allInnerTexts()).map(plain)
  const all = (await ledger.locator('.row').allInnerTexts()).map(plain)
  expect(all).toHaveLength(json.quantities.length)
  for (const own of json.quantities) {
    const { label, value, unit, pourId } = own
    const wanted = wantedOf(value, unit, shownUnits(own, units))
    const number = json.pours.find(({ id }) => id === pourId)?.number
    const rows = number === undefined ? all : await rowsOf(`Pour ${number}`)
    expect(
      rows.some(text => text.includes(label) && text.endsWith(wanted)),
      `${label} ${wanted}`,
    ).toBe(true)
  }
  // Each opens to its working by the keyboard, and lights on the plan what it was measured on.
  const handles = page.locator('.plan canvas').last()
  const drawn = () => handles.evaluate(canvas => (canvas as HTMLCanvasElement).toDataURL())
  const unlit = await drawn()
  const openers = await ledger.getByRole('button', { name: /^How .* is computed$/ }).all()
  expect(openers).toHaveLength(json.quantities.length)
  for (const opener of openers) {
    await opener.press('Enter')
    await expect(opener).toHaveAttribute('aria-expanded', 'true')
    await expect(ledger.locator('.opened')).toContainText(/=.*From .*Source /s)
    await expect.poll(drawn).not.toBe(unlit)
  }
  await openers.at(-1)!.press('Enter')
  await expect.poll(drawn).toBe(unlit)
  for (const { message } of json.problems) await expect(ledger.getByText(message).first()).toBeAttached()

  // What a label says of a material is typed, and counts at once; what cannot be is quoted; undo takes it back.
  const materials = page.getByRole('region', { name: 'Materials' })
  await materials.getByText('Materials', { exact: false }).first().click()
  await materials.getByRole('button', { name: 'Add sealer' }).click()
  const sealer = materials.getByRole('group', { name: 'Sealer' })
  await expect(sealer.getByLabel('A package covers, ft²')).toHaveValue('1,000')
  await sealer.getByLabel('Price of a package').fill('180')
  await sealer.getByLabel('Price of a package').press('Enter')
  await sealer.getByLabel('A package holds').fill('none')
  await sealer.getByLabel('A package holds').press('Enter')
  await expect(sealer.getByRole('alert')).toContainText('“none” is not taken')
  const price = ledger.locator('.row', { hasText: 'Sealer, price' })
  await expect(price).toContainText(/\d+\.00 USD/)
  await page.getByRole('button', { name: 'Undo material price' }).click()
  await page.getByRole('button', { name: 'Undo material', exact: true }).click()
  await expect(price).toHaveCount(0)
  await expect(sealer).toHaveCount(0)

  // A line of the price list counts once it has a price; until then its bid is told as unfinished.
  const list = page.locator('section.slab-form[aria-label="Price list"]')
  await list.locator('summary').click()
  await list.getByRole('button', { name: 'Add lump sum' }).click()
  const line = list.getByRole('group', { name: 'Lump sum' })
  await expect(line.getByRole('status')).toContainText('no price is typed yet')
  await expect(ledger.getByText('Lump sum has no price yet: it is not in the bid.').first()).toBeAttached()
  await line.getByLabel('Price of the job, USD').fill('about 240')
  await line.getByLabel('Price of the job, USD').press('Enter')
  await expect(line.getByRole('alert')).toContainText('“about 240” is not taken')
  await line.getByLabel('Price of the job, USD').fill('240')
  await line.getByLabel('Price of the job, USD').press('Enter')
  await expect(line.getByRole('status')).toContainText('240.00 USD')
  await expect(list.locator('summary')).toContainText(/2 lines, .*618\.00 USD/)
  expect(await faultsInEveryTheme(page, 'price list', '.led .slab-form')).toEqual([])
  await line.getByRole('button', { name: 'Remove line Lump sum' }).click()
  await expect(list.getByRole('button', { name: 'Add slab' })).toBeFocused()

  // Pours and days.
  await stageButton(page, 'Pours').click()
  await settled(page)
  const pours = page.getByRole('region', { name: 'Pours', exact: true })
  for (const { id, number, areaM2, date: day } of json.pours) {
    const card = pours.getByRole('article').filter({ has: page.locator('.tint', { hasText: number }) })
    await expect(card).toContainText(print.area(areaM2))
    await expect(card).toContainText(printDate(day ?? ''))
    // Opened: area, borders, concrete, loads, each a row of its own.
    await card.getByRole('button').first().click()
    const own = json.quantities.filter(({ pourId }) => pourId === id)
    await expect(card.locator('.row')).toHaveCount(own.length)
    const shown = (await card.locator('.row').allInnerTexts()).map(plain)
    expect(own.map(({ value, unit }) => wantedOf(value, unit)).filter(each => !endsOne(shown, each))).toEqual([])
  }
  const outline = page.locator('.plan-outline-list')
  for (const { kind, pourIds, lengthM } of json.joints) {
    if (kind !== 'construction') continue
    const name = jointName(pourIds.map(each => json.pours.find(({ id }) => id === each)!.number))
    const row = outline.getByRole('option', { name, exact: true, includeHidden: true })
    await expect(row).toContainText(print.length(lengthM))
  }
  const lengths = page.getByRole('region', { name: 'Joint lengths' }).locator('.row')
  const jointFigures = json.quantities.filter(({ id }) => /-(construction-joint|header)-length$/.test(id))
  expect(endsEach((await lengths.allInnerTexts()).map(plain), jointFigures)).toEqual([])
  // The day of each pour, as its row on the rail tells it.
  expect(json.dayPlans.length).toBe(json.pours.length)
  for (const { pourId, loads, slackMin } of json.dayPlans) {
    const { number, date: day } = json.pours.find(({ id }) => id === pourId)!
    const name = `Pour ${number}, ${printDate(day ?? '')}: ${loads.length} load`
    const row = page.getByRole('region', { name: 'Day rail' }).locator(`[aria-label^="${name}"]`)
    const told = slackMin >= 0 ? `${Math.floor(slackMin)} min slack` : `${Math.ceil(-slackMin)} min too late`
    await expect(row).toHaveAttribute('aria-label', new RegExp(`, ${told}`))
  }
  const days = page.getByRole('region', { name: 'Days', exact: true }).locator('.day-list > li')
  await expect(days).toHaveCount(json.days.length)
  for (const [i, { date: day, pourIds, hours, done, closedWayIds, waysReopen, afterTasks }] of json.days.entries()) {
    const shown = days.nth(i)
    await expect(shown).toContainText(printDate(day ?? ''))
    await expect(shown).toContainText(`pouring hours ${time(hours!.from)} to ${time(hours!.to)}`)
    await expect(shown).toContainText(`last print ${time(done!.time)}`)
    for (const { date: on, time: from } of waysReopen)
      await expect(shown).toContainText(`opens again ${printDate(on)}, ${time(from)}.`)
    for (const id of pourIds)
      await expect(shown).toContainText(`pour ${json.pours.find(pour => pour.id === id)?.number}`)
    await expect(shown).toContainText(closedWayIds.length === 0 ? 'All ways in and out stay open.' : 'Closed: ')
    for (const { date: on, time: from } of afterTasks)
      await expect(shown).toContainText(`${printDate(on)} from ${time(from)}`)
  }

  // Sun at every whole hour of light, and at the marked points.
  await stageButton(page, 'Sun').click()
  await settled(page)
  const row = (name: string) => ledger.locator('.row', { hasText: name })
  const hour = page.getByLabel('Hour', { exact: true })
  const lit = json.shade.times.flatMap((at, i) =>
    /T\d\d:00/.test(at) && json.shade.sun[i]!.altitudeDeg > -6 ? [i] : [],
  )
  expect(lit.length).toBeGreaterThan(13)
  for (const i of lit) {
    const at = clock(json.shade.times[i]!)
    await hour.fill(at)
    await hour.press('Enter')
    const share = json.shade.slabs[0]!.sunShare[i] ?? 0
    await expect(row(`Without direct sun at ${at.replace(/ .m$/, '')}`)).toContainText(
      print.area((1 - share) * json.slabs[0]!.netAreaM2),
    )
    await expect(row('Share of the slab')).toContainText(`${Math.round((1 - share) * 100)} %`)
    const { altitudeDeg, azimuthDeg } = json.shade.sun[i]!
    await expect(row('Sun height')).toContainText(altitudeDeg.toFixed(1).replace('-', '−'))
    await expect(row('Sun bearing')).toContainText(azimuthDeg.toFixed(1))
  }
  for (const { id, directSunMin, firstSun, lastSun } of json.points) {
    const own = ledger.getByRole('region', { name: site.points.find(point => point.id === id)!.name })
    await expect(own).toContainText(`${(directSunMin / 60).toFixed(1)} h`)
    await expect(own).toContainText(`${clock(firstSun!)} to ${clock(lastSun!)}`)
  }
  await expect(stageButton(page, 'Slab')).toContainText(print.area(json.slabs[0]!.netAreaM2))
})

test('every figure on the cards of the ways to split is that of the JSON the command line prints', async ({
  page,
  planner,
}) => {
  const { alternatives = [] } = await printedJson('l-patio', '--alternatives')
  expect(alternatives.length).toBeGreaterThan(1)
  await openSample(page, planner)
  await stageButton(page, 'Pours').click()
  const print = printMeasures(site.units)
  const areaOf = (m2: number) => (m2 > 0 ? print.area(m2) : 'none')
  for (const { kind, pours, figures, price, cost, sentences } of alternatives) {
    const count = `${pours.length} pours${kind === 'lanes' ? ' in lanes' : ''}`
    const card = page.getByRole('article', { name: count, exact: true })
    await expect(card.locator('dl > div').first()).toBeVisible({ timeout: 60_000 })
    const told = (await card.locator('dl > div').allInnerTexts()).map(text => text.split('\n').map(each => each.trim()))
    expect(Object.fromEntries(told)).toMatchObject({
      Price: printNumber(price.total, 0),
      'Largest pour': print.area(figures.largestM2),
      'Joint length': print.length(figures.jointM),
      'Beyond the chute': areaOf(figures.beyondChuteM2),
      'Last pour': printDate(figures.lastPourDate ?? ''),
    })
    for (const { words } of sentences)
      await expect(card.getByRole('listitem').filter({ hasText: words }).first()).toBeAttached()
    const cells = async (table: number) =>
      (await card.locator('table').nth(table).locator('tr').all()).reduce(
        async (rows, row) => [...(await rows), await row.locator('th, td').allInnerTexts()],
        Promise.resolve<string[][]>([]),
      )
    await card.getByText('Price, worked out').click()
    const rows = (await cells(0)).map(([name, amount, , own]) => [name, amount, own])
    expect(rows.slice(1)).toEqual([
      ['Crew-days', printNumber(figures.crewDays, 1), printNumber(price.crewDays, 0)],
      ['Trucks', String(figures.trucks), printNumber(price.trucks, 0)],
      ['Short loads', String(figures.shortLoads), printNumber(price.shortLoads, 0)],
      ['Joint', print.length(figures.jointM), printNumber(price.joints, 0)],
      ['Together', '', printNumber(price.total, 0)],
    ])
    await card.getByText('What the search weighed').click()
    const terms = cost.map(({ value }) => value).filter(value => Math.abs(value) >= 0.005)
    const weighed = (await cells(1)).map(row => row.at(-1))
    expect(weighed.slice(1)).toEqual(
      [...terms.toSorted((a, b) => b - a), cost.reduce((sum, { value }) => sum + value, 0)].map(ft =>
        printNumber(ft, 1, 1),
      ),
    )
  }
})

test('exported tables and GeoJSON read back as what the plan holds', async ({ page, planner }) => {
  await openSample(page, planner)
  await stageButton(page, 'Sheets').click()
  const data = planSheetData(planOf())
  await page.getByRole('button', { name: 'CSV tables' }).click({ timeout: 60_000 })
  await expect(page.getByText(/^Written: /)).toBeVisible()
  for (const { name, text } of csvTables(data)) {
    const written = readFileSync(join(planner.folder, `Alder Court patio, ${name}.csv`), 'utf8')
    expect(parse(written, { bom: true })).toEqual(parse(text, { bom: true }))
  }
  await page.getByRole('button', { name: 'GeoJSON' }).click()
  await expect(page.getByText('Written: Alder Court patio.geojson.')).toBeVisible()
  const written = JSON.parse(readFileSync(join(planner.folder, 'Alder Court patio.geojson'), 'utf8'))
  expect(written).toEqual(JSON.parse(JSON.stringify(geoJson(data))))
  await page.getByRole('button', { name: 'PDF of the chosen sheets' }).click()
  await expect(page.getByText('Written: Alder Court patio, sheets.pdf.')).toBeVisible({ timeout: 60_000 })
  const pdf = readFileSync(join(planner.folder, 'Alder Court patio, sheets.pdf'))
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
  expect(pdf.length).toBeGreaterThan(20_000)
  // A sheet of tables is a page on the screen too, and a picture as wide as a phone.
  await expect(page.getByRole('img', { name: 'Figures, tables' })).toBeAttached()
  await page.getByRole('button', { name: 'Figures, tables as a phone-width picture' }).click()
  await expect(page.getByText('Written: Alder Court patio, Figures, tables.png.')).toBeVisible()
  const png = readFileSync(join(planner.folder, 'Alder Court patio, Figures, tables.png'))
  // PNG (ISO/IEC 15948), 11.2.2: the width stands in bytes 16 to 19.
  expect(png.readUInt32BE(16)).toBe(1080)
  // What is not chosen is neither shown nor sent.
  await page.getByRole('checkbox', { name: 'Cautions' }).uncheck()
  await expect(page.getByRole('img', { name: 'Cautions' })).toHaveCount(0)
  await page.getByRole('button', { name: 'For the owner' }).click()
  await expect(page.getByLabel('Text for the owner')).toHaveValue(/concrete is poured[\s\S]*Walk on it from/)
})

test('pin, marks, chosen joint, locked pour and sheets pass the accessibility check in every theme', async ({
  page,
  planner,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openSample(page, planner)
  const faults = (state: string) => faultsInEveryTheme(page, state)
  await stageButton(page, 'Sun').click()
  await page.getByRole('button', { name: 'No leaves' }).click()
  await page.getByRole('button', { name: /^Mark today/ }).click()
  await settled(page)
  expect(await faults('sun')).toEqual([])
  await stageButton(page, 'Pours').click()
  await page.getByRole('button', { name: 'Choose 3 pours' }).click({ timeout: 60_000 })
  await page.getByRole('region', { name: 'Pours', exact: true }).getByRole('button').first().click()
  await page.getByRole('button', { name: 'Lock the shape' }).click()
  await settled(page)
  expect(await faults('pours')).toEqual([])
  // Locked, over the largest area, and mended before and after; prices and weights opened.
  await page.getByLabel('Largest pour, ft²').fill('450')
  await page.getByLabel('Largest pour, ft²').press('Enter')
  await page.getByRole('button', { name: 'Show the repair' }).click({ timeout: 60_000 })
  const way = page.getByRole('article', { name: /pours$/ }).first()
  await way.getByText('Price, worked out').click()
  await way.getByText('What the search weighed').click()
  await settled(page)
  expect(await faults('repair')).toEqual([])
  await page.getByRole('button', { name: 'Leave it' }).click()
  await stageButton(page, 'Numbers').click()
  await page.getByRole('button', { name: /^How Concrete to order, pour by pour/ }).click()
  expect(await faults('numbers')).toEqual([])
  await stageButton(page, 'Sheets').click()
  await expect(page.locator('.sheet-page img').first()).toBeVisible({ timeout: 60_000 })
  expect(await faults('sheets')).toEqual([])
})
