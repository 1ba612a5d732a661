import { describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { wordProblem } from '../../core/problems/wordProblem'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { feetToMeters as ft, inchesToMeters as inch } from '../../core/units/convert'
import { printMeasures } from '../../core/units/printMeasures'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { limits } from '../../shared/limits'
import { doorCodes, type Finding, type Problem } from '../../shared/problem'

// biome-ignore lint/suspicious/noExplicitAny: an edit turns a good file into anything
type Loose = any

const good = serializeSite(lPatioAccepted())

/** The findings of the door, with those of the slabs and casters when it lets the site in. */
const findingsOf = (source: string | Uint8Array): readonly Finding[] => {
  const site = readSite(source)
  if (!site.ok) return site.error
  return [
    ...site.value.slabs.flatMap(slab => resolveSlab(slab).findings),
    ...site.value.casters.flatMap(caster => resolveCaster(caster).findings),
  ]
}

const tell = (source: string | Uint8Array) => {
  const findings = findingsOf(source)
  return {
    codes: findings.map(finding => finding.code),
    severities: findings.map(finding => finding.severity),
    fields: findings.map(finding => finding.field),
    ftin: findings.map(finding => wordProblem(finding, printMeasures('ftin')).message),
    metric: findings.map(finding => wordProblem(finding, printMeasures('metric')).message),
    problems: findings.map((finding): Problem => wordProblem(finding, printMeasures('ftin'))),
  }
}

const edited = (edit: (site: Loose) => void): string => {
  const site = JSON.parse(good) as Loose
  edit(site)
  return JSON.stringify(site)
}

const replaced = (pattern: RegExp, by: string): string => {
  const text = good.replace(pattern, by)
  if (text === good) throw new Error(`the sample has no ${pattern}`)
  return text
}

/** Many corners about the middle of the patio; ids from `from` on. */
const manyCorners = (count: number, from: number) => ({
  id: `r${from}`,
  vertices: Array.from({ length: count }, (_, i) => ({
    id: `v${from + 1 + i}`,
    at: [Math.cos(-i / count), Math.sin(-i / count)],
  })),
  edges: Array.from({ length: count }, (_, i) => ({ id: `e${from + 1 + count + i}` })),
})

const many = (count: number, row: object, kind: string) =>
  Array.from({ length: count }, (_, i) => ({ ...row, id: `${kind}${1000 + i}` }))

/** A PNG header (W3C PNG, third edition, §5.2 and §11.2.1) that claims 2,401 × 10 pixels. */
const wideHeader = Buffer.concat([
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
  Buffer.from([0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 0x09, 0x61, 0, 0, 0, 10, 8, 2, 0, 0, 0]),
]).toString('base64')

interface Row {
  readonly what: string
  readonly source: () => string | Uint8Array
  readonly code: Finding['code']
  readonly ftin: string
  /** The same as in feet where it names no measure. */
  readonly metric?: string
  readonly field?: string
}

const rows: readonly Row[] = [
  { what: 'an empty file', source: () => '', code: 'fileEmpty', ftin: 'The file is empty.' },
  { what: 'a file of blanks', source: () => ' \n\t\r\n', code: 'fileEmpty', ftin: 'The file is empty.' },
  {
    what: 'a binary file',
    source: () => Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    code: 'notText',
    ftin: 'The file is not text; it may be a picture or a program.',
  },
  {
    what: 'a text in another encoding',
    source: () => Uint8Array.from(Buffer.from(`\ufeff${good}`, 'utf16le')),
    code: 'notText',
    ftin: 'The file is not text; it may be a picture or a program.',
  },
  {
    what: 'a text with NUL characters',
    source: () => '{"format":"slabwright-site"\u0000}',
    code: 'notText',
    ftin: 'The file is not text; it may be a picture or a program.',
  },
  {
    what: 'JSON that breaks off',
    source: () => good.slice(0, 60),
    code: 'notJson',
    ftin: 'The file ends too early, at line 4, column 12.',
  },
  {
    what: 'JSON with a comma missing',
    source: () => replaced(/"version": 1,/, '"version": 1'),
    code: 'notJson',
    ftin: 'The file cannot be read at line 4, column 3, from “"id"” on.',
  },
  {
    what: 'a text that is no JSON',
    source: () => 'Dear foreman',
    code: 'notJson',
    ftin: 'The file cannot be read at line 1, column 1, from “Dear” on.',
  },
  {
    what: 'JSON of another kind',
    source: () => '[1, 2]',
    code: 'wrongFormat',
    ftin: 'This is not a Slabwright site file.',
  },
  {
    what: 'another format',
    source: () => '{"format": "field-notes", "version": 1}',
    code: 'wrongFormat',
    ftin: 'This is not a Slabwright site file; it calls itself “field-notes”.',
  },
  {
    what: 'a newer version',
    source: () => edited(site => Object.assign(site, { version: 7, somethingNew: true })),
    code: 'newerVersion',
    ftin: 'The file has version 7; this program reads up to version 1.',
  },
  {
    what: 'no version',
    source: () => edited(site => delete site.version),
    code: 'missingField',
    ftin: 'The site has no version.',
    field: '/version',
  },
  {
    what: 'a border without a width',
    source: () => edited(site => delete site.slabs[0].borders[0].widthM),
    code: 'missingField',
    ftin: 'Slab 1, border 1 has no width.',
    field: '/slabs/0/borders/0/widthM',
  },
  {
    what: 'a site without slabs',
    source: () => edited(site => delete site.slabs),
    code: 'missingField',
    ftin: 'The site has no list of slabs.',
    field: '/slabs',
  },
  {
    what: 'an unknown field of the site',
    source: () => edited(site => Object.assign(site, { owner: 'x' })),
    code: 'unknownField',
    ftin: 'The site has a field “owner” that a site file does not know.',
    field: '/owner',
  },
  {
    what: 'an unknown field of a border',
    source: () => edited(site => Object.assign(site.slabs[0].borders[0], { widht: 0.3 })),
    code: 'unknownField',
    ftin: 'Slab 1, border 1 has a field “widht” that a site file does not know.',
    field: '/slabs/0/borders/0/widht',
  },
  {
    what: 'an unknown setting',
    source: () => edited(site => Object.assign(site, { settings: { speed: 3 } })),
    code: 'unknownField',
    ftin: 'Settings has a field “speed” that a site file does not know.',
    field: '/settings/speed',
  },
  {
    what: 'a field that would be dropped in silence',
    source: () => replaced(/"points": \[/, '"settings": { "__proto__": 3 }, "points": ['),
    code: 'unknownField',
    ftin: 'Settings has a field “__proto__” that a site file does not know.',
    field: '/settings/__proto__',
  },
  {
    what: 'a text where a number belongs',
    source: () => edited(site => Object.assign(site.slabs[0], { thicknessM: '4 in' })),
    code: 'wrongType',
    ftin: 'Slab 1: the thickness must be a number, not the text “4 in”.',
    field: '/slabs/0/thicknessM',
  },
  {
    what: 'null where a group belongs',
    source: () => edited(site => Object.assign(site, { place: null })),
    code: 'wrongType',
    ftin: 'The place must be a group of fields, not empty.',
    field: '/place',
  },
  {
    what: 'half a hand',
    source: () => edited(site => Object.assign(site.crew, { hands: 4.5 })),
    code: 'wrongType',
    ftin: 'Crew: the number of hands must be a whole number, not 4.5.',
    field: '/crew/hands',
  },
  {
    what: 'a word that is no choice',
    source: () => edited(site => Object.assign(site, { units: 'cubits' })),
    code: 'notOneOf',
    ftin: 'The unit system is “cubits”, which is not a choice here.',
    field: '/units',
  },
  {
    what: 'an unknown shade caster',
    source: () => edited(site => Object.assign(site.casters[0], { kind: 'cloud' })),
    code: 'notOneOf',
    ftin: 'Shade caster 1: the kind is “cloud”, which is not a choice here.',
    field: '/casters/0/kind',
  },
  {
    what: 'NaN',
    source: () => replaced(/"thicknessM": [\d.]+/, '"thicknessM": NaN'),
    code: 'badNumber',
    ftin: 'Slab 1: the thickness is “NaN”, which is not a number to work with.',
    field: '/slabs/0/thicknessM',
  },
  {
    what: 'Infinity',
    source: () => replaced(/"latDeg": [\d.]+/, '"latDeg": -Infinity'),
    code: 'badNumber',
    ftin: 'Place: the latitude is “-Infinity”, which is not a number to work with.',
    field: '/place/latDeg',
  },
  {
    what: 'a number that overflows',
    source: () => replaced(/"thicknessM": [\d.]+/, '"thicknessM": 1e999'),
    code: 'badNumber',
    ftin: 'Slab 1: the thickness is “Infinity”, which is not a number to work with.',
    field: '/slabs/0/thicknessM',
  },
  {
    what: 'a negative width',
    source: () => edited(site => Object.assign(site.slabs[0].borders[0], { widthM: -inch(12) })),
    code: 'outOfRange',
    ftin: 'Slab 1, border 1: the width is −12″; it must be more than 0.',
    metric: 'Slab 1, border 1: the width is −305 mm; it must be more than 0.',
    field: '/slabs/0/borders/0/widthM',
  },
  {
    what: 'a negative base depth',
    source: () => edited(site => Object.assign(site.slabs[0], { baseDepthM: -inch(4) })),
    code: 'outOfRange',
    ftin: 'Slab 1: the base depth is −4″; it must be 0 or more.',
    metric: 'Slab 1: the base depth is −102 mm; it must be 0 or more.',
    field: '/slabs/0/baseDepthM',
  },
  {
    what: 'a slab of no thickness',
    source: () => edited(site => Object.assign(site.slabs[0], { thicknessM: 0 })),
    code: 'outOfRange',
    ftin: 'Slab 1: the thickness is 0″; it must be more than 0.',
    metric: 'Slab 1: the thickness is 0 mm; it must be more than 0.',
    field: '/slabs/0/thicknessM',
  },
  {
    what: 'a negative corner radius',
    source: () => edited(site => Object.assign(site.slabs[0].outline.vertices[2], { roundM: -ft(6) })),
    code: 'outOfRange',
    ftin: 'Slab 1, outline, corner 3: the corner radius is −6′ 0″; it must be more than 0.',
    metric: 'Slab 1, outline, corner 3: the corner radius is −1.829 m; it must be more than 0.',
    field: '/slabs/0/outline/vertices/2/roundM',
  },
  {
    what: 'latitude 91',
    source: () => edited(site => Object.assign(site.place, { latDeg: 91 })),
    code: 'outOfRange',
    ftin: 'Place: the latitude is 91°; it must be 90° or less.',
    field: '/place/latDeg',
  },
  {
    what: 'longitude −181',
    source: () => edited(site => Object.assign(site.place, { lonDeg: -181 })),
    code: 'outOfRange',
    ftin: 'Place: the longitude is −181°; it must be −180° or more.',
    field: '/place/lonDeg',
  },
  {
    what: 'capacity 0',
    source: () => edited(site => Object.assign(site.capacity, { capM2: 0 })),
    code: 'outOfRange',
    ftin: 'Capacity: the largest pour is 0 ft²; it must be more than 0.',
    metric: 'Capacity: the largest pour is 0 m²; it must be more than 0.',
    field: '/capacity/capM2',
  },
  {
    what: 'a negative setting',
    source: () => edited(site => Object.assign(site, { settings: { overRunSmallShare: -0.1 } })),
    code: 'outOfRange',
    ftin: 'Settings: “overRunSmallShare” is −0.1; it must be 0 or more.',
    field: '/settings/overRunSmallShare',
  },
  {
    what: 'an id counter below the ids',
    source: () => edited(site => Object.assign(site, { nextId: 3 })),
    code: 'outOfRange',
    ftin: 'The next number for ids is 3; it must be more than 54.',
    field: '/nextId',
  },
  {
    what: 'a line of one point',
    source: () => edited(site => Object.assign(site.casters[2], { line: [[0, 0]] })),
    code: 'outOfRange',
    ftin: 'Shade caster 3: the line has 1 entry; it needs at least 2.',
    field: '/casters/2/line',
  },
  {
    what: 'an unknown time zone',
    source: () => edited(site => Object.assign(site.place, { zone: 'Mars/Olympus' })),
    code: 'unknownZone',
    ftin: 'Place: the time zone “Mars/Olympus” is not known.',
    field: '/place/zone',
  },
  {
    what: 'an offset instead of a time zone',
    source: () => edited(site => Object.assign(site.place, { zone: '+05:00' })),
    code: 'unknownZone',
    ftin: 'Place: the time zone “+05:00” is not known.',
    field: '/place/zone',
  },
  {
    what: '31 February',
    source: () => edited(site => Object.assign(site.conditions, { date: '2026-02-31' })),
    code: 'badDate',
    ftin: 'Conditions: the date is “2026-02-31”, which is not in the calendar.',
    field: '/conditions/date',
  },
  {
    what: '29 February of a common year',
    source: () => edited(site => Object.assign(site.crew, { daysOff: ['2100-02-29'] })),
    code: 'badDate',
    ftin: 'Crew: day off 1 is “2100-02-29”, which is not in the calendar.',
    field: '/crew/daysOff/0',
  },
  {
    what: 'a date in words',
    source: () => edited(site => Object.assign(site.calendar, { finishBy: '31 Feb' })),
    code: 'badDate',
    ftin: 'Calendar: the finish date is “31 Feb”, which is not in the calendar.',
    field: '/calendar/finishBy',
  },
  {
    what: 'leaves from 31 April',
    source: () => edited(site => Object.assign(site.casters[1].leaves, { from: '04-31' })),
    code: 'badDate',
    ftin: 'Shade caster 2, days in leaf: the start is “04-31”, which is not in the calendar.',
    field: '/casters/1/leaves/from',
  },
  {
    what: 'a start at 25:00',
    source: () => edited(site => Object.assign(site.accepted[0].pours[0], { start: { time: '25:00' } })),
    code: 'badTime',
    ftin: 'Accepted pours 1, pour 1, start: the time is “25:00”, which is not a time of day.',
    field: '/accepted/0/pours/0/start/time',
  },
  {
    what: 'an id that is none',
    source: () => edited(site => Object.assign(site.points[0], { id: 'Back door' })),
    code: 'badId',
    ftin: 'Marked point 1: the id is “Back door”, which cannot be an id.',
    field: '/points/0/id',
  },
  {
    what: 'an id used twice',
    source: () => edited(site => Object.assign(site.casters[1], { id: site.casters[0].id })),
    code: 'repeatedId',
    ftin: 'The id “c38” stands twice; the second time at shade caster 2.',
    field: '/casters/1/id',
  },
  {
    what: 'a border on a ring that is not there',
    source: () => edited(site => Object.assign(site.slabs[0].borders[0], { pathId: 'r99' })),
    code: 'danglingId',
    ftin: 'Slab 1, border 1: there is no outline or opening “r99”.',
    field: '/slabs/0/borders/0/pathId',
  },
  {
    what: 'a border on an edge of another ring',
    source: () => edited(site => Object.assign(site.slabs[0].borders[0], { edges: ['e22'] })),
    code: 'danglingId',
    ftin: 'Slab 1, border 1, edge 1: there is no edge “e22”.',
    field: '/slabs/0/borders/0/edges/0',
  },
  {
    what: 'a finish that is not there',
    source: () => edited(site => Object.assign(site.slabs[0], { finishId: 'f99' })),
    code: 'danglingId',
    ftin: 'Slab 1: there is no finish “f99”.',
    field: '/slabs/0/finishId',
  },
  {
    what: 'a marked point on a slab that is not there',
    source: () => edited(site => Object.assign(site.points[1], { slabId: 's99' })),
    code: 'danglingId',
    ftin: 'Marked point 2: there is no slab “s99”.',
    field: '/points/1/slabId',
  },
  {
    what: 'existing work along an edge that is not there',
    source: () => edited(site => Object.assign(site.slabs[0], { againstExisting: ['e99'] })),
    code: 'danglingId',
    ftin: 'Slab 1, edge against existing work 1: there is no edge “e99”.',
    field: '/slabs/0/againstExisting/0',
  },
  {
    what: 'a ridge along an edge that is not there',
    source: () => edited(site => Object.assign(site.casters[0].roof, { ridgeAlongEdge: 'e99' })),
    code: 'danglingId',
    ftin: 'Shade caster 1, roof: there is no edge “e99”.',
    field: '/casters/0/roof/ridgeAlongEdge',
  },
  {
    what: 'a joint that ends on a joint that is not there',
    source: () => edited(site => Object.assign(site.accepted[0].joints[1].ends[1].anchor, { jointId: 'j99' })),
    code: 'danglingId',
    ftin: 'Accepted pours 1, joint 2, end 2, anchor: there is no joint “j99”.',
    field: '/accepted/0/joints/1/ends/1/anchor/jointId',
  },
  {
    what: 'a picture that is not there',
    source: () =>
      edited(site =>
        Object.assign(site.place, {
          picture: { assetId: 'plot', originAt: [0, 0], metersPerPixel: 0.02, turnDeg: 0, fade: 0.5 },
        }),
      ),
    code: 'danglingId',
    ftin: 'Place, picture under the plan: there is no picture “plot”.',
    field: '/place/picture/assetId',
  },
  {
    what: 'a bow-tie outline',
    source: () =>
      edited(site => {
        const [a, b] = site.slabs[0].outline.vertices
        Object.assign(site.slabs[0], { openings: [] })
        for (const vertex of site.slabs[0].outline.vertices) delete vertex.roundM
        ;[a.at, b.at] = [b.at, a.at]
      }),
    code: 'selfCrossing',
    ftin: 'The outline crosses or touches itself, so inside and outside cannot be told apart.',
  },
  {
    what: 'an opening outside the slab',
    source: () =>
      edited(site => {
        for (const vertex of site.slabs[0].openings[0].path.vertices) vertex.at[0] += 30
      }),
    code: 'openingOutside',
    ftin: 'Round planter lies outside the slab.',
  },
  {
    what: 'an opening over the edge',
    source: () =>
      edited(site => {
        for (const vertex of site.slabs[0].openings[0].path.vertices) vertex.at[0] += ft(14)
      }),
    code: 'openingOutside',
    ftin: 'Round planter reaches 6.3 ft² beyond the slab’s edge.',
    metric: 'Round planter reaches 0.58 m² beyond the slab’s edge.',
  },
  {
    what: 'a border wider than the slab',
    source: () => edited(site => Object.assign(site.slabs[0].borders[0], { edges: 'all', widthM: ft(30) })),
    code: 'borderTooWide',
    ftin: 'A border of 30′ 0″ is wider than the slab here; no field is left inside it. The border is left out.',
    metric: 'A border of 9.144 m is wider than the slab here; no field is left inside it. The border is left out.',
  },
  {
    what: 'a house of height 0',
    source: () => edited(site => Object.assign(site.casters[0], { eaveM: 0 })),
    code: 'noHeight',
    ftin: 'The building “House” has no height: its top at 0″ is not above its bottom at 0″, so it throws no shade.',
    metric:
      'The building “House” has no height: its top at 0.00 m is not above its bottom at 0.00 m, so it throws no shade.',
  },
  {
    what: 'a fence of height 0',
    source: () => edited(site => Object.assign(site.casters[2], { baseM: ft(6) })),
    code: 'noHeight',
    ftin: 'The wall or fence “Fence” has no height: its top at 6′ 0″ is not above its bottom at 6′ 0″, so it throws no shade.',
    metric:
      'The wall or fence “Fence” has no height: its top at 1.829 m is not above its bottom at 1.829 m, so it throws no shade.',
  },
  {
    what: 'a file of more than 64 MiB',
    source: () => new Uint8Array(limits.fileBytes + 1),
    code: 'fileTooLarge',
    ftin: 'The file takes 67,108,865 bytes; the most is 67,108,864.',
  },
  {
    what: 'a ring of 5,001 corners',
    source: () => edited(site => Object.assign(site.slabs[0], { outline: manyCorners(5001, 1000) })),
    code: 'limitExceeded',
    ftin: 'One outline or line has 5,001 corners; the most is 5,000.',
  },
  {
    what: '20,001 corners and more in all',
    source: () =>
      edited(site => {
        for (let i = 0; i < 5; i++)
          site.slabs[0].openings.push({ id: `o${900 + i}`, kind: 'other', path: manyCorners(4000, 1000 + 9000 * i) })
      }),
    code: 'limitExceeded',
    ftin: 'The site has 20,016 corners in all; the most is 20,000.',
  },
  {
    what: '2,001 casters',
    source: () => edited(site => Object.assign(site, { casters: many(2001, site.casters[1], 'c') })),
    code: 'limitExceeded',
    ftin: 'The site has 2,001 shade casters; the most is 2,000.',
    field: '/casters',
  },
  {
    what: '201 pours',
    source: () => edited(site => Object.assign(site.accepted[0], { pours: many(201, site.accepted[0].pours[0], 'n') })),
    code: 'limitExceeded',
    ftin: 'The site has 201 accepted pours; the most is 200.',
    field: '/accepted',
  },
  {
    what: 'a drawing of more than 2 km',
    source: () => edited(site => Object.assign(site.points[0], { at: [2010, 0] })),
    code: 'limitExceeded',
    ftin: 'The drawing is 6,607′ 5⅞″ across; the most is 6,561′ 8⅛″.',
    metric: 'The drawing is 2013.962 m across; the most is 2000.00 m.',
  },
  {
    what: 'a list of 20,001 entries',
    source: () => edited(site => Object.assign(site, { points: many(20_001, site.points[0], 'p') })),
    code: 'limitExceeded',
    ftin: 'One list has 20,001 entries; the most is 20,000.',
  },
  {
    what: 'a picture of more than 3 MiB',
    source: () =>
      edited(site => Object.assign(site, { assets: { plot: { kind: 'image/png', base64: 'A'.repeat(4_194_308) } } })),
    code: 'limitExceeded',
    ftin: 'A picture takes 3,145,731 bytes; the most is 3,145,728.',
    field: '/assets/plot',
  },
  {
    what: 'a picture of 2,401 pixels',
    source: () => edited(site => Object.assign(site, { assets: { plot: { kind: 'image/png', base64: wideHeader } } })),
    code: 'limitExceeded',
    ftin: 'A picture is 2,401 pixels across; the most is 2,400.',
    field: '/assets/plot',
  },
]

describe('bad input is refused at the door in one sentence of the trade', () => {
  it.each(rows)('$what', ({ source, code, ftin, metric, field }) => {
    const told = tell(source())
    expect(told.codes).toEqual([code])
    expect(told.severities).toEqual(['stop'])
    expect(told.ftin).toEqual([ftin])
    expect(told.metric).toEqual([metric ?? ftin])
    if (doorCodes.some(own => own === code)) expect(told.fields).toEqual([field])
  })

  it('has a row for each limit', () => {
    const named = rows.flatMap(row => findingsOf(row.source()).map(finding => finding.values.limit))
    const expected = Object.keys(limits).filter(limit => limit !== 'fileBytes')
    expect(new Set(named.filter(limit => limit !== undefined))).toEqual(new Set(expected))
  })

  it('says what is wrong everywhere, not only at the first place', () => {
    const told = tell(
      edited(site => {
        delete site.slabs[0].borders[0].widthM
        site.place.latDeg = 91
        site.colour = 'red'
      }),
    )
    expect(told.ftin).toEqual([
      'Place: the latitude is 91°; it must be 90° or less.',
      'Slab 1, border 1 has no width.',
      'The site has a field “colour” that a site file does not know.',
    ])
  })

  it('counts what it does not list', () => {
    const told = tell(edited(site => Object.assign(site, { points: Array.from({ length: 80 }, () => 3) })))
    expect(told.codes).toHaveLength(51)
    expect(told.ftin.at(-1)).toBe('The file has 30 more faults like these.')
  })

  it('tells what to do about each', () => {
    const silent = new Set(['wrongType', 'outOfRange'])
    for (const row of rows)
      for (const { code, hint } of tell(row.source()).problems)
        if (!silent.has(code)) expect(hint).toMatch(/^[A-Z].*\.$/)
  })
})
