import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseAngle } from '../../core/units/parseAngle'
import { parseCoordinates } from '../../core/units/parseCoordinates'

describe('an angle', () => {
  it('is read decimal, and by degrees, minutes and seconds', () => {
    // Sexagesimal: a minute is 1/60, a second 1/3600 of a degree (SI Brochure, 9th ed., 2019, table 8).
    for (const [text, deg] of [
      ['45', 45],
      ['45.5°', 45.5],
      ['43°36′54″', 43.615],
      [`43° 36' 54"`, 43.615],
      ['43 36 54', 43.615],
      ['43-36-54', 43.615],
      ['43°36.9′', 43.615],
      ['89°30′', 89.5],
    ] as const)
      expect(parseAngle(text), text).toBeCloseTo(deg, 12)
  })

  it('is refused where it cannot be', () => {
    for (const text of [
      '',
      '-4',
      '43°60′',
      '43°36′60″',
      '43.5°30′',
      '43°36.5′10″',
      '43°36′54″7',
      'x',
      '4e1',
      '1 2 3 4',
    ])
      expect(parseAngle(text), text).toBeUndefined()
  })
})

describe('coordinates', () => {
  const boise = { latDeg: 43.615, lonDeg: -116 - 12 / 60 - 9 / 3600 }

  it('are read as they are copied from maps, deeds and instruments', () => {
    for (const text of [
      '43.615, -116.2025',
      '43.615,−116.2025',
      '43.615 -116.2025',
      '43.615; -116.2025',
      '+43.6150-116.2025/',
      '43.615° N, 116.2025° W',
      'N 43.615 W 116.2025',
      'N43°36′54″ W116°12′9″',
      '43°36′54″ N 116°12′9″ W',
      `43° 36' 54" n, 116° 12' 9" w`,
      `43°36'54"N116°12'9"W`,
      '116°12′9″ W, 43°36′54″ N',
      '43 36 54 N 116 12 9 W',
      '43-36-54 N 116-12-9 W',
      '43 36.9 north 116 12.15 west',
    ]) {
      const read = parseCoordinates(text)
      expect(read.ok, text).toBe(true)
      if (!read.ok) continue
      expect(read.value.latDeg, text).toBeCloseTo(boise.latDeg, 9)
      expect(read.value.lonDeg, text).toBeCloseTo(boise.lonDeg, 9)
    }
    expect(parseCoordinates('33 52 8 S 151 12 25 E')).toMatchObject({
      ok: true,
      value: { latDeg: -(33 + 52 / 60 + 8 / 3600) },
    })
    expect(parseCoordinates('43 116')).toEqual({ ok: true, value: { latDeg: 43, lonDeg: 116 } })
  })

  it('come back as they were written, all over the earth', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -90_0000, max: 90_0000 }),
        fc.integer({ min: -180_0000, max: 180_0000 }),
        (a, b) => {
          const [latDeg, lonDeg] = [a / 10_000, b / 10_000]
          const letters = `${Math.abs(latDeg)}° ${latDeg < 0 ? 'S' : 'N'} ${Math.abs(lonDeg)}° ${lonDeg < 0 ? 'W' : 'E'}`
          for (const text of [`${latDeg}, ${lonDeg}`, letters]) {
            const read = parseCoordinates(text)
            expect(read.ok && Math.abs(read.value.latDeg - latDeg) + Math.abs(read.value.lonDeg - lonDeg), text).toBe(0)
          }
        },
      ),
      { seed: 11, numRuns: 200 },
    )
  })

  it('are refused in words where they are none', () => {
    for (const text of [
      '',
      '43.615',
      'Boise',
      '43,615',
      '95, 10',
      '43, 190',
      '-43 S 116 W',
      '43 N 44 N',
      'N 43 S, 116 W',
      '1 2 3',
    ]) {
      const read = parseCoordinates(text)
      // A lone pair of whole numbers is one; a decimal comma is read as two of them and must not pass for a latitude.
      if (text === '43,615') expect(read.ok || read.error.message).toContain('longitude beyond 180°')
      else expect(read.ok, text).toBe(false)
    }
    const far = parseCoordinates('-116.2, 43.6')
    expect(far.ok || far.error.message).toBe('“-116.2, 43.6” has a latitude beyond 90°. The latitude comes first.')
  })
})
