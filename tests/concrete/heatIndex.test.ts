import { describe, expect, it } from 'vitest'
import { heatChecks, heatIndex } from '../../core/concrete/heatIndex'
import { clock, hoursOf, mildDay } from './dayFixture'

const celsius = (tempF: number): number => (tempF - 32) / 1.8
const feltF = (airF: number, percent: number): number => heatIndex(celsius(airF), percent / 100) * 1.8 + 32

describe('how hot it feels', () => {
  it('is that of the National Weather Service chart within 1 °F (chart values from memory)', () => {
    for (const [airF, percent, chart] of [
      [80, 40, 80],
      [80, 70, 83],
      [90, 40, 91],
      [90, 50, 95],
      [90, 60, 100],
      [90, 80, 113],
      [100, 40, 109],
      [100, 50, 118],
      [100, 55, 124],
    ] as const)
      expect(Math.abs(feltF(airF, percent) - chart), `${airF} °F ${percent} %`).toBeLessThanOrEqual(1.01)
  })

  it('steps only where the published procedure hands over from the simple form, near 80 °F', () => {
    for (const percent of [5, 12.9, 13.1, 40, 84.9, 85.1, 95])
      for (let airF = 70; airF < 110; airF += 0.1) {
        const step = Math.abs(feltF(airF + 0.1, percent) - feltF(airF, percent))
        expect(step).toBeLessThan(Math.abs(airF - 80) < 1.5 ? 3.5 : 1)
      }
  })

  it('cautions at 80 and 90 °F felt, at the worst working hour only', () => {
    const at = (highC: number, fromH: number) =>
      heatChecks(hoursOf({ ...mildDay, highC, dewPointC: 16 }), clock(fromH), clock(16))
    expect(at(24, 7)).toEqual([])
    expect(at(30, 7).map(finding => finding.code)).toEqual(['crewHeat'])
    expect(at(35, 7).map(finding => finding.code)).toEqual(['crewHeatHigh'])
    expect(at(35, 7)[0]?.values.atUtc).toBe('2026-06-12T20:00:00Z')
    expect(heatChecks(hoursOf({ ...mildDay, highC: 35 }), clock(2), clock(5))).toEqual([])
  })
})
