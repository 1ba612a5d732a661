import { describe, expect, it } from 'vitest'
import { wordProblem } from '../../core/problems/wordProblem'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { instantOf } from '../../core/sun/siteDay'
import { sunlitSpans } from '../../core/sun/sunlitSpans'
import { printMeasures } from '../../core/units/printMeasures'
import type { Caster } from '../../shared/document/caster'
import type { Finding } from '../../shared/problem'
import { box, building, cover, dayOf, pathOf, place, tree, wall } from './fixtures'

const hip = { form: 'hip', risePer12: 6 } as const

const told = (findings: readonly Finding[], system: 'ftin' | 'metric'): string[] =>
  findings.map(finding => wordProblem(finding, printMeasures(system)).message)

const told2 = (caster: Caster): readonly [string[], string[]] => {
  const { findings } = resolveCaster(caster)
  return [told(findings, 'ftin'), told(findings, 'metric')]
}

describe('a caster that cannot stand says so, and the rest goes on', () => {
  it.each([
    [building(box(0, 0, 4, 4), { eaveM: 0 }), 'The building “House”', '0″', '0″', '0.00 m', '0.00 m'],
    [
      building(box(0, 0, 4, 4), { baseM: 1.2192, eaveM: 0.9144 }),
      'The building “House”',
      '3′ 0″',
      '4′ 0″',
      '0.9144',
      '1.2192',
    ],
    [wall([[0, 0], [4, 0]], { topM: 0, name: '' }), 'A wall or fence', '0″', '0″', '0.00 m', '0.00 m'], // biome-ignore format: one line
    [tree([0, 0], { topM: 2 }), 'The tree “Shade tree”', '6′ 6¾″', '6′ 6¾″', '2.00 m', '2.00 m'],
    [cover(box(0, 0, 1, 1), { topM: 2.4 }), 'The cover “Porch cover”', '7′ 10½″', '8′ 2⅜″', '2.40 m', '2.50 m'],
  ] as const)('%#: no height', (caster, who, topFt, bottomFt, topM, bottomM) => {
    const { value, findings } = resolveCaster(caster)
    expect(value.solids).toEqual([])
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['noHeight', 'stop']])
    const metric = (text: string): string => (text.endsWith(' m') ? text : `${Number(text).toFixed(3)} m`)
    expect(told2(caster)).toEqual([
      [`${who} has no height: its top at ${topFt} is not above its bottom at ${bottomFt}, so it throws no shade.`],
      [
        `${who} has no height: its top at ${metric(topM)} is not above its bottom at ${metric(bottomM)}, so it throws no shade.`,
      ],
    ])
  })

  it('whose outline crosses itself', () => {
    const bow = building([[0, 0], [4, 4], [4, 0], [0, 4]]) // biome-ignore format: one line
    expect(resolveCaster(bow).value.solids).toEqual([])
    expect(resolveCaster(bow).findings.map(({ code, severity, at }) => [code, severity, at?.point])).toEqual([
      ['selfCrossing', 'stop', [2, 2]],
    ])
  })

  it('keeps what its neighbors are', () => {
    expect(resolveCaster(building(box(0, 0, 4, 4))).findings).toEqual([])
    expect(resolveCaster(cover(box(0, 0, 4, 4), { topM: 2.5 })).findings).toEqual([])
  })
})

describe('a roof that cannot be built is flat at the eave', () => {
  it('over a courtyard', () => {
    const caster = building(box(0, 0, 9, 9), { roof: hip, courtyards: [pathOf([...box(3, 3, 3, 3)].reverse(), 20)] })
    const { value, findings } = resolveCaster(caster)
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['roofOverCourtyard', 'check']])
    expect(Math.max(...value.solids.map(({ topM }) => topM))).toBe(3)
    expect(told(findings, 'ftin')).toEqual([
      'The building “House” has a courtyard, so its hip roof is drawn flat at the eave; the shade of the ridge is missing.',
    ])
  })

  it('where its ridge runs along an edge that is not there', () => {
    const caster = building(box(0, 0, 9, 9), { roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e99' } })
    const { value, findings } = resolveCaster(caster)
    expect(Math.max(...value.solids.map(({ topM }) => topM))).toBe(3)
    expect(told(findings, 'metric')).toEqual([
      'The gable roof of the building “House” cannot be worked out over this footprint; its shade is that of a flat roof at the eave.',
    ])
  })

  it('but stands over an arc: a round house has a cone', () => {
    const round = {
      ...pathOf([[-3, 0], [3, 0]]), // biome-ignore format: one line
      edges: [
        { id: 'e1', riseM: 3 },
        { id: 'e2', riseM: 3 },
      ],
    }
    const { value, findings } = resolveCaster({ ...building([]), footprint: round, roof: hip })
    expect(findings).toEqual([])
    expect(Math.max(...value.solids.map(({ topM }) => topM))).toBeCloseTo(3 + 3 * 0.5, 2)
  })
})

describe('a courtyard that reaches out of the walls', () => {
  it('is cut back to them, with a word about it', () => {
    const caster = building(box(0, 0, 6, 6), { courtyards: [pathOf([...box(4, 2, 4, 2)].reverse(), 20)] })
    const { value, findings } = resolveCaster(caster)
    expect(value.solids).toHaveLength(1)
    expect(told(findings, 'ftin')).toEqual([
      'A courtyard of the building “House” reaches beyond its walls or into another courtyard; only what lies inside the walls is open to the sun.',
    ])
  })
})

describe('inputs stay as they were', () => {
  it('when a caster is resolved', () => {
    const caster = building([...box(0, 0, 8, 6)].reverse(), { overhangM: 0.5, roof: hip })
    const before = structuredClone(caster)
    resolveCaster(caster)
    expect(caster).toEqual(before)
  })
})

describe('what the day itself tells', () => {
  it('in trade words', () => {
    const north = { ...place, latDeg: 70, lonDeg: 20, zone: 'Europe/Oslo' }
    const of = (latDeg: number, date: string): string[] =>
      told(sunlitSpans({ ...north, latDeg }, dayOf(date, north.zone), undefined).findings, 'ftin')
    expect(of(70, '2026-12-21')).toEqual(['On 2026-12-21 the sun does not rise here.'])
    expect(of(65.5, '2026-12-21')).toEqual([
      'On 2026-12-21 the sun stays too low to throw shade here: at most 1.4° above the horizon.',
    ])
    expect(of(70, '2026-06-21')).toEqual(['On 2026-06-21 the sun stays up all day and night here.'])
    const skipped = instantOf('2026-03-08', '02:30', undefined, 'America/Denver')
    expect(skipped.ok && told(skipped.value.findings, 'ftin')).toEqual([
      'On 2026-03-08 the clocks skip 02:30; 03:30 is used instead.',
    ])
  })
})
