import { describe, expect, it } from 'vitest'
import { createMemo } from '../../core/plan/memo'
import { planAlternatives } from '../../core/plan/planAlternatives'
import { printPlanJson } from '../../core/plan/printPlanJson'
import type { Alternative } from '../../core/pours/alternatives/alternative'
import { figuresOf, type PricingGround } from '../../core/pours/alternatives/priceAlternative'
import { isDominated, proposeAlternatives } from '../../core/pours/alternatives/proposeAlternatives'
import { wordAlternative } from '../../core/pours/alternatives/wordAlternative'
import type { Proposal, SplitInput } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { minimumBox } from '../../core/pours/region/minimumBox'
import type { JointWishes } from '../../core/pours/wishes/jointWishes'
import { alternativeSheets } from '../../core/reports/alternativeSheets'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { printMeasures } from '../../core/units/printMeasures'
import { PlanJson } from '../../shared/planJson'
import { defaults } from '../../shared/settings'
import { planOf, sampleSite } from '../plan/sampleSite'
import { checkProposal } from '../pours/checkProposal'
import { checkWishes } from '../pours/checkWishes'
import { benchSlabs, randomSlab } from '../pours/randomSlabs'
import { ft2M2, namedSlabs, rectangle, region } from '../pours/shapes'

const ftM = 0.3048

const ground: PricingGround = {
  slabId: 'slab-1',
  part: 'whole',
  thicknessM: 4 * 0.0254,
  pumped: false,
  units: 'ftin',
  settings: undefined,
  site: { slabs: [], casters: [], noGo: [], ways: [], truckSpots: [], capM2: 900 * ft2M2, startDate: '2026-07-20' },
}

const alternativesOf = (slab: ReturnType<typeof region>, capM2 = 900 * ft2M2): readonly Alternative[] =>
  proposeAlternatives({ slabId: 'slab-1', part: 'whole', region: slab, capM2, budget: 'small' }, ground)

const cases = [
  ...namedSlabs().map(({ name, region: slab }) => ({ name, slab })),
  ...[11, 12, 13, 14].map(seed => ({ name: `random ${seed}`, slab: randomSlab(seed) })),
]

describe('the ways to split', () => {
  it.each(cases)('$name: at most four, tiling the slab, none dominated, fewest pours first', ({ slab }) => {
    const all = alternativesOf(slab)
    expect(all.length).toBeGreaterThan(0)
    expect(all.length).toBeLessThanOrEqual(4)
    for (const { proposal, kind } of all) checkProposal(slab, 900 * ft2M2, proposal, kind)
    for (const own of all)
      for (const other of all)
        expect(isDominated(own.figures, other.figures), `${own.kind} by ${other.kind}`).toBe(false)
    const fewest = Math.min(...all.map(({ proposal }) => proposal.pours.length))
    expect(all[0]!.proposal.pours.length).toBe(fewest)
  })

  it('a plus of five squares of 784 ft² is offered as five pours without a re-entrant corner', () => {
    const plus = namedSlabs().find(({ name }) => name === 'plus')!.region
    const clean = alternativesOf(plus).filter(({ figures }) => figures.reentrantLeft === 0)
    expect(clean.length).toBeGreaterThan(0)
  })

  it('900 ft² at 4 in is a truck and a short load: 11.1 yd³ in place, 5 % over, to the next ¼ yd³', () => {
    const [only] = alternativesOf(region(rectangle(0, 0, 30, 30)))
    expect(only!.figures.trucks).toBe(2)
    expect(only!.figures.shortLoads).toBe(1)
    expect(only!.figures.jointM).toBe(0)
    expect(only!.figures.crewDays).toBe(1)
    // 12 ft of reach from each edge leaves 6 ft × 6 ft.
    expect(only!.figures.outOfReachM2).toBeCloseTo(36 * ft2M2, 9)
    expect(only!.price.total).toBeCloseTo(
      defaults.crewDayPrice.value + 2 * defaults.truckPrice.value + defaults.shortLoadPrice.value,
      9,
    )
  })

  it('nothing is offered where the cap is under a workable pour', () => {
    expect(alternativesOf(region(rectangle(0, 0, 30, 30)), 1)).toEqual([])
  })
})

describe('reach and sun', () => {
  const walk = region(rectangle(0, 0, 120, 30))
  const lots = (truckXs: readonly number[], pumped = false): PricingGround['access'] => ({
    truckSpots: truckXs.map((x, i) => ({ id: `k${i}`, at: [x * ftM, 15 * ftM] })),
    pumpSpots: pumped ? [{ id: 'k9', at: [0, 0] }] : [],
    washouts: [],
    noGo: [],
    chuteReachM: 5,
    ways: [],
  })
  const strips = proposeAlternatives(
    { slabId: 'slab-1', part: 'whole', region: walk, capM2: 900 * ft2M2, budget: 'small' },
    ground,
  )[0]!.proposal

  it('pours whose far corner lies past three chutes from every truck spot are beyond the chute', () => {
    expect(strips.pours).toHaveLength(4)
    const beyond = (of: PricingGround['access']) => figuresOf(strips, { ...ground, access: of }).beyondChuteM2 / ft2M2
    // 15 m = 49 ft: of four pours of 30 ft × 30 ft the far corner of the first lies 33.5 ft off, of the second 62 ft.
    expect(beyond(lots([0]))).toBeCloseTo(2700, 6)
    expect(beyond(lots([0, 120]))).toBeCloseTo(1800, 6)
    expect(beyond(lots([30, 90]))).toBe(0)
    expect(beyond(lots([0], true))).toBe(0)
    expect(beyond(undefined)).toBe(0)
  })

  it('hours of sun and shade on one pour are added up; not looked at is not none', () => {
    const onSite = { addCost: () => {}, shadeLine: null, mixedSunMin: ({ ox }: { ox: number }) => (ox > 1 ? 90 : 30) }
    const figures = (more: Partial<PricingGround>) => figuresOf(strips, { ...ground, ...more })
    const all = strips.pours.map(({ region: pour }) => onSite.mixedSunMin(toCutRegion(pour)))
    expect(figures({ onSite })).toMatchObject({
      mixedSunPours: 4,
      mixedSunMin: all.reduce((sum, minutes) => sum + minutes, 0),
      mixedSunWorstMin: Math.max(...all),
    })
    expect(figures({ onSite: null })).toMatchObject({ mixedSunPours: 0, mixedSunMin: 0, mixedSunWorstMin: 0 })
    expect(figures({})).toMatchObject({ mixedSunPours: null, mixedSunMin: null, mixedSunWorstMin: null })
  })

  it('are told beside each other, and one that is better in them alone is kept', () => {
    const none = figuresOf(strips, ground)
    const worse = { ...none, beyondChuteM2: 40 * ft2M2, mixedSunMin: 300 }
    const own = { ...none, mixedSunMin: 90 }
    const print = printMeasures('ftin')
    expect(wordAlternative(own, worse, print).map(({ sign, words }) => `${sign} ${words}`)).toEqual([
      `+ ${print.area(40 * ft2M2)} less in pours beyond the chute`,
      '+ 3.5 h less of sun and shade on one pour, all pours added up',
    ])
    expect(isDominated(worse, own)).toBe(true)
    expect(isDominated(own, { ...worse, mixedSunMin: 0 })).toBe(false)
  })
})

describe('lanes', () => {
  const lanesOf = (slab: ReturnType<typeof region>, more: Partial<SplitInput> = {}): Proposal =>
    proposePours({
      ...{ slabId: 'slab-1', part: 'whole', region: slab, capM2: 900 * ft2M2, laneM: 16 * ftM },
      ...more,
    })

  it('no wider than the strike-off, ends in line, on a court of 96 ft × 100 ft', () => {
    const slab = region(rectangle(0, 0, 96, 100))
    const lanes = lanesOf(slab, { capM2: 800 * ft2M2 })
    checkProposal(slab, 800 * ft2M2, lanes, 'lanes')
    // Along the 100 ft: six strips of 16 ft, each in two halves of 50 ft.
    expect(lanes.pours).toHaveLength(12)
    for (const { areaM2 } of lanes.pours) expect(areaM2).toBeCloseTo(800 * ft2M2, 6)
    const acrossOf = ({ joints }: Proposal) => joints.filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-6)
    const ends = acrossOf(lanes)
    expect(ends).toHaveLength(6)
    expect(new Set(ends.map(({ from }) => Math.round(from[1] * 1e4))).size).toBe(1)
  })

  it.each(['court 12,000', 'plaza 50,000'])('take the fewest pours the area needs on the %s', name => {
    const slab = namedSlabs().find(each => each.name === name)!.region
    const lanes = lanesOf(slab)
    checkProposal(slab, 900 * ft2M2, lanes, name)
    expect(lanes.pours.length).toBe(lanes.lowerBound)
    for (const { region: pour } of lanes.pours)
      expect(minimumBox(toCutRegion(pour).rings[0]!).shortM).toBeLessThanOrEqual(16 * ftM * (1 + 1e-6))
  })

  it('take a pour more where one strip would be a sliver: 14 for 13 on the first court, none under 8 ft wide', () => {
    const slab = benchSlabs().find(({ name }) => name === 'court 1')!.region
    const lanes = lanesOf(slab)
    checkProposal(slab, 900 * ft2M2, lanes, 'lanes')
    expect(lanes.lowerBound).toBe(13)
    expect(lanes.pours).toHaveLength(14)
    for (const { region: pour, minCornerDeg } of lanes.pours) {
      expect(minimumBox(toCutRegion(pour).rings[0]!).shortM).toBeGreaterThan(8 * ftM)
      expect(minCornerDeg).toBeGreaterThanOrEqual(60)
    }
  })

  it('keep to required joints, wished directions and widths', () => {
    const slab = region(rectangle(0, 0, 120, 100))
    const wishes: JointWishes = {
      required: [{ id: 'y1', from: [50 * ftM, 0], to: [50 * ftM, 100 * ftM] }],
      directionsDeg: [90],
      leastWidthM: 7 * ftM,
    }
    const lanes = lanesOf(slab, { wishes })
    checkWishes(slab, wishes, lanes, 'lanes')
    expect(lanes.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
    const alongM = (way: 0 | 1) => lanes.joints.reduce((sum, { from, to }) => sum + Math.abs(from[way] - to[way]), 0)
    expect(alongM(1)).toBeGreaterThan(2 * alongM(0))
  })

  it('are refused with the reason: by the shape, or by what was asked of joints', () => {
    const whyOf = ({ findings }: Proposal) =>
      findings.flatMap(({ code, values }) => (code === 'noLanes' ? values.why : []))
    expect(whyOf(lanesOf(region(rectangle(0, 0, 100, 3)), { capM2: 10 }))).toEqual(['shape'])
    const wide: JointWishes = { leastWidthM: 20 * ftM }
    expect(whyOf(lanesOf(region(rectangle(0, 0, 96, 100)), { wishes: wide }))).toEqual(['wishes'])
    const all = proposeAlternatives(
      {
        ...{ slabId: 'slab-1', part: 'whole', region: region(rectangle(0, 0, 120, 100)), capM2: 900 * ft2M2 },
        ...{ budget: 'small', wishes: wide },
      },
      ground,
    )
    expect(all.map(({ kind }) => kind)).not.toContain('lanes')
    expect(all[0]!.noLanes?.values.why).toBe('wishes')
    // 15 pours of 20 ft × 40 ft: lanes would need as many and more joint.
    const [fewest] = alternativesOf(region(rectangle(0, 0, 120, 100)), 800 * ft2M2)
    expect(fewest!.noLanes?.values.why).toBe('worse')
  })
})

describe('alternatives of a site', () => {
  it('print as the published JSON, only when asked for, and are remembered', () => {
    const memo = createMemo()
    const plan = planOf(sampleSite('l-patio'), { date: '2026-07-21' }, memo)
    const all = planAlternatives(plan, memo)
    expect(planAlternatives(plan, memo).map(({ proposal }) => proposal)).toEqual(all.map(({ proposal }) => proposal))
    expect(memo.computed.get('alternatives')).toBe(1)
    const json = PlanJson.parse(printPlanJson(plan, all))
    expect(json.alternatives!.map(({ kind }) => kind)).toEqual(all.map(({ kind }) => kind))
    for (const { sentences } of json.alternatives!) if (all.length > 1) expect(sentences.length).toBeGreaterThan(0)
    for (const { figures } of json.alternatives!) expect(figures.mixedSunPours).not.toBeNull()
    expect(printPlanJson(plan).alternatives).toBeUndefined()
  })

  it('are poured after what is poured, never on a day that has been', () => {
    const memo = createMemo()
    // Three of four pours are poured, the last on July 20; the plan is looked at on the day of the first.
    const all = planAlternatives(planOf(sampleSite('logged-court'), { date: '2026-07-14' }, memo), memo)
    expect(all.length).toBeGreaterThan(0)
    for (const { figures } of all) expect(figures.lastPourDate! > '2026-07-20').toBe(true)
  })

  it('stand side by side on a sheet and in the PDF set, each with its figures, none where they were not asked for', () => {
    const memo = createMemo()
    const plan = planOf(sampleSite('l-patio'), { date: '2026-07-21' }, memo)
    const all = planAlternatives(plan, memo)
    const data = planSheetData(plan, all)
    const [sheet, ...more] = alternativeSheets(data)
    expect(more).toEqual([])
    for (const words of [
      'Fewest pours',
      '2 pours',
      'One more',
      '3 pours',
      'Short loads',
      'Beyond the chute',
      'Pours part in sun',
    ])
      expect(sheet!.svg).toContain(words)
    const pages = (of: typeof data) => pdfSet(of).sections.length
    expect(pages(data)).toBe(pages(planSheetData(plan)) + 1)
    // Nothing is written below the page's margin.
    const lowest = Math.max(...[...sheet!.svg.matchAll(/<text[^>]* y="([\d.]+)"/g)].map(([, y]) => Number(y)))
    expect(lowest).toBeGreaterThan(300)
    expect(lowest).toBeLessThanOrEqual(sheet!.heightPt - 30)
  })

  it('leave a locked pour as it is and split only the rest', () => {
    const site = sampleSite('l-patio-accepted')
    const [row] = site.accepted
    const locked = row!.pours[0]!
    const kept = {
      ...site,
      accepted: [{ ...row!, pours: row!.pours.map(p => ({ ...p, lock: { ...p.lock, shape: p === locked } })) }],
    }
    const memo = createMemo()
    const plan = planOf(kept, { date: '2026-07-21' }, memo)
    const all = planAlternatives(plan, memo)
    expect(all.length).toBeGreaterThan(0)
    const lockedM2 = plan.pours.find(({ id }) => id === locked.id)!.areaM2
    for (const { kept: stays, proposal } of all) {
      expect(stays.pourIds).toEqual([locked.id])
      const sum = proposal.pours.reduce((total, { areaM2 }) => total + areaM2, 0)
      expect(sum).toBeCloseTo(plan.slabs[0]!.netAreaM2 - lockedM2, 6)
    }
  })
})
