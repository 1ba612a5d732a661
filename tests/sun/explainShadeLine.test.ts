import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changeCaster } from '../../core/document/commands/changeEntity'
import { setNorth } from '../../core/document/commands/setSite'
import { explainShadeLine, type ShadeMark } from '../../core/sun/explainShadeLine'
import { pointShare } from '../../core/sun/pointSun'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { shadowPerMeter, sunPosition } from '../../core/sun/sunPosition'
import { feetToMeters as ft, inchesToMeters as inch } from '../../core/units/convert'
import { lPatio } from '../../samples/sites/lPatio'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { done } from '../commands/edit'

const plan = lPatio()
const house = plan.casters[0]!
const date = '2026-09-10'
/** 10:30 on a September morning: the house throws its shade over the patio. */
const ms = Date.UTC(2026, 8, 10, 16, 30)

const inSun = (site: Site, at: Pt, when = ms) => {
  const sun = sunPosition(when, site.place.latDeg, site.place.lonDeg)
  const casters = site.casters.map(caster => resolveCaster(caster).value)
  return pointShare(at, 0, casters, shadowPerMeter(sun, site.place.northDeg), date, site.settings) >= 0.5
}

/** Where the shade line crosses the way from one point of the patio to another: what one would chalk on the forms. */
const chalk = (site: Site, from: Pt, to: Pt): Pt => {
  let [a, b] = [0, 1]
  const at = (t: number): Pt => [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]
  const start = inSun(site, at(0))
  if (inSun(site, at(1)) === start) throw new Error('the shade line does not cross here')
  for (let i = 0; i < 50; i++) {
    const middle = (a + b) / 2
    if (inSun(site, at(middle)) === start) a = middle
    else b = middle
  }
  return at((a + b) / 2)
}

const explained = (site: Site, mark: ShadeMark) => {
  const found = explainShadeLine(site, mark)
  if (!found.ok) throw new Error(JSON.stringify(found.error))
  return found.value
}

const across = (site: Site, x: number) => chalk(site, [ft(x), ft(0.2)], [ft(x), ft(41)])
const markOf = (points: ShadeMark['points']): ShadeMark => ({ points, levelM: 0, ms, date })

describe('a marked shade line', () => {
  it('gives back the eave height it was made from', () => {
    fc.assert(
      fc.property(fc.double({ min: ft(17), max: ft(24), noNaN: true }), eaveM => {
        const truth = done(changeCaster(house.id, { eaveM })(plan))
        const mark = markOf([across(truth, 8), across(truth, 20)])
        const height = explained(plan, mark).find(({ cause, casterId }) => cause === 'height' && casterId === house.id)
        expect(Math.abs(height!.to - eaveM)).toBeLessThan(0.001)
        expect(height!.spread).toBeLessThan(0.001)
        const mended = done(height!.apply(plan))
        expect(Math.abs(across(mended, 14)[1] - across(truth, 14)[1])).toBeLessThan(0.005)
      }),
      { seed: 6, numRuns: 12 },
    )
  })

  it('gives back the overhang, and the north, that it was made from', () => {
    const wide = done(changeCaster(house.id, { overhangM: inch(30) })(plan))
    const wideMark = markOf([across(wide, 8)])
    const overhang = explained(plan, wideMark).find(({ cause }) => cause === 'overhang')
    expect(overhang!.to).toBeCloseTo(inch(30), 3)

    const turned = done(setNorth(41)(plan))
    const north = explained(plan, markOf([across(turned, 8), across(turned, 20)])).find(
      ({ cause }) => cause === 'north',
    )
    expect(north!.to).toBeCloseTo(41, 2)
    expect(done(north!.apply(plan)).place.northDeg).toBeCloseTo(41, 2)
  })

  it('is explained by small changes first, and each puts the line onto the mark', () => {
    const truth = done(changeCaster(house.id, { eaveM: ft(21.5) })(plan))
    const at = across(truth, 12)
    const found = explained(plan, markOf([at]))
    expect(found.length).toBeGreaterThan(1)
    found.forEach(({ surprise, apply }, i) => {
      if (i > 0) expect(surprise).toBeGreaterThanOrEqual(found[i - 1]!.surprise)
      const mended = done(apply(plan))
      const nearby = [-0.02, 0.02].flatMap(d => [inSun(mended, [at[0], at[1] + d]), inSun(mended, [at[0] + d, at[1]])])
      expect(new Set(nearby).size).toBe(2)
    })
  })

  it('that is where the plan has it asks for next to nothing', () => {
    const [best] = explained(plan, markOf([across(plan, 12)]))
    expect(best!.surprise).toBeLessThan(0.01)
  })

  it('that nothing explains, or with the sun down, says so', () => {
    const far = explainShadeLine(plan, markOf([[ft(300), ft(300)]]))
    expect(far).toMatchObject({ ok: false, error: [{ code: 'shadeNotExplained' }] })
    const night = explainShadeLine(plan, { ...markOf([[1, 1]]), ms: Date.UTC(2026, 8, 10, 8) })
    expect(night).toMatchObject({ ok: false, error: [{ code: 'sunTooLow' }] })
  })
})
