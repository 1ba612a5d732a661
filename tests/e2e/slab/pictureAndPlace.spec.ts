/** Picture under the plan, place and north, height by shadow, the client's drawing: one site from the first click to paper. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import pdfmake from 'pdfmake'
import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import { expect, type Page } from 'playwright/test'
import { axeOn } from '../axe'
import { openSample, stageButton, test } from '../renderer/planner'
import { newSite as openSheet, sheetPoints } from './slabPage'

const require = createRequire(import.meta.url)

/** Table of the PNG check sum (W3C PNG, third edition, annex D). */
const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c >>> 0
})

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  let crc = 0xffffffff
  for (const byte of body) crc = crcTable[(crc ^ byte) & 0xff]! ^ (crc >>> 8)
  const whole = Buffer.alloc(body.length + 8)
  whole.writeUInt32BE(data.length, 0)
  body.copy(whole, 4)
  whole.writeUInt32BE((crc ^ 0xffffffff) >>> 0, body.length + 4)
  return whole
}

/** A drawn plot plan, 600 × 400 pixels: a house whose front is 300 pixels long. */
function plotPlan(): Buffer {
  const [width, height] = [600, 400]
  const rows = Buffer.alloc(height * (width + 1), 0xff)
  for (let y = 0; y < height; y++) {
    rows[y * (width + 1)] = 0
    for (let x = 0; x < width; x++) {
      const isWall = x >= 150 && x <= 450 && y >= 60 && y <= 200 && (x < 154 || x > 446 || y < 64 || y > 196)
      if (isWall) rows[y * (width + 1) + 1 + x] = 0x30
    }
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 0, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

/** A picture that says it is 60,000 pixels wide and high, and holds none of them. */
function vastPng(): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(60_000, 0)
  head.writeUInt32BE(60_000, 4)
  head.set([8, 0, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.alloc(0))),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

const say = (page: Page) => page.locator('.say').getByRole('status').first()

async function newSite(page: Page, address: string): Promise<void> {
  await openSheet(page, address)
  await page.getByRole('button', { name: 'Select', exact: true }).click()
}

/** The boxes beside the point, in order, then Enter. */
async function typePoint(page: Page, first: string, second: string): Promise<void> {
  const boxes = page.locator('.entry input')
  await boxes.nth(0).fill(first)
  await boxes.nth(1).fill(second)
  await boxes.nth(1).press('Enter')
}

test('a picture is set to scale by two points and drawn over: the dimension is true', async ({ page, planner }) => {
  await newSite(page, planner.address)
  await page.getByText('Picture under the plan').click()
  const file = page.getByLabel('PNG, JPEG or PDF')
  await file.setInputFiles({ name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('not a picture') })
  await expect(page.getByRole('alert')).toContainText('“notes.png” is no picture this program can read')
  await file.setInputFiles({ name: 'plot.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7') })
  await expect(page.getByRole('alert')).toContainText('“plot.pdf” is damaged, or no PDF')
  await file.setInputFiles({ name: 'plot.png', mimeType: 'image/png', buffer: plotPlan() })
  // 60 ft across at first: a pixel is a tenth of a foot, the picture's middle the origin.
  await expect(page.getByText('600 × 400 pixels: 60′ 0″ by 40′ 0″ of ground.')).toBeVisible()

  await page.getByRole('button', { name: 'Set to scale by two points' }).click()
  await expect(say(page)).toContainText('one end of a length you know')
  // The house front: from pixel 150 to pixel 450, 15 ft each side of the middle.
  await typePoint(page, '-15ft', '0')
  await expect(say(page)).toContainText('its other end')
  await typePoint(page, '30ft', 'right')
  await expect(page.getByText('The two points read 30′ 0″ on the plan.')).toBeVisible()
  const known = page.getByLabel('Known distance')
  await known.fill(`42'`)
  await known.press('Enter')
  await expect(page.getByText('Set to scale: those two points are 42′ 0″ apart.')).toBeVisible()
  // The whole picture grew by 42 / 30, and the step has its name.
  await expect(page.getByText('600 × 400 pixels: 84′ 0″ by 56′ 0″ of ground.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Undo picture scale' })).toBeEnabled()

  // Drawn over with the pointer, from end to end of the front: 42 ft, give or take a pixel of the screen.
  const front = await page.getByRole('application').evaluate(element => {
    const canvas = element.querySelector('canvas')!
    const { width, height } = canvas
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, height)
    const dark = (x: number, y: number) => {
      const i = 4 * (y * width + x)
      return data[i]! < 190 && data[i + 1]! < 190 && data[i + 2]! < 190 && data[i + 3]! > 0
    }
    // The longest dark row of the ground is the front of the house.
    let best = { from: 0, to: 0, y: 0 }
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        let end = x
        while (end < width && dark(end, y)) end++
        if (end - x > best.to - best.from) best = { from: x, to: end - 1, y }
        x = end
      }
    const box = element.getBoundingClientRect()
    const ratio = width / box.width
    return {
      x0: box.left + best.from / ratio,
      x1: box.left + (best.to + 1) / ratio,
      y: box.top + best.y / ratio,
      box: box.width,
    }
  })
  expect(front.x1 - front.x0).toBeGreaterThan(100)
  const pixelFt = 42 / (front.x1 - front.x0)
  await page
    .getByRole('toolbar', { name: 'Drawing actions' })
    .getByRole('button', { name: 'Slab', exact: true })
    .click()
  await page.getByLabel('Drawn as').selectOption('rectangle')
  await page.keyboard.down('Alt')
  await page.mouse.click(front.x0, front.y)
  await page.mouse.move(front.x1, front.y + 60)
  await page.mouse.click(front.x1, front.y + 60)
  await page.keyboard.up('Alt')
  const side = page.getByRole('button', { name: /A to B of Patio: type another length/ })
  await expect(side).toBeVisible()
  const [, feet = '0', inches = '0', , over = '0', under = '1'] =
    /^(\d+) ft(?: (\d+)( (\d+)\/(\d+))? in)?/.exec((await side.getAttribute('aria-label')) ?? '') ?? []
  const measuredFt = Number(feet) + (Number(inches) + Number(over) / Number(under)) / 12
  expect(Math.abs(measuredFt - 42)).toBeLessThan(2.5 * pixelFt)
})

/** Two pages of 6 × 4 in, a filled house on the second only. Locked where a password is given. */
async function plotPdf(userPassword?: string): Promise<Buffer> {
  const font = require.resolve('@fontsource/zilla-slab/files/zilla-slab-latin-700-normal.woff')
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy(path => path === font)
  pdfmake.setFonts({ Sheet: { normal: font } })
  return pdfmake
    .createPdf({
      ...(userPassword === undefined ? {} : { userPassword }),
      defaultStyle: { font: 'Sheet' },
      pageMargins: 36,
      pageSize: { width: 432, height: 288 },
      pageOrientation: 'landscape',
      content: [
        { text: 'Cover sheet' },
        { text: 'Plot plan', pageBreak: 'before' },
        { canvas: [{ type: 'rect', x: 36, y: 36, w: 216, h: 72, color: '#303030' }] },
      ],
    } as TDocumentDefinitions)
    .getBuffer()
}

/** 64 × 64 pixels as JPEG 2000 (ISO/IEC 15444-1), a dark square of half the side on white. */
const jpeg2000 = [
  '/0//UQApAAAAAABAAAAAQAAAAAAAAAAAAAAAQAAAAEAAAAAAAAAAAAABBwEB/1IADAAAAAEAAQQEAAH/XAAHQEBISFD/ZAAlAAFD',
  'cmVhdGVkIGJ5IE9wZW5KUEVHIHZlcnNpb24gMi41LjT/kAAKAAAAAAHDAAH/k9+Gq4CVKCirIoKy0O8+/HepCRCNELhDKI5R5B5m',
  'TDh/0rUZStNsOU4I1svYsPsIGBYHnuKfABhIS/kPRIAAADCQJEvhISJJ4BhIQkgRhISJJ4BhIQkgRhISJJ8oz0B6jbJQCW/lXYAY',
  'SEvzcPYS0CZSASHOh4hzgcIRtcq4RvAzWZm1EbjIfTz/SIKHH+6dABgAUVwAC/9PZrhG8DNZlxbcUkQQhjeBmszM2ojdfVJDVwje',
  'Bouh5iCN+T0t6jbcPPIR7i0jmQj3DBhIRiCcjmQj3DBhIRiIAGiQjmHBjIRcckVExthgAAAAwkIbYEbyEe4YMJCMQTkcyEe4YMJC',
  'MQTkcyEcwWCn5W9Rtsnli2SKSURvAzWZmZtRGzfyiGrhG8DNbT/fMjfk9Leo24nDFAjVFJHMhFmJSOZCLMSkcyEWYlI5kIsz8cFH',
  'K3qNskcrWkfU4jeBmszNTox/x9pJH2kUH1BYtfSjXQU/33JCh4iA2ee+Iver0gOSbswxMUEvQ8vcukrc698flSgoVfQ7HA5emMMn',
  '3pNiTDmHJBt/w6LhGwE2sP9rEYJS35QD/DpdE87Q7h3R/9k=',
].join('')

/** A PDF of the objects given (ISO 32000-1, 7.5: header, body, cross-reference table, trailer); the first is the root. */
function barePdf(...objects: readonly (string | readonly [dictionary: string, stream: Buffer])[]): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')]
  const sizeNow = () => parts.reduce((sum, { length }) => sum + length, 0)
  const starts = objects.map((object, i) => {
    const start = sizeNow()
    const [dictionary, stream] = typeof object === 'string' ? [object, null] : object
    parts.push(Buffer.from(`${i + 1} 0 obj\n${dictionary}\n`))
    if (stream) parts.push(Buffer.from('stream\n'), stream, Buffer.from('\nendstream\n'))
    parts.push(Buffer.from('endobj\n'))
    return start
  })
  const table = starts.map(start => `${String(start).padStart(10, '0')} 00000 n \n`).join('')
  const count = objects.length + 1
  parts.push(
    Buffer.from(
      `xref\n0 ${count}\n0000000000 65535 f \n${table}trailer\n<< /Size ${count} /Root 1 0 R >>\nstartxref\n${sizeNow()}\n%%EOF\n`,
    ),
  )
  return Buffer.concat(parts)
}

/** One page of 2 × 2 in, all of it a JPEG 2000 picture. */
function jpeg2000Pdf(): Buffer {
  const picture = Buffer.from(jpeg2000, 'base64')
  const draw = Buffer.from('144 0 0 144 0 0 cm /P Do')
  return barePdf(
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 144 144] /Contents 4 0 R /Resources << /XObject << /P 5 0 R >> >> >>',
    [`<< /Length ${draw.length} >>`, draw],
    [
      `<< /Type /XObject /Subtype /Image /Width 64 /Height 64 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /JPXDecode /Length ${picture.length} >>`,
      picture,
    ],
  )
}

const emptyPdf = () => barePdf('<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [] /Count 0 >>')

test('the second page of a PDF is the picture, within the page’s policy', async ({ page, planner }) => {
  const refused: string[] = []
  page.on('console', message => {
    if (/Content Security Policy|violates/i.test(message.text())) refused.push(message.text())
  })
  page.on('request', request => {
    if (!/^(?:blob|data):/.test(request.url()) && !request.url().startsWith(new URL(planner.address).origin))
      refused.push(request.url())
  })
  await newSite(page, planner.address)
  await page.evaluate(() => {
    document.addEventListener('securitypolicyviolation', event =>
      console.error(`violates ${event.violatedDirective} ${event.blockedURI}`),
    )
  })
  const darkShare = () =>
    page.getByRole('application').evaluate(element => {
      const canvas = element.querySelector('canvas')!
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
      let dark = 0
      for (let i = 0; i < data.length; i += 4) if (data[i + 3]! > 0 && data[i]! < 190 && data[i + 2]! < 190) dark++
      return dark / (data.length / 4)
    })
  const blank = await darkShare()
  await page.getByText('Picture under the plan').click()
  const file = page.getByLabel(/PNG, JPEG or PDF$/)
  const pdf = (buffer: Buffer) => ({ name: 'plot.pdf', mimeType: 'application/pdf', buffer })
  await file.setInputFiles(pdf(await plotPdf('aspen')))
  await expect(page.getByRole('alert')).toContainText('“plot.pdf” opens only with a password.')
  // Whatever cannot be drawn is told, and the sheet stays as it was.
  await file.setInputFiles(pdf(emptyPdf()))
  await expect(page.getByRole('alert')).toContainText('“plot.pdf” has no page.')
  const image = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/png', buffer })
  await file.setInputFiles(image('torn.png', plotPlan().subarray(0, 60)))
  await expect(page.getByRole('alert')).toContainText('“torn.png” is no picture this program can read.')
  await file.setInputFiles(image('vast.png', vastPng()))
  await expect(page.getByRole('alert')).toContainText('“vast.png” is 60,000 × 60,000 pixels')
  expect(Math.abs((await darkShare()) - blank)).toBeLessThan(0.001)
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled()
  await file.setInputFiles(pdf(jpeg2000Pdf()))
  await expect(page.getByText('2400 × 2400 pixels: 60′ 0″ by 60′ 0″ of ground.')).toBeVisible()
  // A quarter of the page is dark, faded by 40 %.
  await expect.poll(darkShare).toBeGreaterThan(blank + 0.02)
  await page.getByRole('button', { name: 'Remove the picture' }).click()
  await expect.poll(darkShare).toBeLessThan(blank + 0.001)
  await file.setInputFiles(pdf(await plotPdf()))
  const chosen = page.getByLabel('Page of the PDF')
  await expect(chosen.locator('option')).toHaveText(['Page 1 of 2', 'Page 2 of 2'])
  await expect(page.getByRole('alert')).toHaveCount(0)
  await chosen.selectOption('Page 2 of 2')
  await page.getByRole('button', { name: 'Take this page' }).click()
  // 6 × 4 in, as long as a picture may be; 60 ft across at first.
  await expect(page.getByText('2400 × 1600 pixels: 60′ 0″ by 40′ 0″ of ground. Not set to scale yet.')).toBeVisible()
  // The house is an eighth of the second page; the first has two small words.
  await expect.poll(darkShare).toBeGreaterThan(blank + 0.01)

  await page.getByRole('button', { name: 'Set to scale by two points' }).click()
  await typePoint(page, '-15ft', '0')
  await expect(say(page)).toContainText('its other end')
  // The other end by the mouse: the keys are the distance's at once.
  const sheet = await sheetPoints(page)
  await page.mouse.click(...sheet.at(15, 0))
  await expect(page.getByLabel('Known distance')).toBeFocused()
  await page.keyboard.press('Control+a')
  await page.keyboard.type(`42'`)
  await page.keyboard.press('Enter')
  // Give or take a pixel of the screen.
  await expect(page.getByText(/^2400 × 1600 pixels: 8[345]′ .* of ground\.$/)).toBeVisible()
  expect(refused).toEqual([])
})

test('a town is looked up and its zone accepted; north by a wall, by a shadow, by the arrow', async ({
  page,
  planner,
}) => {
  await newSite(page, planner.address)
  await page.getByText('Place and time zone').click()
  // Opened at the foot of the ledger it is shown whole.
  await expect(page.getByLabel('Height above sea')).toBeInViewport({ ratio: 1 })
  await page.getByLabel(/^Find a town/).fill('phoenix, az')
  await page
    .getByRole('list', { name: 'Towns found' })
    .getByRole('button', { name: /^Phoenix, AZ/ })
    .click()
  await expect(page.getByText('Time zone America/Phoenix.')).toBeVisible()
  await page.getByRole('button', { name: 'Use this place' }).click()
  const zone = page.getByLabel(/^Time zone, like/)
  await expect(zone).toHaveValue('America/Phoenix')
  await expect(page.getByLabel('Latitude')).toHaveValue(/^33\.4/)
  await expect(page.getByRole('button', { name: 'Undo place', exact: true })).toBeEnabled()
  // Coordinates typed over: the zone they lie in is offered, not taken. Boise by the IANA zone table: +433649−1161209.
  for (const [label, value] of [
    ['Latitude', '43.6136'],
    ['Longitude', '-116.2025'],
  ] as const) {
    await page.getByLabel(label).fill(value)
    await page.getByLabel(label).press('Enter')
  }
  await expect(zone).toHaveValue('America/Phoenix')
  // A measure that is set is undone from its own box; one that is being typed keeps the keys for its letters.
  const east = page.getByLabel('Longitude')
  await east.press('Control+z')
  await expect(east).toHaveValue(/^-112/)
  await east.press('Control+Shift+z')
  await expect(east).toHaveValue('-116.2025')
  await page.getByRole('button', { name: 'Use America/Boise' }).click()
  await expect(zone).toHaveValue('America/Boise')
  // The height above sea does not come along: it is asked about until it is told. Any figure will do.
  const height = page.getByLabel('Height above sea (ft)')
  await expect(page.getByText('its height above sea is still 0 ft')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Keep 0 ft' })).toBeVisible()
  await height.fill('2730')
  await height.press('Enter')
  await expect(page.getByText('its height above sea is still')).toBeHidden()
  await expect(height).toHaveValue('2730')

  await page.getByText('North', { exact: true }).click()
  await page.getByRole('button', { name: 'Point a wall out on the plan' }).click()
  await typePoint(page, '0', '0')
  await typePoint(page, '40ft', '30')
  await page.getByLabel(/^It bears/).fill('10')
  await page.getByLabel(/^Declination/).fill('13')
  await page.getByLabel(/^Declination/).press('Enter')
  await expect(page.getByText('10° + 13° = 23°')).toBeVisible()
  await page.getByRole('group', { name: 'North from a wall' }).getByRole('button', { name: 'Set north' }).click()
  // Drawn 30° clockwise from up and bearing 10 + 13 = 23° from true north: north lies 7° clockwise from up.
  const arrow = page.getByRole('slider', { name: 'True north' })
  await expect(arrow).toHaveAttribute('aria-valuenow', '7')
  await arrow.press('ArrowRight')
  await expect(arrow).toHaveAttribute('aria-valuenow', '8')
  const box = (await arrow.boundingBox())!
  const middle = [box.x + box.width / 2, box.y + box.height / 2] as const
  await page.mouse.move(middle[0], middle[1] - 20)
  await page.mouse.down()
  await page.mouse.move(middle[0] + 20, middle[1], { steps: 3 })
  await page.mouse.up()
  await expect(arrow).toHaveAttribute('aria-valuenow', '90')
  await page.getByRole('button', { name: 'Undo north', exact: true }).click()
  await expect(arrow).toHaveAttribute('aria-valuenow', '8')

  const shadow = page.getByRole('group', { name: 'North from a shadow' })
  await shadow.getByLabel('Day').fill('2026-06-21')
  await shadow.getByLabel('Time by the site’s clock').fill('23:30')
  await shadow.getByRole('button', { name: 'Point the shadow out on the plan' }).click()
  await typePoint(page, '0', '0')
  await typePoint(page, '12ft', 'up')
  await expect(shadow.getByRole('alert')).toContainText('The sun is below the horizon then')
  await shadow.getByLabel('Time by the site’s clock').fill('10:00')
  const { azimuth } = sunAt('2026-06-21T16:00:00Z', 43.6136, -116.2025)
  const expected = (((0 - azimuth - 180) % 360) + 360) % 360
  const told = await shadow.getByRole('status').textContent()
  expect(Math.abs(Number(/lies ([\d.]+)°/.exec(told ?? '')?.[1]) - expected)).toBeLessThan(0.1)
  await shadow.getByRole('button', { name: 'Set north' }).click()
  expect(Math.abs(Number(await arrow.getAttribute('aria-valuenow')) - expected)).toBeLessThan(0.1)
  await expect(page.getByRole('button', { name: 'Undo north by shadow' })).toBeEnabled()
  expect((await axeOn(page).analyze()).violations.map(v => `${v.id} ${v.nodes[0]?.html}`)).toEqual([])
})

/** Refracted horizon coordinates by astronomy-engine, which the planner does not use. */
function sunAt(iso: string, latDeg: number, lonDeg: number) {
  const at = new Date(iso)
  const observer = new Observer(latDeg, lonDeg, 0)
  const { ra, dec } = Equator(Body.Sun, at, observer, true, true)
  return Horizon(at, observer, ra, dec, 'normal')
}

test('a height by its shadow is offered and applied as one step; then the client sees a drawing, and only what is asked', async ({
  page,
  planner,
}) => {
  await openSample(page, planner)
  await page.getByRole('button', { name: 'Outline', exact: true }).click()
  await page.getByRole('option', { name: 'House', exact: true }).click()
  await page.getByText('Height from its shadow').click()
  const form = page.getByRole('region', { name: 'What is chosen' })
  // What was refused goes with the measure it was typed over; an hour that was emptied is told so.
  await form.getByLabel('Shadow of the eave').fill('twelve')
  await form.getByLabel('Shadow of the eave').press('Enter')
  await expect(form.getByRole('alert')).toContainText('“twelve” is not a length')
  await form.getByRole('button', { name: 'Point it out' }).click()
  for (const [first, second] of [
    ['0', '0'],
    ['9ft', 'right'],
  ] as const)
    await typePoint(page, first, second)
  await expect(form.getByRole('alert')).toHaveCount(0)
  await expect(form.getByLabel('Shadow of the eave')).toHaveValue('9′ 0″')
  await form.getByLabel('Time by the site’s clock').fill('')
  await expect(form.getByRole('alert')).toContainText('No time is given.')
  await form.getByLabel('Shadow of the eave').fill(`12'`)
  await form.getByLabel('Shadow of the eave').press('Enter')
  await form.getByLabel('Day').fill('2026-07-21')
  await form.getByLabel('Time by the site’s clock').fill('11:00')
  const { altitude } = sunAt('2026-07-21T17:00:00Z', 43.5826, -116.2147)
  const expectedIn = 144 * Math.tan((altitude * Math.PI) / 180)
  const use = form.getByRole('button', { name: /^Use / })
  const [, feet = '0', inches = '0'] = /Use (\d+)′ (\d+)/.exec((await use.textContent()) ?? '') ?? []
  expect(Math.abs(Number(feet) * 12 + Number(inches) - expectedIn)).toBeLessThan(1.5)
  await use.click()
  await expect(page.getByRole('button', { name: 'Undo height by shadow' })).toBeEnabled()
  await expect(form.getByText(/now (\d+)′/)).toContainText(`now ${feet}′ ${inches}`)
  await page.getByRole('button', { name: 'Undo height by shadow' }).click()

  await page.getByRole('button', { name: 'Client view' }).click()
  const ledger = page.getByRole('complementary', { name: 'Ledger' })
  await expect(ledger.getByRole('heading', { name: 'For the client' })).toBeVisible()
  await expect(ledger.getByText('ft²')).toHaveCount(0)
  await expect(stageButton(page, 'Slab')).not.toContainText('ft²')
  await ledger.getByLabel('Areas').check()
  await expect(ledger.getByText('ft²').first()).toBeVisible()
  // The page starts in the theme another journey left; three turns come round to it again.
  const seen = new Set<string | null>()
  for (let turn = 0; turn < 3; turn += 1) {
    const theme = await page.locator('html').getAttribute('data-theme')
    seen.add(theme)
    const { violations } = await axeOn(page, theme ?? 'light').analyze()
    expect(violations.map(v => `${theme}: ${v.id} ${v.nodes[0]?.html}`)).toEqual([])
    await page.getByRole('button', { name: /theme$/ }).click()
    await expect(page.locator('html')).not.toHaveAttribute('data-theme', theme ?? '')
  }
  expect(seen.size).toBe(3)
  await ledger.getByLabel('Areas').uncheck()
  await stageButton(page, 'Sheets').click()
  await expect(page.getByRole('img', { name: 'Drawing for the client' })).toBeVisible()
  await ledger.getByLabel('Drawn for').fill('the owners')
  await ledger.getByLabel('Drawn for').press('Enter')
  await ledger.getByLabel('Price', { exact: true }).check()
  await ledger.getByLabel('Price in all, as it is to be read').fill('$33,610')
  await ledger.getByLabel('Price in all, as it is to be read').press('Enter')
  await ledger.getByRole('button', { name: 'SVG' }).click()
  await expect(ledger.getByText(/^Written: .*\.svg/)).toBeVisible()
  await ledger.getByRole('button', { name: 'PDF of the drawing' }).click()
  await expect(ledger.getByText(/^Written: .*\.pdf/)).toBeVisible()
  const files = readdirSync(planner.folder)
  const svg = readFileSync(join(planner.folder, files.find(name => /drawing\.svg$/.test(name))!), 'utf8')
  for (const words of ['Alder Court patio', 'for the owners', '$33,610', 'Approved']) expect(svg).toContain(words)
  expect(svg).not.toMatch(/ft²|[Pp]our|capacity|slack/)
  const pdf = readFileSync(join(planner.folder, files.find(name => /drawing\.pdf$/.test(name))!))
  expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-')
})
