/** Pours that are more than the crew takes on their own day, split by what that day holds. Invented hours and areas. */
import { describe, expect, it } from 'vitest'
import type { EditResult } from '../../core/document/commands/editSite'
import { invariants } from '../../core/document/invariants'
import { dayHolds } from '../../core/plan/dayHolds'
import { lockPour, redatePour } from '../../core/pours/editing/changePour'
import { splitForDay } from '../../core/pours/editing/splitForDay'
import { repairPours } from '../../core/pours/replan/repairPours'
import type { Site } from '../../shared/document/site'
import { acceptedSite, facesOf, ftM } from './acceptedSlab'

const ft2M2 = ftM * ftM

const must = (result: EditResult): Site => {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** A 60 × 30 ft slab in two pours of 900 ft², the left one on a day and from a first truck of its own. */
const dated = (): Site => {
  const site = acceptedSite([
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ])
  return must(redatePour(site, left(site).id, { date: '2026-07-24', start: { time: '11:00' } }))
}

const left = (site: Site) => site.accepted[0]!.pours.toSorted((a, b) => a.seed[0] - b.seed[0])[0]!
const areasFt2 = (site: Site) =>
  new Map(facesOf(site).faces.map(({ pourId, areaM2 }) => [pourId, areaM2 / ft2M2] as const))

describe('a pour split for its day', () => {
  it.each([2, 3, 5])('into %i: the largest keeps number, day and first truck, the rest of the slab stays', count => {
    const site = dated()
    const pour = left(site)
    const [, other] = site.accepted[0]!.pours.toSorted((a, b) => a.seed[0] - b.seed[0])
    const split = must(splitForDay(site, pour.id, (900 / count + 5) * ft2M2))
    expect(invariants(split)).toEqual([])
    const { pours, joints } = split.accepted[0]!
    expect(pours).toHaveLength(1 + count)
    expect(pours.find(({ id }) => id === pour.id)).toMatchObject({
      number: pour.number,
      date: '2026-07-24',
      start: { time: '11:00' },
    })
    expect(pours.find(({ id }) => id === other!.id)).toEqual(other)
    const fresh = pours.filter(({ id }) => !site.accepted[0]!.pours.some(own => own.id === id))
    for (const { date, start } of fresh) expect({ date, start }).toEqual({ date: undefined, start: undefined })
    expect(new Set(pours.map(({ number }) => number)).size).toBe(pours.length)
    expect(joints).toEqual(expect.arrayContaining([...site.accepted[0]!.joints]))
    const areas = areasFt2(split)
    expect(areas.get(other!.id)).toBeCloseTo(900, 6)
    for (const { id } of [pour, ...fresh]) expect(areas.get(id)!).toBeLessThanOrEqual(900 / count + 5 + 1e-6)
    expect([pour, ...fresh].reduce((sum, { id }) => sum + areas.get(id)!, 0)).toBeCloseTo(900, 6)
    expect(areas.get(pour.id)).toBeCloseTo(Math.max(...[pour, ...fresh].map(({ id }) => areas.get(id)!)), 6)
  })

  it('is refused for a locked pour, and where its day holds no pour', () => {
    const site = dated()
    const { id } = left(site)
    const locked = must(lockPour(site, id, { shape: true }))
    expect(splitForDay(locked, id, 450 * ft2M2)).toMatchObject({ ok: false, error: [{ code: 'pourLocked' }] })
    expect(splitForDay(site, id, 10 * ft2M2)).toMatchObject({ ok: false, error: [{ code: 'capacityTooSmall' }] })
  })
})

describe('a repair of pours over what their own day holds', () => {
  const repairOf = (site: Site, holdsFt2: number) => {
    const { slabId, part } = site.accepted[0]!
    return repairPours(site, slabId, part, null, undefined, new Map([[left(site).id, holdsFt2 * ft2M2]]))
  }

  it('splits each by that and says why', () => {
    const site = dated()
    const repair = repairOf(site, 480)
    if (!repair.ok) throw new Error(JSON.stringify(repair.error))
    const { deeds, findings } = repair.value
    expect(deeds).toEqual([
      {
        does: 'pourSplit',
        number: left(site).number,
        areaM2: expect.closeTo(900 * ft2M2, 6),
        dayM2: 480 * ft2M2,
        others: ['3'],
      },
    ])
    expect(findings).toEqual([])
    expect(facesOf(repair.value.site).faces).toHaveLength(3)
  })

  it('is none where the day holds them, or where they are locked', () => {
    expect(repairOf(dated(), 900.001)).toMatchObject({ ok: false, error: [{ code: 'nothingToPlan' }] })
    const locked = must(lockPour(dated(), left(dated()).id, { shape: true }))
    expect(repairOf(locked, 480)).toMatchObject({ ok: false, error: [{ code: 'nothingToPlan' }] })
  })

  it('takes up the pours told to be over, by the figure of their own day, and none of which that is no pour', () => {
    const capacity = (crewM2: number) =>
      ({ capacityM2: crewM2, rule: 'crewAndWeather', userM2: null, practiceM2: 84, crewM2 }) as const
    const days = [
      { pourId: 'a', capacity: capacity(40) },
      { pourId: 'b', capacity: capacity(45) },
      { pourId: 'c', capacity: capacity(5) },
    ]
    const told = ['a', 'c'].map(entityId => ({ code: 'overCrewCapacity' as const, at: { entityId } }))
    expect([...dayHolds(told, days, undefined)]).toEqual([['a', 40]])
  })
})
