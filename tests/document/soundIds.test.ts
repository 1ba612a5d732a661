import { freeze, produce } from 'immer'
import { describe, expect, it } from 'vitest'
import { checkSite } from '../../core/document/checkSite'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'

/** The same faults whether every entity is looked at for the first time or was known from an earlier edit. */
const told = (site: Site) => {
  const fresh = checkSite(structuredClone(site))
  expect(checkSite(site)).toEqual(fresh)
  return fresh.map(({ code, field }) => `${code} ${field}`)
}

describe('ids and dates after an edit of a site that cannot change', () => {
  const court = freeze(schoolCourt(), true)

  it('are sound in a sound site', () => {
    expect(told(court)).toEqual([])
  })

  it('are told where an entity takes the id of another one that stayed', () => {
    const twin = produce(court, draft => {
      draft.casters[0]!.id = court.slabs[0]!.id
    })
    expect(told(twin)).toEqual(['repeatedId /casters/0/id'])
  })

  it('are told where the counter fell behind what stayed', () => {
    const behind = produce(court, draft => {
      draft.nextId = 1
    })
    expect(told(behind)).toEqual(['outOfRange /nextId'])
  })

  it('are told where a date is none, and are sound again once it is mended', () => {
    const wrong = produce(court, draft => {
      draft.crew!.daysOff = ['2026-02-30']
    })
    expect(told(wrong)).toEqual(['badDate /crew/daysOff/0'])
    expect(
      told(
        produce(wrong, draft => {
          draft.crew!.daysOff = ['2026-02-28']
        }),
      ),
    ).toEqual([])
  })
})
