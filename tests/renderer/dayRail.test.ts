import { describe, expect, it } from 'vitest'
import { siteDay } from '../../core/sun/siteDay'
import { parseHour } from '../../renderer/rail/parseHour'
import { sunCurve } from '../../renderer/rail/sunCurve'

describe('a typed hour', () => {
  it.each([
    ['9:40', 580],
    ['940', 580],
    ['9', 540],
    ['0940', 580],
    ['14:30', 870],
    ['2pm', 840],
    ['2:15 PM', 855],
    ['12am', 0],
    ['12 p', 720],
    [' 7.05 ', 425],
  ])('%s is understood', (typed, minutes) => {
    expect(parseHour(typed)).toBe(minutes)
  })

  it.each(['', 'noon', '24:00', '9:60', '13pm', '0am', '1:2', '9:40:00', '-3'])('%j is refused', typed => {
    expect(parseHour(typed)).toBeNull()
  })
})

const day = (date: string, zone: string) => {
  const result = siteDay(date, zone)
  if (!result.ok) throw new Error('no such day')
  return result.value
}

describe('the hours on the rail', () => {
  it('reach an hour beyond the first and the last event, in whole hours of the day', () => {
    const place = { latDeg: 39.74, lonDeg: -104.98 }
    const at = (time: string) => Date.parse(`2024-06-21T${time}:00-06:00`)
    const shown = day('2024-06-21', 'America/Denver')
    const night = sunCurve(shown, place, { fromMs: at('03:20'), toMs: at('22:10') })
    expect([night.fromMs, night.toMs]).toEqual([at('02:00'), at('24:00')])
    const noon = sunCurve(shown, place, { fromMs: at('10:00'), toMs: at('15:00') })
    expect(noon).toEqual(sunCurve(shown, place))
  })

  it('run from an hour before first light to an hour after last light', () => {
    // U.S. Naval Observatory, Astronomical Applications, Denver (39.74 N, 104.98 W), 21 June 2024, MDT: civil twilight
    // begins 4:59, ends 21:04 (from memory, to the minute or two).
    const curve = sunCurve(day('2024-06-21', 'America/Denver'), { latDeg: 39.74, lonDeg: -104.98 })
    const at = (time: string) => Date.parse(`2024-06-21T${time}:00-06:00`)
    expect(Math.abs(curve.fromMs - at('03:59'))).toBeLessThan(8 * 60_000)
    expect(Math.abs(curve.toMs - at('22:04'))).toBeLessThan(8 * 60_000)
    // Highest sun on that day: 90 − 39.74 + 23.44 = 73.7°.
    expect(curve.highestDeg).toBeCloseTo(73.7, 1)
  })

  it('are the whole day where the sun does not set, and where it does not rise', () => {
    const tromso = { latDeg: 69.65, lonDeg: 18.96 }
    const june = day('2024-06-21', 'Europe/Oslo')
    expect([sunCurve(june, tromso).fromMs, sunCurve(june, tromso).toMs]).toEqual([june.startMs, june.endMs])
    const pole = day('2024-12-21', 'UTC')
    const dark = sunCurve(pole, { latDeg: 89, lonDeg: 0 })
    expect([dark.fromMs, dark.toMs]).toEqual([pole.startMs, pole.endMs])
  })

  it('never leave the site day, 23 hours long or 25', () => {
    for (const date of ['2026-03-08', '2026-11-01']) {
      const each = day(date, 'America/Denver')
      const curve = sunCurve(each, { latDeg: 39.74, lonDeg: -104.98 })
      expect(curve.fromMs).toBeGreaterThanOrEqual(each.startMs)
      expect(curve.toMs).toBeLessThanOrEqual(each.endMs)
      expect(curve.samples).toHaveLength((each.endMs - each.startMs) / 300_000 + 1)
    }
  })
})
