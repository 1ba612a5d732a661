import { describe, expect, it } from 'vitest'
import { describeChanges } from '../../core/document/describeChanges'
import { diffSites } from '../../core/document/diffSites'
import { feetToMeters as ft, inchesToMeters as inch } from '../../core/units/convert'
import { printMeasures } from '../../core/units/printMeasures'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { Site } from '../../shared/document/site'

type Draft<T> = { -readonly [K in keyof T]: Draft<T[K]> }

/** The lines that tell the edit apart from the sample, in both unit systems. */
const tell = (edit: (site: Draft<Site>) => void): { ftin: readonly string[]; metric: readonly string[] } => {
  const before = lPatioAccepted()
  const after = structuredClone(before)
  edit(after as Draft<Site>)
  const changes = diffSites(before, after)
  return {
    ftin: describeChanges(changes, before, after, printMeasures('ftin')),
    metric: describeChanges(changes, before, after, printMeasures('metric')),
  }
}

describe('the difference between two saves', () => {
  it('is empty for equal sites', () => {
    expect(diffSites(lPatioAccepted(), lPatioAccepted())).toEqual([])
  })

  it('tells a border width in the units of the site', () => {
    const lines = tell(site => {
      site.slabs[0]!.borders[0]!.widthM = inch(18)
    })
    expect(lines.ftin).toEqual(['Patio, 12 in border: width 12″ → 18″'])
    expect(lines.metric).toEqual(['Patio, 12 in border: width 305 mm → 457 mm'])
  })

  it.each<[string, (site: Draft<Site>) => void, readonly string[]]>([
    [
      'a moved corner',
      site => {
        site.slabs[0]!.outline.vertices[1]!.at = [ft(52), 0]
      },
      ['Patio, outline, corner 2: position (50′ 0″, 0″) → (52′ 0″, 0″)'],
    ],
    [
      'a new radius',
      site => {
        site.slabs[0]!.outline.vertices[1]!.roundM = ft(2)
      },
      ['Patio, outline, corner 2: corner radius 2′ 0″ added'],
    ],
    [
      'a caster that went and one that grew',
      site => {
        site.casters.splice(1, 1)
        const [fence] = site.casters.slice(-1)
        if (fence?.kind === 'wall') fence.topM = ft(8)
      },
      ['Tree Maple removed', 'Wall Fence: top elevation 6′ 0″ → 8′ 0″'],
    ],
    [
      'a border without a name, an opening and a border around it',
      site => {
        const [slab] = site.slabs
        if (slab === undefined) return
        const [border] = slab.borders
        delete border!.name
        slab.borders.push({ ...border!, id: 'b900', pathId: slab.openings[0]!.path.id, edges: 'all' })
        slab.openings[0]!.kind = 'other'
      },
      [
        'Patio, 12 in border: name 12 in border removed',
        'Patio, border around Round planter added',
        'Patio, opening Round planter: kind planter → other',
      ],
    ],
    [
      'another finish, by name',
      site => {
        site.slabs[0]!.finishId = site.finishes[1]!.id
      },
      ['Patio: finish Ashlar, sandstone → Running bond, walnut'],
    ],
    [
      'a roof of another form',
      site => {
        const [house] = site.casters
        if (house?.kind === 'building') house.roof = { form: 'flat' }
      },
      ['Building House: roof gable → flat'],
    ],
    [
      'another capacity, site name and day off',
      site => {
        site.capacity!.capM2 = 83.612736
        site.name = 'Alder Court'
        site.crew!.daysOff = ['2026-07-24']
      },
      [
        'Capacity: largest pour 800 ft² → 900 ft²',
        'Crew: list of days off none → 2026-07-24',
        'Name Alder Court patio, three pours → Alder Court',
      ],
    ],
    [
      'pours in another order and one with another date',
      site => {
        site.accepted[0]!.pours.reverse()
        site.accepted[0]!.pours[2]!.date = '2026-07-24'
      },
      [
        'Accepted pours of Patio: list of pours in another order',
        'Accepted pours of Patio, pour 1: date 2026-07-21 → 2026-07-24',
      ],
    ],
    [
      'a setting',
      site => {
        site.settings = { overRunLargeShare: 0.07 }
      },
      ['Settings added'],
    ],
    [
      'nothing but the counter',
      site => {
        site.nextId = 1000
      },
      [],
    ],
  ])('tells of %s', (_, edit, lines) => {
    expect(tell(edit).ftin).toEqual(lines)
  })
})
