import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../core/plan/plan'
import { printPlanJson } from '../../core/plan/printPlanJson'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { calendarText, foldLine } from '../../core/reports/day/calendarText'
import { daySheet } from '../../core/reports/day/daySheet'
import { checklist, daySentence } from '../../core/reports/day/daySheetWords'
import { wrapText } from '../../core/reports/day/wrapText'
import { sheetClock, toFiveMinutes } from '../../core/reports/sheetClock'
import { widthOf } from '../../core/reports/svgPen'
import { renderPdf } from '../../electron/pdf/renderPdf'
import type { Site } from '../../shared/document/site'
import { planOf, sampleSite } from '../plan/sampleSite'
import { type PdfText, pdfTexts } from './pdfTexts'

const plan = planOf(sampleSite('l-patio-accepted'))
const svgOf = (pourId: string, page: number): string => {
  const [node] = daySheet(plan, pourId).sections[page]!.content
  return typeof node === 'object' && 'svg' in node ? node.svg : ''
}
const wordsOf = (svg: string): string => svg.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')

/** A pour of three trucks and twelve strips. */
const bigPlan = (units: 'ftin' | 'metric', hot?: Partial<Site>): Plan => {
  const terrace = sampleSite('metric-terrace')
  const own = sampleSite('l-patio-accepted')
  return planOf(
    {
      ...terrace,
      ...{ units, crew: own.crew!, conditions: own.conditions!, capacity: { capM2: 92 }, ...hot },
      settings: { ...terrace.settings, loadM3: 4.6 },
    },
    { date: '2026-07-21', budget: 'small' },
  )
}
const biggestDay = ({ dayPlans }: Plan): PourDayPlan =>
  dayPlans.reduce((most, one) => (one.plan.strips.length > most.plan.strips.length ? one : most))
const pdfOf = (of: Plan, pourId: string): Promise<Uint8Array> =>
  renderPdf(daySheet(of, pourId), { createdAt: new Date(0) })

/** The parts of the sheet that are read standing, by where they are on its pages. */
function partsOf(texts: readonly PdfText[]): Record<'map' | 'order' | 'timeline' | 'checklist', readonly PdfText[]> {
  const head = (text: string): PdfText => texts.find(own => own.text === text)!
  const [order, timeline, checks, log] = ['Plant order', 'Stamping windows', 'Before the truck', 'Log'].map(head)
  const isBefore = (own: PdfText, next: PdfText): boolean =>
    own.page < next.page || (own.page === next.page && own.y < next.y)
  const between = (from: PdfText, to: PdfText): readonly PdfText[] =>
    texts.filter(own => own.page === from.page && !isBefore(own, from) && isBefore(own, to))
  const top = between({ ...order!, y: 99 }, timeline!)
  return {
    map: top.filter(({ x }) => x < order!.x),
    order: top.filter(({ x }) => x >= order!.x),
    timeline: between(timeline!, checks!),
    checklist: between(checks!, log!),
  }
}

describe('day plans of a site', () => {
  it('there is one a pour, printed in UTC', () => {
    const { dayPlans } = printPlanJson(plan)
    expect(dayPlans.map(day => day.pourId)).toEqual(plan.pours.map(pour => pour.id))
    for (const day of dayPlans) {
      expect(day.startUtc).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/)
      const area = day.strips.reduce((sum, strip) => sum + strip.areaM2, 0)
      expect(area).toBeCloseTo(plan.pours.find(pour => pour.id === day.pourId)!.areaM2, 6)
      const listed = day.loads.flatMap(load => load.portions.flatMap(portion => portion.stripIds))
      expect(listed).toEqual(day.strips.map(strip => strip.id))
    }
  })

  it('a pour holds the start that was fixed for it', () => {
    const site = sampleSite('l-patio-accepted')
    const [accepted] = site.accepted
    const [first] = accepted!.pours
    const fixed = planOf({
      ...site,
      accepted: [
        {
          ...accepted!,
          pours: accepted!.pours.map(p => (p.id === first!.id ? { ...p, start: { time: '06:15' } } : p)),
        },
      ],
    })
    const before = plan.dayPlans.find(day => day.pourId === first!.id)!.plan.startMs
    expect(fixed.dayPlans.find(day => day.pourId === first!.id)!.plan.startMs - before).toBe(-45 * 60_000)
  })

  it('without crew or weather there is none, and a note says what is missing', () => {
    const { conditions: _, ...site } = sampleSite('l-patio-accepted')
    const none = planOf(site)
    expect(none.dayPlans).toEqual([])
    expect(none.problems.find(problem => problem.code === 'dayNotPlanned')).toMatchObject({
      severity: 'note',
      message: 'No day plan: weather not entered.',
    })
  })

  it('weather that cannot be stops the day plans alone', () => {
    const site = sampleSite('l-patio-accepted')
    const bad = planOf({
      ...site,
      conditions: {
        ...site.conditions!,
        kind: 'day',
        highC: 10,
        lowC: 30,
        dewPointC: 5,
        windMs: 2,
        sky: 'sunny',
      } as NonNullable<typeof site.conditions>,
    })
    expect(bad.dayPlans).toEqual([])
    expect(bad.problems.some(problem => problem.code === 'highBelowLow')).toBe(true)
    expect(bad.pours).toHaveLength(plan.pours.length)
  })

  it('a pour in the polar night is planned and told to be dark', () => {
    const site = sampleSite('l-patio-accepted')
    const dark = planOf({
      ...site,
      place: { ...site.place, latDeg: 78 },
      accepted: site.accepted.map(a => ({ ...a, pours: a.pours.map(p => ({ ...p, date: '2026-12-21' })) })),
    })
    expect(dark.problems.map(problem => problem.code)).toContain('startInDark')
  })
})

describe('the day sheet', () => {
  it('has map, timeline, plant order and checklist in letters of 14 pt and more in its PDF', async () => {
    const big = bigPlan('metric')
    const sheets = [
      [plan, plan.dayPlans[0]!],
      [big, biggestDay(big)],
    ] as const
    for (const [of, day] of sheets) {
      const texts = await pdfTexts(await pdfOf(of, day.pourId))
      expect(Math.max(...texts.map(({ page }) => page))).toBe(2)
      const parts = partsOf(texts)
      for (const [name, own] of Object.entries(parts))
        expect([name, Math.min(...own.map(({ sizePt }) => sizePt))]).toEqual([name, expect.closeTo(14, 3)])
      const words = (own: readonly PdfText[]): string => ` ${own.map(({ text }) => text).join(' ')} `
      const { units, place } = of.site
      const clock = (ms: number) => sheetClock(ms, place.zone, units)
      for (const strip of day.plan.strips) {
        expect(words(parts.map)).toContain(` ${strip.id} `)
        // Windows to 5 minutes, the end of one never later than it is.
        const tooHardMs = toFiveMinutes(strip.tooHardMs, 'atLatest')
        expect(strip.tooHardMs - tooHardMs).toBeLessThan(300_000)
        expect(tooHardMs).toBeLessThanOrEqual(strip.tooHardMs)
        for (const ms of [toFiveMinutes(strip.readyMs), tooHardMs]) expect(words(parts.timeline)).toContain(clock(ms))
      }
      for (const line of checklist) expect(words(parts.checklist)).toContain(line)
      for (const line of ['Concrete', 'Strength, air', 'Most at discharge']) expect(words(parts.order)).toContain(line)
      // The page as a whole has nothing smaller either.
      expect(Math.min(...texts.filter(({ page }) => page === 1).map(({ sizePt }) => sizePt))).toBeCloseTo(14, 3)
    }
  })

  it('brackets when each strip may be ready under its window', () => {
    const day = plan.dayPlans[0]!
    const brackets = [...svgOf(day.pourId, 0).matchAll(/d="M([\d.]+) [\d.]+V[\d.]+H([\d.]+)V/g)]
    expect(brackets).toHaveLength(day.plan.strips.length)
    const hours = [...svgOf(day.pourId, 0).matchAll(/<text x="([\d.]+)"[^>]*text-anchor="middle"[^>]*>(\d+) am</g)]
    const [[, x0, h0], [, x1, h1]] = [hours[0]!, hours.at(-1)!]
    const ptPerMs = (Number(x1) - Number(x0)) / ((Number(h1) - Number(h0)) * 3_600_000)
    day.plan.strips.forEach((strip, i) => {
      const wide = Number(brackets[i]![2]) - Number(brackets[i]![1])
      expect(wide).toBeCloseTo((strip.readyP90Ms - strip.readyP10Ms) * ptPerMs, 1)
    })
  })

  it('keeps all of its text on the page', () => {
    for (const { id } of plan.pours)
      for (const page of [0, 1])
        for (const match of svgOf(id, page).matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"/g)) {
          expect(Number(match[1])).toBeGreaterThanOrEqual(0)
          expect(Number(match[1])).toBeLessThanOrEqual(612)
          expect(Number(match[2])).toBeLessThanOrEqual(792 - 20)
        }
  })

  it('is black, white and gray', () => {
    const colors = new Set(
      [...svgOf(plan.pours[0]!.id, 0).matchAll(/(?:fill|stroke)="(#[0-9A-Fa-f]+)"/g)].map(match =>
        match[1]!.toLowerCase(),
      ),
    )
    for (const color of colors) {
      const full = color.length === 4 ? `#${[...color.slice(1)].map(c => c + c).join('')}` : color
      const [r, g, b] = [1, 3, 5].map(i => Number.parseInt(full.slice(i, i + 2), 16))
      expect(Math.max(r!, g!, b!) - Math.min(r!, g!, b!)).toBeLessThan(16)
    }
  })

  it('says every strip, every dose mark with its tape, and the sentence', () => {
    const day = plan.dayPlans[0]!
    const text = [0, 1]
      .map(page => svgOf(day.pourId, page).replace(/<[^>]+>/g, ' '))
      .join(' ')
      .replace(/\s+/g, ' ')
    for (const strip of day.plan.strips) expect(text).toContain(` ${strip.id} `)
    for (const mark of day.doseMarks) for (const tape of mark.marks) expect(text).toContain(`from ${tape.corner}`)
    expect(text).toContain(daySentence)
    expect(text).toContain('takes 357 lb, 6 packages of 60 lb; 240 lb on hand; 2 packages short.')
    expect(text).toContain('At thunder everybody inside.')
    expect(text).toContain('Before the truck')
    expect(text).toContain('If the day goes otherwise')
  })

  it('says what follows by day, and how many packages a dose takes', () => {
    const day = plan.dayPlans[0]!
    const text = svgOf(day.pourId, 1)
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ')
    for (const word of ['After:', 'pull forms from', 'wash off release from', 'open to feet from', 'seal from'])
      expect(text).toContain(word)
    if (day.doseMarks.length > 0) expect(text).toMatch(/\d+ packages?, mix/)
  })

  describe('of three trucks and twelve strips', () => {
    const own = sampleSite('l-patio-accepted')
    const heat = {
      kind: 'day',
      date: '2026-07-21',
      highC: 38,
      lowC: 27,
      dewPointC: 12,
      windMs: 5,
      sky: 'sunny',
    } as const
    const cases = [
      ['metric', bigPlan('metric'), 595, 842],
      [
        'feet and inches, hot, with a pump and stock',
        bigPlan('ftin', {
          conditions: heat,
          ...{ crew: { ...own.crew!, hands: 6 }, materials: own.materials!, stock: own.stock! },
          access: {
            truckSpots: [],
            pumpSpots: [{ id: 'k900', at: [0, 0] }],
            chuteReachM: 4,
            washouts: [],
            noGo: [],
            ways: [],
          },
        }),
        ...[612, 792],
      ],
    ] as const
    it.each(cases)('%s: keeps to two pages, all on paper, the log clear of the cautions', (_, of, wide, tall) => {
      const day = biggestDay(of)
      expect(day.plan.strips.length).toBeGreaterThan(8)
      const { sections } = daySheet(of, day.pourId)
      expect(sections).toHaveLength(2)
      const svgs = sections.map(({ content: [node] }) => (typeof node === 'object' && 'svg' in node ? node.svg : ''))
      const text = wordsOf(svgs.join(' '))
      for (const strip of day.plan.strips) expect(text).toContain(` ${strip.id} `)
      for (const line of checklist) expect(text).toContain(line)
      expect(text).toContain(of.site.units === 'metric' ? '5.6 °C hotter' : '10 °F hotter')
      expect(text).toContain(daySentence.slice(0, 40))
      for (const svg of svgs)
        for (const match of svg.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"/g)) {
          expect(Number(match[1])).toBeGreaterThanOrEqual(0)
          expect(Number(match[1])).toBeLessThanOrEqual(wide!)
          expect(Number(match[2])).toBeLessThanOrEqual(tall! - 20)
        }
      const lastRow = Number(
        new RegExp(`y="([\\d.]+)"[^>]*>${day.plan.strips.at(-1)!.id}<`).exec(svgs[1]!)?.[1] ?? Number.NaN,
      )
      expect(lastRow).toBeLessThan(tall! - 34 - 78 + 16)
    })
  })

  it('breaks lines between words', () => {
    const lines = wrapText('set the header before strip c and finish there', 14, 120)
    expect(lines.length).toBeGreaterThan(1)
    for (const line of lines) expect(widthOf(line, 14)).toBeLessThanOrEqual(120)
    expect(lines.join(' ')).toBe('set the header before strip c and finish there')
  })
})

describe('the calendar', () => {
  const text = calendarText(plan, Date.UTC(2026, 6, 1))

  it('is read by a reference reader of RFC 5545: each pour and what follows it', () => {
    const calendar = new ICAL.Component(ICAL.parse(text))
    const events = calendar.getAllSubcomponents('vevent').map(event => new ICAL.Event(event))
    expect(events.length).toBeGreaterThan(plan.dayPlans.length)
    for (const day of plan.dayPlans) {
      const event = events.find(own => own.uid === `${plan.site.id}-${day.pourId}`)!
      expect(event.startDate.toJSDate().getTime()).toBe(day.plan.startMs)
      expect(event.summary).toBe(`${plan.site.name}: pour ${day.number}`)
      expect(event.endDate.compare(event.startDate)).toBe(1)
    }
    expect(new Set(events.map(event => event.uid)).size).toBe(events.length)
  })

  it('has line ends of CRLF and no line over 75 octets', () => {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
    expect(text.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/)
    for (const line of text.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
  })

  it('never splits a letter when it folds', () => {
    const long = `SUMMARY:${'é′'.repeat(80)}`
    expect(foldLine(long).replace(/\r\n /g, '')).toBe(long)
  })
})
