import { isDeepStrictEqual } from 'node:util'
import { Resvg } from '@resvg/resvg-js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { isCalendarDate, isMonthDay } from '../../core/document/calendarDate'
import { decodeUtf8 } from '../../core/document/decodeUtf8'
import { findJsonFault } from '../../core/document/findJsonFault'
import { invariants } from '../../core/document/invariants'
import { fromPointer, toPointer, valueAt } from '../../core/document/jsonPointer'
import { pictureSize } from '../../core/document/pictureSize'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { fieldWord } from '../../core/problems/fieldWords'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import { sampleSites } from '../../samples/sampleSites'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { Site } from '../../shared/document/site'
import { defaults } from '../../shared/settings'

const good = serializeSite(lPatioAccepted())

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('finding the fault in a text that is not JSON', () => {
  it('agrees with JSON.parse on every text with one sign changed, dropped or put in', () => {
    const sample = '{"a": [1, -2.5e3, "x\\u00e9\\n", true], "b": {"": null}, "c": []}'
    const signs = fc.constantFrom(...'{}[]",:0-+.eE\\tnu \n\u0001x'.split(''))
    fc.assert(
      fc.property(fc.nat(sample.length), fc.nat(1), fc.option(signs, { nil: '' }), (at, cut, sign) => {
        const text = sample.slice(0, at) + sign + sample.slice(at + cut)
        expect(findJsonFault(text) === undefined, text).toBe(isJson(text))
      }),
      { seed: 8259, numRuns: 3000 },
    )
  })

  it('agrees with JSON.parse on any text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.json({ depthSize: 'large' })), text => {
        expect(findJsonFault(text) === undefined, text).toBe(isJson(text))
      }),
      { seed: 8260, numRuns: 1000 },
    )
  })

  it.each([
    ['{\n  "a": 1,\n  "b": NaN\n}', 3, 8, 'NaN', '/b', true],
    ['{"a": [0, [1, +2]]}', 1, 15, '+2', '/a/1/1', true],
    ['[1, 2', 1, 6, '', '/1', false],
    ['{"a" 1}', 1, 6, '1', '/a', false],
    ['["a\tb"]', 1, 4, 'U+0009', '/0', false],
    ['{"a~b": {"c/d": .}}', 1, 17, '.', '/a~0b/c~1d', false],
  ])('finds the place in %j', (text, line, column, found, field, notANumber) => {
    expect(findJsonFault(text)).toEqual({ line, column, found, field, notANumber })
  })

  it('takes a text that nests without end as damaged, and does not overflow', () => {
    expect(findJsonFault('['.repeat(1_000_000))).toMatchObject({ line: 1, column: 1001, found: '[' })
  })
})

describe('decoding UTF-8', () => {
  it('agrees with the host on any bytes', () => {
    const decoder = new TextDecoder('utf-8', { fatal: true })
    const host = (bytes: Uint8Array) => {
      try {
        return decoder.decode(bytes)
      } catch {
        return undefined
      }
    }
    const lumps = fc.constantFrom<number[]>(
      [0x41],
      [0xc3, 0xa9],
      [0xe2, 0x80, 0xb2],
      [0xf0, 0x9f, 0x8c, 0xb3],
      [0xed, 0xa0, 0x80],
      [0xe0, 0x80, 0x80],
      [0xf4, 0x90, 0x80, 0x80],
      [0xc0, 0x80],
      [0xef, 0xbb, 0xbf],
      [0x80],
      [0xff],
    )
    const bytes = fc.oneof(
      fc.uint8Array(),
      fc.array(lumps, { maxLength: 6 }).map(parts => Uint8Array.from(parts.flat())),
    )
    fc.assert(
      fc.property(bytes, sample => {
        expect(decodeUtf8(sample)).toBe(host(sample))
      }),
      { seed: 3629, numRuns: 3000 },
    )
  })

  it('joins its pieces without a seam', () => {
    const text = `${'a'.repeat(8190)}🌳${'é'.repeat(9000)}′`
    expect(decodeUtf8(new TextEncoder().encode(text))).toBe(text)
  })
})

describe('the size of a picture under the plan', () => {
  it('is read from a PNG that a library wrote', () => {
    const png = new Resvg('<svg xmlns="http://www.w3.org/2000/svg" width="321" height="45"/>').render().asPng()
    expect(pictureSize(png.toString('base64'))).toEqual({ width: 321, height: 45 })
  })

  // Start of image, an APP0 segment, an escaped fill byte and a frame header: ITU-T T.81 (09/92), §B.1.1.2, §B.2.2.
  it('is read from the frame header of a JPEG, behind other segments', () => {
    const bytes = [
      0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xff, 0xc2, 0, 11, 8, 0x09, 0x60, 0x00, 0x40, 1, 1, 0x11, 0,
    ]
    expect(pictureSize(Buffer.from(bytes).toString('base64'))).toEqual({ width: 64, height: 2400 })
  })

  it('is not made up for anything else', () => {
    expect(pictureSize('')).toBeUndefined()
    expect(pictureSize('R0lGODlhAQABAAAAACw=')).toBeUndefined()
    expect(pictureSize('/9j/4A==')).toBeUndefined()
  })
})

describe('dates', () => {
  // The Gregorian rule as in ISO 8601-1:2019, 3.1.1.21 and 4.2.1: 2000 is a leap year, 1900 and 2100 are not.
  it.each([
    ['2000-02-29', true],
    ['1900-02-29', false],
    ['2100-02-29', false],
    ['2028-02-29', true],
    ['2026-04-30', true],
    ['2026-04-31', false],
    ['2026-00-10', false],
    ['2026-13-01', false],
    ['2026-12-00', false],
  ])('%s is in the calendar: %s', (date, real) => {
    expect(isCalendarDate(date)).toBe(real)
  })

  it('agrees with the host on every day of 800 years', () => {
    for (let year = 1800; year < 2600; year++)
      for (let month = 1; month <= 12; month++)
        for (const day of [28, 29, 30, 31]) {
          const text = `${year}-${String(month).padStart(2, '0')}-${day}`
          expect(isCalendarDate(text), text).toBe(new Date(Date.UTC(year, month - 1, day)).getUTCDate() === day)
        }
  })

  it('lets a tree leaf out on 29 February', () => {
    expect(isMonthDay('02-29')).toBe(true)
    expect(isMonthDay('02-30')).toBe(false)
  })
})

describe('JSON pointers', () => {
  // P. Bryan, K. Zyp, M. Nottingham (eds.), JavaScript Object Notation (JSON) Pointer, RFC 6901 (2013), section 5.
  it.each([
    ['/foo/0', 'bar'],
    ['/', 0],
    ['/a~1b', 1],
    ['/c%d', 2],
    ['/e^f', 3],
    ['/g|h', 4],
    ['/i\\j', 5],
    ['/k"l', 6],
    ['/ ', 7],
    ['/m~0n', 8],
  ])('%s leads where RFC 6901 says', (pointer, value) => {
    const document = {
      foo: ['bar', 'baz'],
      '': 0,
      'a/b': 1,
      'c%d': 2,
      'e^f': 3,
      'g|h': 4,
      'i\\j': 5,
      'k"l': 6,
      ' ': 7,
      'm~n': 8,
    }
    expect(valueAt(document, fromPointer(pointer))).toBe(value)
    expect(toPointer(fromPointer(pointer))).toBe(pointer)
  })
})

describe('saving and opening', () => {
  it.each(Object.entries(sampleSites()))('%s comes back byte for byte', (_, site) => {
    const text = serializeSite(site)
    const read = readSite(text)
    if (!read.ok) throw new Error(JSON.stringify(read.error))
    expect(read.value).toEqual(site)
    expect(serializeSite(read.value)).toBe(text)
    const bytes = readSite(new TextEncoder().encode(`\ufeff${text}`))
    expect(bytes).toEqual(read)
  })

  it('keeps any name, any number and any order of keys', () => {
    const numbers = fc.double({ min: -900, max: 900, noNaN: true })
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), numbers, numbers, fc.nat(1000), (name, x, y, turn) => {
        const site = lPatioAccepted()
        const edited: Site = { ...site, name, points: [{ ...site.points[0]!, at: [x, y] }] }
        const keys = Object.keys(edited)
        const turned = [...keys.slice(turn % keys.length), ...keys.slice(0, turn % keys.length)]
        const shuffled = Object.fromEntries(turned.map(key => [key, edited[key as keyof Site]])) as Site
        const text = serializeSite(edited)
        expect(serializeSite(shuffled)).toBe(text)
        const read = readSite(text)
        if (!read.ok) throw new Error(JSON.stringify(read.error))
        expect(serializeSite(read.value)).toBe(text)
        expect(read.value.name).toBe(name)
        expect(read.value.points[0]?.at).toEqual([x === 0 ? 0 : x, y === 0 ? 0 : y])
      }),
      { seed: 17, numRuns: 150 },
    )
  })

  it('writes pictures last, a line each, and settings in order', () => {
    const base64 = 'iVBORw0KGgo='
    const site: Site = {
      ...lPatioAccepted(),
      settings: { shadeStepMin: 5, capM2: 80 },
      assets: { b9: { kind: 'image/png', base64 }, a1: { kind: 'image/jpeg', base64 } },
    }
    const lines = serializeSite(site).split('\n')
    expect(lines.slice(-6)).toEqual([
      '  "assets": {',
      `    "a1": { "base64": "${base64}", "kind": "image/jpeg" },`,
      `    "b9": { "base64": "${base64}", "kind": "image/png" }`,
      '  }',
      '}',
      '',
    ])
    expect(lines).toContain('  "settings": { "capM2": 80, "shadeStepMin": 5 },')
    const read = readSite(serializeSite(site))
    expect(read.ok && serializeSite(read.value)).toBe(serializeSite(site))
  })

  it('never writes −0, and throws on a number that is not finite rather than lose it', () => {
    const site = lPatioAccepted()
    expect(serializeSite({ ...site, place: { ...site.place, northDeg: -0 } })).toContain('"northDeg": 0,')
    expect(() => serializeSite({ ...site, place: { ...site.place, northDeg: Number.NaN } })).toThrow(/NaN/)
  })

  it('changes nothing it is given', () => {
    const site = lPatioAccepted()
    const copy = structuredClone(site)
    serializeSite(site)
    invariants(site)
    expect(site).toEqual(copy)
  })
})

describe('the door', () => {
  it('never throws, and words every finding, on a good file damaged in one place', () => {
    const print = printMeasures('ftin')
    const lumps = fc.constantFrom('"', ',', '0', '-', '1e999', 'null', '[]', '{}', '"x"', 'é', '\n', ' ', 'true', '')
    fc.assert(
      fc.property(fc.nat(good.length), fc.nat(12), lumps, (at, cut, lump) => {
        const read = readSite(good.slice(0, at) + lump + good.slice(at + cut))
        if (read.ok) expect(invariants(read.value)).toEqual([])
        else {
          expect(read.error.length).toBeGreaterThan(0)
          for (const finding of read.error) expect(wordProblem(finding, print).message).toMatch(/^[A-Z].*\.$/su)
        }
      }),
      { seed: 99, numRuns: 600 },
    )
  })

  it('never throws, and words every finding, when any value is put in the place of any other', () => {
    const print = printMeasures('metric')
    const paths: (string | number)[][] = []
    const collect = (value: unknown, path: (string | number)[]) => {
      if (path.length > 0) paths.push(path)
      if (typeof value !== 'object' || value === null) return
      for (const [key, entry] of Object.entries(value))
        collect(entry, [...path, Array.isArray(value) ? Number(key) : key])
    }
    collect(JSON.parse(good), [])
    const values = fc.constantFrom<unknown>(null, 0, -1, 1.5, 1e9, '', 'x', 'e1', true, [], {}, [1], [[]], { id: 'e1' })
    fc.assert(
      fc.property(fc.constantFrom(...paths), values, (path, value) => {
        const site = JSON.parse(good)
        const parent = path.slice(0, -1).reduce((node, step) => node[step], site)
        parent[path.at(-1)!] = value
        const read = readSite(JSON.stringify(site))
        if (read.ok) return
        for (const finding of read.error) expect(wordProblem(finding, print).message).toMatch(/^[A-Z].*\.$/su)
      }),
      { seed: 100, numRuns: 1500 },
    )
  })

  it('has a word for every field of the schema', () => {
    const keys = new Set<string>()
    const collect = (node: unknown) => {
      if (typeof node !== 'object' || node === null) return
      const { properties } = node as { properties?: object }
      for (const key of Object.keys(properties ?? {})) keys.add(key)
      for (const entry of Object.values(node)) collect(entry)
    }
    collect(z.toJSONSchema(Site))
    const settings = new Set(Object.keys(defaults))
    const wordless = [...keys].filter(key => fieldWord(key) === undefined && !settings.has(key))
    expect(keys.size).toBeGreaterThan(120)
    expect(wordless).toEqual([])
  })
})

describe('invariants', () => {
  const broken = (edit: (site: ReturnType<typeof JSON.parse>) => void) => {
    const site = JSON.parse(good)
    edit(site)
    const found = invariants(site as Site)
    // An edit shares what it leaves alone: then no more is read than what is new, and no less is found.
    const before = JSON.parse(good)
    for (const key of Object.keys(site)) if (isDeepStrictEqual(site[key], before[key])) site[key] = before[key]
    expect(invariants(site as Site, before)).toEqual(found)
    return found.map(({ code, field }) => [code, field])
  }

  it('hold on every sample', () => {
    for (const site of Object.values(sampleSites())) expect(invariants(site)).toEqual([])
  })

  it.each<[string, Parameters<typeof broken>[0], unknown]>([
    [
      'a ring left open',
      site => site.slabs[0].openings[0].path.edges.pop(),
      ['edgeCountMismatch', '/slabs/0/openings/0/path'],
    ],
    [
      'a footprint of two corners',
      site => {
        site.casters[0].footprint.vertices.length = 2
        site.casters[0].footprint.edges.length = 2
        site.casters[0].roof = { form: 'flat' }
      },
      ['pathTooShort', '/casters/0/footprint'],
    ],
    ['a counter fallen behind', site => (site.nextId = 20), ['outOfRange', '/nextId']],
    [
      'an unnamed edge',
      site => (site.casters[0].roof.ridgeAlongEdge = 'e999'),
      ['danglingId', '/casters/0/roof/ridgeAlongEdge'],
    ],
    ['a size gone wrong', site => (site.slabs[0].thicknessM = Number.NaN), ['badNumber', '/slabs/0/thicknessM']],
    ['a drawing run away', site => (site.points[0].at = [9999, 0]), ['limitExceeded', undefined]],
  ])('catch %s', (_, edit, expected) => {
    expect(broken(edit)).toEqual([expected])
  })
})
