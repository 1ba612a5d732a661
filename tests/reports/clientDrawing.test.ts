/** The client's sheet: true to its scale, and silent about what the client did not ask. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { type ClientOptions, clientDrawing } from '../../core/reports/client/clientDrawing'
import { clientPrice } from '../../core/reports/client/clientPrice'
import { papers } from '../../core/reports/paper'
import type { Site } from '../../shared/document/site'

const samples = readdirSync('samples').filter(name => name.endsWith('.slabwright.json'))
const sampleOf = (name: string): Site => {
  const read = readSite(readFileSync(`samples/${name}`))
  if (!read.ok) throw new Error(`${name} cannot be read`)
  return read.value
}
const quiet: ClientOptions = {
  paper: papers.letter,
  title: '',
  client: '',
  showAreas: false,
  price: null,
  pours: [],
  signed: true,
}
const sheetOf = (site: Site, options: Partial<ClientOptions> = {}) =>
  clientDrawing(site, site.slabs.map(resolveSlab), '2026-07-14', { ...quiet, ...options })!

const wordsOf = (svg: string): string[] => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!)

describe.each(samples)('the client drawing of %s', name => {
  const site = sampleOf(name)

  it('is one sheet of its paper, and says nothing of areas, money, pours or crew unless asked', () => {
    const paper = site.units === 'metric' ? papers.a4 : papers.letter
    const { svg, widthPt, heightPt } = sheetOf(site, { paper })
    expect([widthPt, heightPt].sort((a, b) => a - b)).toEqual([paper.widthPt, paper.heightPt])
    const words = wordsOf(svg).filter(text => !text.includes(site.name))
    const own = new Set([...site.finishes, ...site.casters].map(each => each.name))
    const rest = words.filter(text => !own.has(text)).join('\n')
    expect(rest).not.toMatch(/\$|capacity|slack|crew|Thickness|Price|\bpours?\b/i)
  })
})

describe('the patio of 28 by 42 ft', () => {
  const site = sampleOf('l-patio-accepted.slabwright.json')

  it('is drawn so long on paper as its scale says', () => {
    const sheet = sheetOf(site)
    // The heaviest path of the ink is the outline: 50 ft across, 42 ft up.
    const d = [...sheet.svg.matchAll(/<path d="([^"]+)" fill="none" stroke="#1C2125" stroke-width="2.2"/g)][0]![1]!
    const xs = [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x]) => Number(x))
    const feet = ((Math.max(...xs) - Math.min(...xs)) / 72) * (sheet.scale.ratio / 12)
    expect(feet).toBeCloseTo(50, 2)
  })

  it('tells areas, price and pours where they are asked for', () => {
    const price = clientPrice(site, site.slabs.map(resolveSlab), { figures: [], pourCount: 0 })!
    // 28 × 42 + 22 × 20 ft less two corners, (2 − π/2) × 36, less 4π of planter, to a tenth, at $18.50.
    const areaFt2 = 28 * 42 + 22 * 20 - (2 - Math.PI / 2) * 36 - 4 * Math.PI
    expect(price.total).toBe(
      `$${(Math.round(areaFt2 * 10) * 1.85).toLocaleString('en-US', { minimumFractionDigits: 2 })}`,
    )
    const words = wordsOf(sheetOf(site, { showAreas: true, price, client: 'the owners' }).svg).join('\n')
    for (const text of [price.total, '1,588 ft²', 'for the owners', 'Approved']) expect(words).toContain(text)
    expect(wordsOf(sheetOf(site, { signed: false }).svg).join('\n')).not.toContain('Approved')
  })

  it('tells the sum alone where the lines of the price find no room, and says what is not in it', () => {
    const line = (name: string, amount?: number) => ({
      name,
      per: 'job',
      currency: 'USD',
      ...(amount ? { amount } : {}),
    })
    const priceOf = (count: number) => {
      const prices = Array.from({ length: count }, (_, i) => ({ id: `h${900 + i}`, ...line(`Work ${i + 1}`, 100) }))
      const priced = { ...site, prices: [...prices, { id: 'h899', ...line('Permit') }] }
      return clientPrice(priced, site.slabs.map(resolveSlab), { figures: [], pourCount: 0 })!
    }
    const wordsWith = (count: number) => wordsOf(sheetOf(site, { price: priceOf(count) }).svg)
    expect(wordsWith(2)).toEqual(
      expect.arrayContaining(['Work 2', 'Permit', 'not priced yet', 'Price so far', '$200.00']),
    )
    expect(wordsWith(40)).toEqual(expect.arrayContaining(['Price so far', '$4,000.00']))
    expect(wordsWith(40)).not.toContain('Work 2')
  })

  it('is the same every time', () => {
    expect(sheetOf(site).svg).toBe(sheetOf(site).svg)
  })
})

it('draws nothing where nothing is drawn', () => {
  const site = { ...sampleOf('l-patio.slabwright.json'), slabs: [] }
  expect(clientDrawing(site, [], '2026-07-14', quiet)).toBeUndefined()
})

it('names what stands around, but not one by one what there is more than half a dozen of', () => {
  const words = wordsOf(sheetOf(sampleOf('school-court.slabwright.json')).svg)
  expect(words).toEqual(expect.arrayContaining(['North wing, two stories', 'West wing', 'East wing', 'Planter 1']))
  expect(words.filter(text => /tree/.test(text))).toEqual([])
  expect(wordsOf(sheetOf(sampleOf('driveway.slabwright.json')).svg)).toContain('Ash')
})

it('writes the radius beside a crown at the edge, not over it', () => {
  const site = sampleOf('kidney-pool-deck.slabwright.json')
  const { svg, scale } = sheetOf(site)
  const tree = site.casters.find(caster => caster.kind === 'tree')!
  const [dot] = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="3.2"/g)]
  const crownPt = (tree.crownRadiusM / 0.0254 / scale.ratio) * 72
  const radii = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>R [^<]*</g)]
  expect(radii).toHaveLength(3)
  for (const [, x, y] of radii)
    expect(Math.hypot(Number(x) - Number(dot![1]), Number(y) - Number(dot![2]))).toBeGreaterThan(crownPt)
})
