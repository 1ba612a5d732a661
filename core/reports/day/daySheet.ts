/** The sheet pinned up on the day of one pour: two pages, readable in black and white and at arm's length. */

import type { UnitSystem } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import { labelDose } from '../../concrete/tables/retarderDose'
import type { Plan } from '../../plan/plan'
import { pumpFacts } from '../../pours/day/placingMethod'
import type { DoseMark, PourDayPlan } from '../../pours/day/pourDay'
import type { WhatIfCase } from '../../pours/day/whatIf'
import type { AfterTaskName } from '../../pours/order/afterTasks'
import { packagesFor } from '../../pours/slab/retarderPackages'
import { printDay } from '../../units/printDay'
import { printMeasures } from '../../units/printMeasures'
import { printNumber } from '../../units/printNumber'
import { papers } from '../paper'
import type { PdfSet } from '../pdfSet'
import { sheetText } from '../sheetText'
import { drawPath, drawRect, drawText, ink, moveLine, num, rootFont, type TextStyle, widthOf } from '../svgPen'
import { dayMap } from './dayMap'
import { clockTime, dayTimeline } from './dayTimeline'
import { wrapText } from './wrapText'

const letterPt = 14
const lineStep = 17.5
const margin = 34

export const daySentence =
  'Estimate from forecast weather and typical mix behavior. It can be off by 30 minutes or more until you log a few pours. The finger test and the foreman decide. Measure each load’s temperature and note its batch time. Follow the admixture label and the ready-mix producer.'

const caution =
  'Wet concrete burns skin: boots, gloves, eye cover, no kneeling in it, rinse at once. Retarder, hardener and release: mask, gloves, label. Cut wet. Stay clear of power lines. Local rules, producer and labels come first.'

const caseWords: Record<WhatIfCase, string> = {
  late15: '15 min late',
  late30: '30 min late',
  late45: '45 min late',
  late60: '60 min late',
  handShort: 'One hand short',
  hotter: '10 °F hotter',
  rain14: 'Rain at 14:00',
}

export const caseName = (name: WhatIfCase, units: UnitSystem): string =>
  name === 'hotter' && units === 'metric' ? '5.6 °C hotter' : caseWords[name]

/** Before the first truck; ticked by hand. */
export const checklist: readonly string[] = [
  'Base damp all over, no puddles',
  'Forms checked, header set and oiled',
  'Dose marks on the forms',
  'Mats numbered and dusted, skin for edges',
  'Hardener and release open, pails counted',
  'Retarder measured, one jug a dose',
  'Evaporation retarder, sprayer full',
  'Masks, gloves, eye wash, drinking water',
  'Covers and weights at hand',
  'Washout ready, away from drains',
  'Lights if it is dark',
]

export const canWait = 'Can wait until tomorrow: line detailing, blow-outs, color touch-up.'

/** Lines set one under the other; `y` moves down as it writes. */
class Column {
  readonly parts: string[] = []
  constructor(
    readonly x: number,
    public y: number,
    readonly width: number,
  ) {}

  text(text: string, style: Partial<TextStyle> = {}, indent = 0): void {
    const sizePt = style.sizePt ?? letterPt
    for (const line of wrapText(text, sizePt, this.width - indent, style.face)) {
      this.parts.push(drawText(line, this.x + indent, this.y, { ...style, sizePt }))
      this.y += sizePt * 1.22
    }
  }

  heading(text: string): void {
    this.y += 6
    this.parts.push(drawText(text, this.x, this.y, { sizePt: 17, face: 'name' }))
    this.y += 19
  }

  /** Left a word, right a figure. */
  row(label: string, value: string): void {
    this.parts.push(drawText(label, this.x, this.y, { sizePt: letterPt }))
    this.parts.push(drawText(value, this.x + this.width, this.y, { sizePt: letterPt, face: 'planBold', anchor: 'end' }))
    this.y += lineStep
  }

  rule(dash?: string): void {
    this.parts.push(
      drawPath(moveLine([this.x, this.y - 9], [this.x + this.width, this.y - 9]), {
        ...{ stroke: ink, width: 0.7 },
        ...(dash === undefined ? {} : { dash }),
      }),
    )
    this.y += 7
  }

  box(text: string): void {
    this.parts.push(drawRect(this.x, this.y - 11, 12, 12, { stroke: ink, width: 1.2 }))
    this.text(text, {}, 18)
  }
}

interface SheetOf {
  readonly plan: Plan
  readonly day: PourDayPlan
}

const joined = (ids: readonly string[]): string => ids.join(', ')

function doseText(mark: DoseMark, { plan }: SheetOf): string {
  const print = printMeasures(plan.site.units)
  const where = mark.marks.map(({ distanceM, corner }) => `${print.length(distanceM)} from ${corner}`).join(' and ')
  const what = mark.inDrumMin === 0 ? `Dose for ${mark.doseMin} min` : `Dose ${mark.doseMin - mark.inDrumMin} min more`
  const count = packagesFor(mark.doseMin - mark.inDrumMin, mark.leftM3, plan.site.settings)
  const packs = `${count} ${count === 1 ? 'package' : 'packages'}`
  const mixMin = settingValue(plan.site.settings, 'mixingStopMin')
  const stop =
    mark.afterStripId === '' || where === ''
      ? `${what} before ${mark.beforeStripId}, ${packs}`
      : `Stop at the mark after ${mark.afterStripId}: ${where}. ${what}, ${packs}`
  return `${stop}, mix ${printNumber(mixMin, 0)} min; ${print.volume(mark.leftM3)} left in the drum.`
}

/** Whole jugs of retarder: one a mixing stop, in fluid ounces of the label's table where it has the weather. */
function retarderText({ day }: SheetOf): string | null {
  if (day.doseMarks.length === 0) return null
  const airC = Math.max(...day.plan.strips.map((_, i) => day.input.weather.airC[i] ?? 20))
  const label = labelDose(airC)
  const count = day.doseMarks.length
  return `${count} ${count === 1 ? 'dose' : 'doses'} of retarder, whole packages${label === null ? '' : ', by its label'}`
}

const afterWords: Readonly<Record<AfterTaskName, string>> = {
  pullForms: 'pull forms',
  sawJoints: 'saw joints',
  washRelease: 'wash off release',
  openToFeet: 'open to feet',
  openToCars: 'open to cars',
  seal: 'seal',
}

/** What follows the pour, by day; null where the pour has no day. */
function afterText({ plan, day }: SheetOf): string | null {
  const own = plan.days.find(({ pourIds }) => pourIds.includes(day.pourId))
  if (!own || own.afterTasks.length === 0) return null
  const byDay = new Map<string, string[]>()
  for (const { task, date, time } of own.afterTasks)
    byDay.set(date, [...(byDay.get(date) ?? []), `${afterWords[task]} from ${time}`])
  const days = [...byDay].map(([date, tasks]) => `${printDay(date, 'short')} ${tasks.join(', ')}`)
  return `After: ${days.join('; ')}. Labels and local code decide.`
}

function plantOrder(of: SheetOf, x: number, y: number, width: number): Column {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { zone } = plan.site.place
  const { mix } = plan.site
  const column = new Column(x, y, width)
  const total = day.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
  column.heading('Plant order')
  column.row(
    'Concrete',
    `${print.volume(total)}, ${day.plan.loads.length} ${day.plan.loads.length === 1 ? 'load' : 'loads'}`,
  )
  column.row('Strength, air', '________')
  column.row('Aggregate, slump', '________')
  column.row('Cement', mix?.sacksPerYd3 === undefined ? '____ sacks' : `${printNumber(mix.sacksPerYd3, 1)} sacks/yd³`)
  column.row('Color, fibers', '________')
  column.row('Most at discharge', print.temperature(35))
  const [first, next] = day.plan.loads
  if (first && next) column.row('Trucks apart', `${Math.round((next.onSiteMs - first.onSiteMs) / 60_000)} min`)
  const paceM3H = (total / (day.plan.strips.at(-1)!.placedMs - day.plan.startMs)) * 3_600_000
  column.row('Placing', `${print.volume(paceM3H)} an hour`)
  for (const load of day.plan.loads)
    column.row(`Load ${load.no}, ${print.volume(load.volumeM3)}`, `on site ${clockTime(load.onSiteMs, zone)}`)
  column.text(
    'No calcium chloride. Same cement and color throughout. Foreman may reject. Hold the balance until called.',
    {},
  )
  column.y += 6
  column.rule('4 3')
  for (const load of day.plan.loads) {
    const words = load.portions.map(
      ({ stripIds, doseMin }) => `${joined(stripIds)} ${doseMin === 0 ? 'plain' : `${doseMin} min`}`,
    )
    column.text(`Load ${load.no}: ${words.join('; ')}.`, { face: 'planBold' })
  }
  return column
}

interface FirstPage {
  readonly svg: string
  /** Of the checklist, what found no room. */
  readonly left: readonly string[]
}

function firstPage(of: SheetOf, widthPt: number, heightPt: number): FirstPage {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { zone } = plan.site.place
  const parts: string[] = []
  const right = widthPt - margin
  const areaM2 = day.plan.strips.reduce((sum, strip) => sum + strip.areaM2, 0)
  const total = day.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
  const numberWide = widthOf(day.number, 52, 'planBold')
  parts.push(
    drawText(day.number, margin, 76, { sizePt: 52, face: 'planBold' }),
    drawText(`Day sheet, pour ${day.number} of ${plan.pours.length}`, margin + numberWide + 18, 56, {
      sizePt: 22,
      face: 'name',
    }),
    drawText('first truck on site', right, 42, { sizePt: letterPt, anchor: 'end' }),
    drawText(clockTime(day.plan.startMs, zone), right, 76, { sizePt: 36, face: 'planBold', anchor: 'end' }),
  )
  const sub = wrapText(
    `${plan.site.name}. ${printDay(day.date, 'short')}. ${print.area(areaM2)}, ${print.volume(total)}, crew of ${day.input.hands}.`,
    letterPt,
    right - margin - numberWide - 134,
  )
  sub.slice(0, 2).forEach((line, i) => {
    parts.push(drawText(line, margin + numberWide + 18, 75 + i * 16, { sizePt: letterPt }))
  })
  parts.push(drawPath(moveLine([margin, 98], [right, 98]), { stroke: ink, width: 2.4 }))
  const mapWide = (right - margin) * 0.54
  const order = plantOrder(of, margin + mapWide + 22, 120, right - margin - mapWide - 34)
  const bottom = Math.max(order.y + 2, 372)
  const map = dayMap(plan, day, { x: margin, y: 104, width: mapWide, height: bottom - 104 - 40 })
  parts.push(
    ...order.parts,
    drawRect(order.x - 12, 104, order.width + 24, bottom - 104, { stroke: ink, width: 1.4 }),
    map.svg,
  )
  const under = new Column(margin, bottom - 22, mapWide)
  under.text(
    `Place ${day.plan.strips[0]!.id} first.${day.doseMarks.length > 0 ? ' X = dose mark.' : ''}${map.shade ? ' Dashed = edge of the shade at that hour.' : ''}${map.crowded ? ' Without minutes: plain.' : ''}`,
  )
  parts.push(...under.parts)
  const time = new Column(margin, bottom + 22, right - margin)
  time.heading('Stamping windows')
  const rows = day.plan.strips.length
  const timeTall = 26 + Math.min(26, 168 / rows) * rows
  parts.push(
    ...time.parts,
    dayTimeline(day, zone, { x: margin, y: time.y - 6, width: right - margin, height: timeTall }),
  )
  const tight = day.plan.strips.find(strip => strip.id === day.plan.tightestStripId)!
  const slack = Math.round(tight.slackMin)
  const said = new Column(margin, time.y + timeTall + 16, right - margin)
  said.text(
    `Hatched placing, open ready to too hard, solid stamping. ${
      slack >= 0 ? `Tightest: strip ${tight.id}, ${slack} min of slack.` : `Strip ${tight.id} is lost by ${-slack} min.`
    } In 100 such days ${Math.round(day.plan.chanceOfMiss * 100)} lose a strip.`,
  )
  parts.push(...said.parts)
  const rule = said.y - 4
  parts.push(drawPath(moveLine([margin, rule], [right, rule]), { stroke: ink, width: 1.2 }))
  const half = (right - margin - 20) / 2
  const left = new Column(margin, rule + 18, half)
  left.heading('Before the truck')
  const second = new Column(margin + half + 20, left.y, half)
  const most = Math.max(0, Math.floor((heightPt - margin - left.y + 8) / lineStep))
  const lines = [...checklist, ...(day.method.method === 'pump' ? pumpFacts.map(({ fact }) => fact) : [])]
  const half1 = Math.min(most, Math.ceil(lines.length / 2))
  for (const line of lines.slice(0, half1)) left.box(line)
  for (const line of lines.slice(half1, half1 + most)) second.box(line)
  parts.push(...left.parts, ...second.parts)
  return { svg: svgPage(parts, widthPt, heightPt), left: lines.slice(half1 + most) }
}

function table(
  x: number,
  y: number,
  widths: readonly number[],
  rows: readonly (readonly string[])[],
  tall: number,
): string {
  const whole = widths.reduce((sum, width) => sum + width, 0)
  const parts: string[] = []
  rows.forEach((row, r) => {
    const top = y + r * tall
    parts.push(drawPath(moveLine([x, top], [x + whole, top]), { stroke: ink, width: r < 2 ? 1.1 : 0.5 }))
    let at = x
    row.forEach((cell, c) => {
      if (c > 0) parts.push(drawPath(moveLine([at, top], [at, top + tall]), { stroke: ink, width: 0.5 }))
      parts.push(
        drawText(cell, at + 3, top + tall - Math.min(6, tall - 11), {
          sizePt: 12.5,
          face: r === 0 || c === 0 ? 'planBold' : 'plan',
        }),
      )
      at += widths[c]!
    })
  })
  parts.push(
    drawPath(moveLine([x, y + rows.length * tall], [x + whole, y + rows.length * tall]), { stroke: ink, width: 1.1 }),
  )
  return parts.join('')
}

function secondPage(of: SheetOf, widthPt: number, heightPt: number, checks: readonly string[]): string {
  const { plan, day } = of
  const { zone } = plan.site.place
  const right = widthPt - margin
  const column = new Column(margin, 46, right - margin)
  column.parts.push(
    drawText(`Pour ${day.number}, ${printDay(day.date, 'short')}`, right, 46, { sizePt: letterPt, anchor: 'end' }),
  )
  column.parts.push(drawText('If the day goes otherwise', margin, 48, { sizePt: 20, face: 'name' }))
  column.y = 72
  const firstWide = 118
  const startWide = 52
  const slackWide = 62
  for (const row of day.plan.whatIf) {
    const top = column.y
    const slack = Number.isFinite(row.slackMin) ? Math.round(row.slackMin) : null
    const slackText = slack === null ? 'lost' : slack < 0 ? `${row.firstLostStripId ?? ''} lost` : `${slack} min`
    column.parts.push(
      drawPath(moveLine([margin, top - 14], [right, top - 14]), { stroke: ink, width: 0.5 }),
      drawText(caseName(row.case, plan.site.units), margin, top, { sizePt: letterPt, face: 'planBold' }),
      drawText(clockTime(row.startMs, zone), margin + firstWide, top, { sizePt: letterPt }),
      drawText(slackText, margin + firstWide + startWide, top, { sizePt: letterPt, face: 'planBold' }),
    )
    const told = new Column(
      margin + firstWide + startWide + slackWide,
      top,
      right - margin - firstWide - startWide - slackWide,
    )
    told.text(row.doNext)
    column.parts.push(...told.parts)
    column.y = Math.max(told.y, top + lineStep) + 3
  }
  if (day.doseMarks.length > 0) {
    column.heading('Retarder')
    for (const mark of day.doseMarks) column.text(doseText(mark, of))
    column.text('Its effect ends suddenly.')
  }
  const half = (right - margin - 24) / 2
  const jobs = new Column(margin, column.y, half)
  jobs.heading('Jobs')
  const roles = new Map<string, number>()
  for (const { role } of day.plan.crew) roles.set(role, (roles.get(role) ?? 0) + 1)
  for (const [role, count] of roles) jobs.row(role, String(count))
  const stock = new Column(margin + half + 24, column.y, half)
  stock.heading('Stock')
  const entered = plan.site.stock ?? []
  if (entered.length === 0) stock.text('No stock entered.')
  for (const item of entered.slice(0, 4)) {
    const material = plan.site.materials?.find(({ id }) => id === item.materialId)
    stock.row(material?.name ?? item.materialId, `${printNumber(item.onHand, 1)} ${material?.unit ?? ''}`)
  }
  const retarder = retarderText(of)
  if (retarder) stock.text(retarder)
  column.parts.push(...jobs.parts, ...stock.parts)
  column.y = Math.max(jobs.y, stock.y)
  const second = day.plan.loads[1]
  const fallback = day.shapes.length > 1 ? day.shapes[Math.floor((day.shapes.length - 1) / 2)] : undefined
  if (fallback) {
    const strip = day.plan.strips.find(({ id }) => id === fallback.id)!
    const decideMs = second ? second.onSiteMs + 30 * 60_000 : strip.placedMs + 30 * 60_000
    column.text(
      `Fallback joint after strip ${second ? (day.plan.loads[0]!.portions.at(-1)?.stripIds.at(-1) ?? fallback.id) : fallback.id}: if no concrete comes by ${clockTime(decideMs, zone)}, set the header there and finish.`,
      { face: 'planBold' },
    )
  }
  column.text(canWait)
  const after = afterText(of)
  if (after !== null) column.text(after, { sizePt: 13 })
  if (checks.length > 0) {
    column.heading('Before the truck, too')
    const wide = (right - margin - 20) / 2
    const columns = [0, 1].map(side => new Column(margin + side * (wide + 20), column.y, wide))
    checks.forEach((line, i) => {
      columns[i < Math.ceil(checks.length / 2) ? 0 : 1]!.box(line)
    })
    column.parts.push(...columns.flatMap(own => own.parts))
    column.y = Math.max(...columns.map(own => own.y))
  }
  column.heading('Log')
  const loadRows = [
    ['Load', 'batched', 'on site', 'empty', 'temp', 'slump', 'water'],
    ...day.plan.loads.map(load => [String(load.no), '', '', '', '', '', '']),
  ]
  const { strips } = day.plan
  // Many strips stand in two tables side by side.
  const sides = strips.length > 8 ? 2 : 1
  const perSide = Math.ceil(strips.length / sides)
  const whole = right - margin
  const share = (parts: readonly number[], of = whole): number[] => parts.map(part => part * of)
  const footTall = 78
  const rowCount = loadRows.length + perSide + 1
  const tall = Math.max(14.5, Math.min(24, (heightPt - footTall - margin - column.y - 8) / rowCount))
  column.parts.push(table(margin, column.y - 12, share([0.1, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15]), loadRows, tall))
  const gap = 14
  const sideWide = (whole - (sides - 1) * gap) / sides
  const heads = ['Strip', 'placed', 'ready', 'too hard', 'stamped', ...(sides === 1 ? ['notes'] : [])]
  const widths = sides === 1 ? [0.1, 0.15, 0.15, 0.15, 0.15, 0.3] : [0.16, 0.21, 0.21, 0.21, 0.21]
  for (let side = 0; side < sides; side++) {
    const own = strips.slice(side * perSide, (side + 1) * perSide)
    const rows = [heads, ...own.map(({ id }) => [id, ...heads.slice(1).map(() => '')])]
    const left = margin + side * (sideWide + gap)
    column.parts.push(table(left, column.y - 12 + loadRows.length * tall + 8, share(widths, sideWide), rows, tall))
  }
  const foot = new Column(margin, heightPt - margin - footTall + 16, whole)
  foot.text(caution, { sizePt: 12, face: 'planBold' })
  foot.text(daySentence, { sizePt: 10.5 })
  column.parts.push(...foot.parts)
  return svgPage(column.parts, widthPt, heightPt)
}

const svgPage = (parts: readonly string[], widthPt: number, heightPt: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${num(widthPt)}" height="${num(heightPt)}" viewBox="0 0 ${num(widthPt)} ${num(heightPt)}" ${rootFont}>${parts.join('')}</svg>`

/** Two pages for one pour of a plan. Throws when the pour has no day plan. */
export function daySheet(plan: Plan, pourId: string): PdfSet {
  const day = plan.dayPlans.find(own => own.pourId === pourId)
  if (!day) throw new Error(`pour ${pourId} has no day plan`)
  const { widthPt, heightPt } = plan.site.units === 'ftin' ? papers.letter : papers.a4
  const page = (svg: string) => ({
    ...{ widthPt, heightPt, foot: false, letterPt },
    margin: [0, 0, 0, 0] as const,
    content: [{ svg, width: widthPt, height: heightPt }],
  })
  const of = { plan, day }
  const first = firstPage(of, widthPt, heightPt)
  return {
    title: sheetText(`${plan.site.name}, day sheet of pour ${day.number}`),
    subject: sheetText(`${plan.site.name}, ${day.date}`),
    footText: '',
    sections: [page(first.svg), page(secondPage(of, widthPt, heightPt, first.left))],
  }
}
