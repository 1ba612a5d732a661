import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { courtFt } from '../../samples/court'
import { sampleSites } from '../../samples/sampleSites'
import { walkRunsFt } from '../../samples/sites/bentWalk'
import { plazaFt } from '../../samples/sites/plaza'

const folder = new URL('../../samples/', import.meta.url)
const files = readdirSync(folder)
  .filter(name => name.endsWith('.slabwright.json'))
  .sort()

const readSample = (name: string) => {
  const site = readSite(readFileSync(new URL(`${name}.slabwright.json`, folder)))
  if (!site.ok) throw new Error(`${name}: ${JSON.stringify(site.error)}`)
  return site.value
}

const { PI, SQRT1_2, acos, asin, sin, sqrt } = Math
/** Area between an arc and its chord: R²(θ − sin θ)/2. */
const segment = (radius: number, sweep: number) => (radius * radius * (sweep - sin(sweep))) / 2
/** What a rounded right angle loses: R²(1 − π/4). */
const rounded = (radius: number) => radius * radius * (1 - PI / 4)
const squareFoot = 0.3048 ** 2

interface Figures {
  readonly gross: number
  readonly net: number
  readonly perimeter: number
}

/** Two sectors of the lobes, the ground between their centers, less the segment of the hollow. */
const kidney = (): Figures => {
  const r = 14
  const hollow = 21
  const apart = 2 * r
  const height = sqrt((r + hollow) ** 2 - r ** 2)
  const lobeSweep = PI / 2 + PI - acos(r / (r + hollow))
  const touch = [r - (r * r) / (r + hollow), (r * height) / (r + hollow)] as const
  const hollowSweep = 2 * asin(touch[0] / hollow)
  const between = apart * r + ((apart + 2 * touch[0]) / 2) * touch[1]
  const gross = r * r * lobeSweep + between - segment(hollow, hollowSweep)
  // The pool: 18 × 9 ft and four segments; half sweeps of 30° over 18 ft, of 60° over 9 ft.
  const pool = 18 * 9 + 2 * segment(9 / sin(PI / 6), PI / 3) + 2 * segment(4.5 / sin(PI / 3), (2 * PI) / 3)
  return { gross, net: gross - pool, perimeter: apart + 2 * r * lobeSweep + hollow * hollowSweep }
}

const walk = (): Figures => {
  const [up, slant, across] = walkRunsFt
  const length = up + slant + across
  // Each bend lengthens one side by as much as it shortens the other.
  return { gross: 4 * length, net: 4 * length, perimeter: 2 * length + 2 * 4 }
}

const lPatio = (): Figures => {
  const gross = 50 * 20 + 28 * 22 - 2 * rounded(6)
  return { gross, net: gross - PI * 4, perimeter: 2 * (50 + 42) - 2 * 2 * 6 + 2 * (PI / 2) * 6 }
}

const court = (): Figures => {
  const gross = courtFt.width * courtFt.depth
  const planters = courtFt.planters.reduce((sum, { side }) => sum + side * side, 0)
  return { gross, net: gross - planters, perimeter: 2 * (courtFt.width + courtFt.depth) }
}

const plaza = (): Figures => {
  const { planters, columns, drains } = plazaFt
  const openings = PI * 15 ** 2 + planters.length * 200 + columns.length * PI + drains.length * 4
  return { gross: 50_000, net: 50_000 - openings, perimeter: 900 }
}

const meters = (m2: number, mm2: number, m: number): Figures => ({
  gross: m2 / squareFoot,
  net: mm2 / squareFoot,
  perimeter: m / 0.3048,
})

/** In feet and square feet, from the drawing by hand. */
const figures: Readonly<Record<string, Figures>> = {
  'plain-rectangle': { gross: 336, net: 336, perimeter: 76 },
  'l-patio': lPatio(),
  'l-patio-accepted': lPatio(),
  'logged-court': { gross: 2160, net: 2160, perimeter: 2 * (60 + 36) },
  'l-620': { gross: 620, net: 620, perimeter: 2 * (30 + 24) },
  'kidney-pool-deck': kidney(),
  'bent-walk': walk(),
  driveway: { gross: 978, net: 978, perimeter: 26 + 20 + 2 * 42 + 2 * sqrt(9 + 36) },
  'round-court': { gross: PI * 196, net: PI * 196, perimeter: 28 * PI },
  'hall-terrace': { gross: 72 * 32, net: 72 * 32 - 36, perimeter: 2 * (72 + 32) },
  'school-court': court(),
  'court-100-casters': court(),
  plaza: plaza(),
  'metric-terrace': meters(
    12.6 * 7.2 - 1.8 ** 2 / 2,
    12.6 * 7.2 - 1.8 ** 2 / 2 - 2 * 0.09,
    2 * (12.6 + 7.2) - 2 * 1.8 + 1.8 / SQRT1_2,
  ),
}

describe('the sample sites', () => {
  it('are the files that the script makes, byte for byte', () => {
    const sites = sampleSites()
    expect(files).toEqual(
      Object.keys(sites)
        .map(name => `${name}.slabwright.json`)
        .sort(),
    )
    for (const [name, site] of Object.entries(sites))
      expect(readFileSync(new URL(`${name}.slabwright.json`, folder), 'utf8'), name).toBe(serializeSite(site))
  })

  it('are each listed once in the read-me, with their cap', () => {
    const listed = readFileSync(new URL('README.md', folder), 'utf8')
      .split('\n')
      .filter(line => line.startsWith('| `'))
      .map(line => line.split('|').map(cell => cell.trim()))
    expect(listed.map(cells => `${cells[1]?.replaceAll('`', '')}.slabwright.json`).sort()).toEqual(files)
    for (const [, name = '', , , cap = ''] of listed) {
      const capM2 = readSample(name.replaceAll('`', '')).capacity?.capM2 ?? 0
      const [value = '', unit] = cap.split(' ')
      expect(capM2, name).toBeCloseTo(Number(value.replace(',', '')) * (unit === 'm²' ? 1 : squareFoot), 9)
    }
  })

  it.each(Object.keys(figures))('%s opens, and saves to the same bytes', name => {
    const text = readFileSync(new URL(`${name}.slabwright.json`, folder), 'utf8')
    expect(serializeSite(readSample(name))).toBe(text)
  })

  it.each(Object.entries(figures))('%s has the areas and the perimeter worked out by hand', (name, hand) => {
    const [slab, ...others] = readSample(name).slabs
    if (slab === undefined) throw new Error('no slab')
    expect(others).toEqual([])
    const resolved = resolveSlab(slab)
    expect(resolved.findings.filter(finding => finding.severity === 'stop')).toEqual([])
    const off = (ours: number, handFt: number, unit: number) => Math.abs(ours / (handFt * unit) - 1)
    expect(off(resolved.grossAreaM2, hand.gross, squareFoot)).toBeLessThanOrEqual(1e-9)
    expect(off(resolved.netAreaM2, hand.net, squareFoot)).toBeLessThanOrEqual(1e-9)
    expect(off(resolved.perimeterM, hand.perimeter, 0.3048)).toBeLessThanOrEqual(1e-9)
  })

  it('have casters that all throw shade', () => {
    for (const name of Object.keys(figures))
      for (const caster of readSample(name).casters)
        expect(resolveCaster(caster).findings, `${name}, ${caster.name}`).toEqual([])
  })

  it('hold marked points, obstacles and seeds that lie on their slabs', () => {
    for (const name of Object.keys(figures)) {
      const site = readSample(name)
      const [xs, ys] = [0, 1].map(i => site.slabs[0]!.outline.vertices.map(vertex => vertex.at[i]!))
      const spots = [
        ...site.points.map(point => point.at),
        ...site.slabs.flatMap(slab => slab.obstacles.map(obstacle => obstacle.at)),
        ...site.accepted.flatMap(part => part.pours.map(pour => pour.seed)),
      ]
      for (const [x, y] of spots) {
        expect(x).toBeGreaterThanOrEqual(Math.min(...xs!))
        expect(x).toBeLessThanOrEqual(Math.max(...xs!))
        expect(y).toBeGreaterThanOrEqual(Math.min(...ys!))
        expect(y).toBeLessThanOrEqual(Math.max(...ys!))
      }
    }
  })
})

describe('claims of the samples', () => {
  const fieldOf = (name: string) => resolveSlab(readSample(name).slabs[0]!)

  it('leave the round court a ring between inset and border', () => {
    const { fieldAreaM2, borders, insets } = fieldOf('round-court')
    expect(fieldAreaM2 / squareFoot).toBeCloseTo(PI * (12.5 ** 2 - 4 ** 2), 6)
    expect(borders[0]!.areaM2 / squareFoot).toBeCloseTo(PI * (14 ** 2 - 12.5 ** 2), 6)
    expect(insets[0]!.areaM2 / squareFoot).toBeCloseTo(PI * 16, 6)
    expect(borders[0]!.outerLengthM / 0.3048).toBeCloseTo(2 * PI * 14, 8)
    expect(borders[0]!.innerLengthM / 0.3048).toBeCloseTo(2 * PI * 12.5, 6)
    expect(borders[0]!.centerLengthM / 0.3048).toBeCloseTo(2 * PI * 13.25, 6)
  })

  it('take two bands of 20 × 2 ft from the driveway', () => {
    const { fieldAreaM2, bands } = fieldOf('driveway')
    expect(bands.map(band => band.areaM2 / squareFoot)).toEqual([expect.closeTo(40, 8), expect.closeTo(40, 8)])
    expect(fieldAreaM2 / squareFoot).toBeCloseTo(898, 7)
  })

  it('take bands and planter borders from the court, each crossing once', () => {
    const bands = 2 * 3 * 100 + 2 * 3 * 124 - 4 * 9
    // Each border is one foot wide with mitered corners: (side + 2)² − side².
    const borders = 4 * (10 ** 2 - 8 ** 2) + (14 ** 2 - 12 ** 2)
    expect(fieldOf('school-court').fieldAreaM2 / squareFoot).toBeCloseTo(12_000 - bands - borders, 6)
  })
})
