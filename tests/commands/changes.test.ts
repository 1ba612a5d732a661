import { describe, expect, it } from 'vitest'
import { addWay, setChuteReach } from '../../core/document/commands/addAccess'
import {
  changeBand,
  changeFinish,
  changeInset,
  changeMarkedPoint,
  changeObstacle,
  changeOpening,
  changeSteps,
  changeWay,
} from '../../core/document/commands/changeEntity'
import { extendLine } from '../../core/document/commands/extendLine'
import {
  removePicture,
  setCalendar,
  setConditions,
  setCrew,
  setMix,
  setName,
  setPicture,
  setUnits,
} from '../../core/document/commands/setSite'
import { addBand, addInset, addSteps, setBaseReadings } from '../../core/document/commands/slabParts'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { feetToMeters as ft } from '../../core/units/convert'
import { lPatio } from '../../samples/sites/lPatio'
import { chain, done, faultsOf, refusal } from './edit'

const site = lPatio()
const slab = site.slabs[0]!
const finishId = slab.finishId

describe('what is drawn on a slab', () => {
  const drawn = chain(
    site,
    addBand(slab.id, {
      line: { corners: [{ at: [ft(10), ft(5)] }, { at: [ft(20), ft(5)] }] },
      widthM: 0.3,
      finishId,
      placed: 'withField',
    }),
    addInset(slab.id, {
      shape: { kind: 'circle', center: [ft(40), ft(10)], radiusM: 1 },
      finishId,
      placed: 'withField',
    }),
    addSteps(slab.id, {
      edgeId: slab.outline.edges[1]!.id,
      fromT: 0.2,
      widthM: 1,
      risers: 2,
      riserM: 0.15,
      treadM: 0.3,
    }),
  )
  const [band, inset, steps] = [drawn.slabs[0]!.bands[0]!, drawn.slabs[0]!.insets[0]!, drawn.slabs[0]!.steps[0]!]

  it('changes its sizes, names and kinds', () => {
    const changed = chain(
      drawn,
      changeBand(band.id, { widthM: 0.5, name: 'Walk' }),
      changeInset(inset.id, { name: 'Compass', placed: 'before' }),
      changeSteps(steps.id, { risers: 3 }),
      changeOpening(slab.openings[0]!.id, { kind: 'pool', pool: 'cantilevered', name: undefined }),
      changeObstacle(slab.obstacles[0]!.id, { kind: 'post' }),
    )
    const after = changed.slabs[0]!
    expect(resolveSlab(after).bands[0]!.areaM2).toBeCloseTo(0.5 * ft(10), 9)
    expect(after.insets[0]).toMatchObject({ name: 'Compass', placed: 'before' })
    expect(after.steps[0]!.risers).toBe(3)
    expect(after.openings[0]).toMatchObject({ kind: 'pool', pool: 'cantilevered' })
    expect('name' in after.openings[0]!).toBe(false)
    expect(after.obstacles[0]!.kind).toBe('post')
    expect(faultsOf(changed)).toEqual([])
  })

  it('keeps an open line open when it grows at either end', () => {
    const longer = chain(
      drawn,
      extendLine(band.line.id, 'end', { at: [ft(25), ft(5)] }),
      extendLine(band.line.id, 'start', { at: [ft(5), ft(5)] }),
    )
    expect(resolveSlab(longer.slabs[0]!).bands[0]!.lengthM).toBeCloseTo(ft(20), 9)
    expect(faultsOf(longer)).toEqual([])
    expect(refusal(extendLine(slab.outline.id, 'end', { at: [0, 0] })(site))).toBe('entityMissing')
  })

  it('takes string-line readings of its base, and gives them up', () => {
    const read = done(setBaseReadings(slab.id, [{ at: [1, 1], depthM: 0.1 }])(site))
    expect(read.slabs[0]!.baseDepths).toEqual({ points: [{ at: [1, 1], depthM: 0.1 }] })
    expect('baseDepths' in done(setBaseReadings(slab.id, [])(read)).slabs[0]!).toBe(false)
    expect(refusal(setBaseReadings(slab.id, [{ at: [1, 1], depthM: 0 }])(site))).toBe('outOfRange')
  })
})

describe('what holds for the whole site', () => {
  it('is set, refused when it cannot be, and leaves the drawing untouched', () => {
    const changed = chain(
      site,
      setName('Alder Court, second draft'),
      setUnits('metric'),
      setCrew({ hands: 4, experience: 'seasoned', crews: 1, daysOff: ['2026-07-04'] }),
      setMix({ sacksPerYd3: 6, minutesFromPlant: 25 }),
      setCalendar({ plantHours: [], noiseHours: [], weatherDays: 1 }),
      setConditions({ kind: 'day', date: '2026-07-21', highC: 30, lowC: 15, dewPointC: 9, windMs: 2, sky: 'some' }),
      changeFinish(finishId, { patternDeg: 45 }),
      changeMarkedPoint(site.points[0]!.id, { at: [2, 2] }),
      changeWay(site.access!.ways[0]!.id, { widthM: 1.2 }),
      setChuteReach(5),
    )
    expect(changed.slabs).toBe(site.slabs)
    expect(changed.casters).toBe(site.casters)
    expect(changed).toMatchObject({ name: 'Alder Court, second draft', units: 'metric', access: { chuteReachM: 5 } })
    expect(changed.finishes[0]!.patternDeg).toBe(45)
    expect(changed.points[0]!.at).toEqual([2, 2])
    expect(changed.access!.ways[0]!.widthM).toBe(1.2)
    expect('mix' in done(setMix(undefined)(changed))).toBe(false)
    expect(refusal(setCrew({ hands: 0, experience: 'new', crews: 1, daysOff: [] })(site))).toBe('outOfRange')
    expect(refusal(setCrew({ hands: 1, experience: 'new', crews: 1, daysOff: ['2026-02-30'] })(site))).toBe('badDate')
    expect(
      refusal(addWay({ at: [0, 0], widthM: 1, open: [{ weekdays: [8], from: '07:00', to: '08:00' }] })(site)),
    ).toBe('outOfRange')
  })

  it('keeps a picture with its data, and drops both together', () => {
    const picture = { assetId: 'a1', originAt: [0, 0] as const, metersPerPixel: 0.02, turnDeg: 0, fade: 0.5 }
    const pictured = done(setPicture(picture, { kind: 'image/png', base64: 'iVBORw0KGgo=' })(site))
    expect(faultsOf(pictured)).toEqual([])
    expect(pictured.place.picture).toEqual(picture)
    expect(done(removePicture(pictured))).toEqual(site)
    expect(done(removePicture(site))).toBe(site)
    // The one it took the place of goes out of the file with it.
    const other = { ...picture, assetId: 'b'.repeat(64) }
    const replaced = done(setPicture(other, { kind: 'image/jpeg', base64: '/9j/' })(pictured))
    expect(Object.keys(replaced.assets!)).toEqual([other.assetId])
    expect(Object.keys(done(setPicture({ ...picture, fade: 0.1 })(pictured)).assets!)).toEqual([picture.assetId])
    expect(refusal(setPicture(picture)(site))).toBe('danglingId')
  })
})
