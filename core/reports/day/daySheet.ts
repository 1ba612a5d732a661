/** The sheet pinned up on the day of one pour: two pages, readable in black and white and at arm's length. */

import type { UnitSystem } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import type { Plan } from '../../plan/plan'
import { tellPortions } from '../../pours/day/doseWords'
import { pumpFacts } from '../../pours/day/placingMethod'
import type { DoseMark, PourDayPlan } from '../../pours/day/pourDay'
import { packagesFor, packagesOfPour } from '../../pours/day/retarder'
import type { WhatIfCase } from '../../pours/day/whatIf'
import type { AfterTaskName } from '../../pours/order/afterTasks'
import { materialFigureId } from '../../quantities/materials'
import { capitalize } from '../../units/capitalize'
import { printDay } from '../../units/printDay'
import { printMeasures } from '../../units/printMeasures'
import { printNumber } from '../../units/printNumber'
import { papers } from '../paper'
import type { PdfSet } from '../pdfSet'
import { printQuantity } from '../printQuantity'
import { nextQuarter, sheetClock, toFiveMinutes } from '../sheetClock'
import { sheetText } from '../sheetText'
import { drawPath, drawRect, drawText, ink, moveLine, num, rootFont, type TextStyle, widthOf } from '../svgPen'
import { type DayMap, dayMap } from './dayMap'
import { dayTimeline, timelineTall } from './dayTimeline'
import { wrapText } from './wrapText'

const letterPt = 14
const lineStep = 17.5
const margin = 34

export const daySentence =
  'Estimate from forecast weather and typical mix behavior. It can be off by 30 minutes or more until you log a few pours. The finger test and the foreman decide. Measure each load’s temperature and note its batch time. Follow the admixture label and the ready-mix producer.'

const caution =
  'Wet concrete burns skin: boots, gloves, eye cover, no kneeling in it, rinse at once. Retarder, hardener and release: mask, gloves, label. Cut wet: the dust is silica. Lift by two. Stay clear of power lines. At thunder everybody inside.'
const pumpCaution = 'Nobody before the end of the hose while it is primed, blocked or cleared.'
const whoRules = 'Local rules, producer and labels come first.'

/** What can hurt somebody on this day. */
function cautionOf({ plan, day }: SheetOf): string {
  const heat = day.findings.find(({ code }) => code === 'crewHeat' || code === 'crewHeatHigh')
  const felt = heat && printMeasures(plan.site.units).temperature(Number(heat.values.feltC))
  return [
    ...(felt === undefined
      ? []
      : [`It will feel like ${felt}: water, shade and rest for every hand, and watch each other.`]),
    ...[caution, ...(day.method.method === 'pump' ? [pumpCaution] : []), whoRules],
  ].join(' ')
}

const caseWords: Record<WhatIfCase, string> = {
  late15: '15 min late',
  late30: '30 min late',
  late45: '45 min late',
  late60: '60 min late',
  handShort: 'One hand short',
  hotter: '10 °F hotter',
  rain14: 'Rain at 2 pm',
}

const metricWords: Partial<Record<WhatIfCase, string>> = { hotter: '5.6 °C hotter', rain14: 'Rain at 14:00' }

export const caseName = (name: WhatIfCase, units: UnitSystem): string =>
  (units === 'metric' ? metricWords[name] : undefined) ?? caseWords[name]

/** Before the first truck; ticked by hand. */
export const checklist: readonly string[] = [
  'Base damp all over, no puddles',
  'Forms checked, header set and oiled',
  'Dose marks on the forms',
  'Mats numbered and dusted, skin for edges',
  'Hardener and release open, pails counted',
  'Retarder counted out, dose by dose',
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
    readonly sizePt = letterPt,
  ) {}

  text(text: string, style: Partial<TextStyle> = {}, indent = 0): void {
    const sizePt = style.sizePt ?? this.sizePt
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
    const { sizePt } = this
    this.parts.push(drawText(label, this.x, this.y, { sizePt }))
    this.parts.push(drawText(value, this.x + this.width, this.y, { sizePt, face: 'planBold', anchor: 'end' }))
    this.y += sizePt * 1.25
  }

  box(text: string, stepPt = lineStep): void {
    this.parts.push(drawRect(this.x, this.y - 11, 12, 12, { stroke: ink, width: 1.2 }))
    this.text(text, {}, 18)
    this.y += stepPt - lineStep
  }
}

interface SheetOf {
  readonly plan: Plan
  readonly day: PourDayPlan
}

function doseText(mark: DoseMark, { plan, day }: SheetOf): string {
  const print = printMeasures(plan.site.units)
  const where = mark.marks.map(({ distanceM, corner }) => `${print.length(distanceM)} from ${corner}`).join(' and ')
  const what = mark.inDrumMin === 0 ? `Dose for ${mark.doseMin} min` : `Dose ${mark.doseMin - mark.inDrumMin} min more`
  const count = packagesFor(mark.doseMin - mark.inDrumMin, mark.leftM3, day.input)
  const packs = `${count} ${count === 1 ? 'package' : 'packages'}`
  const mixMin = settingValue(plan.site.settings, 'mixingStopMin')
  const stop =
    mark.afterStripId === '' || where === ''
      ? `${what} before ${mark.beforeStripId}, ${packs}`
      : `Stop at the mark after ${mark.afterStripId}: ${where}. ${what}, ${packs}`
  return `${stop}, mix ${printNumber(mixMin, 0)} min; ${print.volume(mark.leftM3)} left in the drum.`
}

/** Packages of retarder for all doses, against what is on hand. */
function retarderText({ day }: SheetOf): string | null {
  if (day.doseMarks.length === 0) return null
  const { retarder } = day.input
  const count = packagesOfPour(day.doseMarks, day.input)
  const wanted = `${count} ${count === 1 ? 'package' : 'packages'}`
  if (!retarder) return `Retarder: ${wanted}, no product entered`
  const size = `${printNumber(retarder.packageSize, 2)} ${retarder.unit}`
  const held = retarder.onHand === undefined ? 'stock not entered' : `${retarder.onHand} on hand`
  return `${retarder.name}: ${wanted} of ${size}, ${held}; by its label`
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
  const print = printMeasures(plan.site.units)
  for (const { task, date, time, work } of own.afterTasks) {
    const what = work ? `${afterWords[task]} (${print.length(work.lengthM)})` : afterWords[task]
    byDay.set(date, [...(byDay.get(date) ?? []), `${what} from ${print.time(nextQuarter(time))}`])
  }
  const days = [...byDay].map(([date, tasks]) => `${printDay(date, 'short')} ${tasks.join(', ')}`)
  return `After: ${days.join('; ')}. Labels and local code decide.`
}

function plantOrder(of: SheetOf, x: number, y: number, width: number): Column {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { mix, units, place } = plan.site
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
    column.row(
      `Load ${load.no}, ${print.volume(load.volumeM3)}`,
      `on site ${sheetClock(load.onSiteMs, place.zone, units)}`,
    )
  column.text(
    'No calcium chloride. Same cement and color throughout. Foreman may reject. Hold the balance until called.',
  )
  return column
}

/** What the map's marks mean, and which strips a load is for. */
function mapWords({ day }: SheetOf, map: DayMap): string {
  const loads = day.plan.loads.map(({ no, portions }) => `Load ${no}: ${tellPortions(portions)}.`)
  const marks = [
    ...(day.doseMarks.some(({ marks: own }) => own.length > 0) ? ['X = dose mark'] : []),
    ...(map.doses === 'number' ? ['figure under a letter = minutes of retarder'] : []),
    ...(map.shade ? ['dashed = edge of the shade'] : []),
  ]
  const told = marks.length === 0 ? '' : ` ${capitalize(marks.join('; '))}.`
  return `Place ${day.plan.strips[0]!.id} first. ${loads.join(' ')}${told}`
}

function windowWords({ day }: SheetOf): string {
  const { plan } = day
  const tight = plan.strips.find(strip => strip.id === plan.tightestStripId)!
  const slack = Math.round(tight.slackMin)
  const said =
    slack >= 0 ? `Tightest: strip ${tight.id}, ${slack} min of slack.` : `Strip ${tight.id} is lost by ${-slack} min.`
  return `Hatched: placing. Open: ready to too hard. Solid: stamping. Bracket: ready falls within it 8 days in 10. ${said} In 100 such days ${Math.round(plan.chanceOfMiss * 100)} lose a strip.`
}

const sentencePt = 10.5
const sentenceTall = (widthPt: number): number => sentencePt * 1.22 * wrapText(daySentence, sentencePt, widthPt).length

const rowsOf = (lines: readonly string[]): number => Math.ceil(lines.length / 2)

/** Boxes to tick in two columns, `stepPt` from line to line. */
function drawChecks(column: Column, lines: readonly string[], stepPt: number): void {
  const half = (column.width - 20) / 2
  const sides = [0, 1].map(side => new Column(column.x + side * (half + 20), column.y, half))
  lines.forEach((line, i) => {
    sides[i < rowsOf(lines) ? 0 : 1]!.box(line, stepPt)
  })
  column.parts.push(...sides.flatMap(({ parts }) => parts))
  column.y = Math.max(...sides.map(({ y }) => y))
}

interface FirstPage {
  readonly svg: string
  /** The checklist where it found no room. */
  readonly left: readonly string[]
}

const headingTall = 25

function firstPage(of: SheetOf, widthPt: number, heightPt: number): FirstPage {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { zone } = plan.site.place
  const parts: string[] = []
  const right = widthPt - margin
  const whole = right - margin
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
    drawText(sheetClock(day.plan.startMs, zone, plan.site.units), right, 76, {
      sizePt: 36,
      face: 'planBold',
      anchor: 'end',
    }),
  )
  const sub = wrapText(
    `${plan.site.name}. ${printDay(day.date, 'short')}. ${print.area(areaM2)}, ${print.volume(total)}, crew of ${day.input.hands}.`,
    letterPt,
    whole - numberWide - 134,
  )
  sub.slice(0, 2).forEach((line, i) => {
    parts.push(drawText(line, margin + numberWide + 18, 75 + i * 16, { sizePt: letterPt }))
  })
  parts.push(drawPath(moveLine([margin, 98], [right, 98]), { stroke: ink, width: 2.4 }))

  const mapWide = whole * 0.54
  const order = plantOrder(of, margin + mapWide + 22, 120, whole - mapWide - 34)
  const windows = wrapText(windowWords(of), letterPt, whole)
  const lines = [...checklist, ...(day.method.method === 'pump' ? pumpFacts.map(({ fact }) => fact) : [])]
  const strips = day.plan.strips.length
  const checksTall = headingTall + 18 + lineStep * rowsOf(lines)
  const restOf = (bottom: number): number =>
    heightPt - margin - bottom - 20 - headingTall - 16 - lineStep * windows.length
  const least = Math.max(order.y + 2, 340)
  const isWhole = restOf(least) - checksTall >= timelineTall(strips, 0)
  // The map takes the room that neither the windows nor the checklist can use.
  const spare = restOf(least) - (isWhole ? checksTall : 0) - timelineTall(strips, Number.POSITIVE_INFINITY)
  const bottom = least + Math.min(110, Math.max(0, spare - (isWhole ? 3 * rowsOf(lines) : 0)))

  const words = (map: DayMap): string[] => wrapText(mapWords(of, map), letterPt, mapWide)
  const mapBox = (under: number) => ({ x: margin, y: 104, width: mapWide, height: bottom - 104 - under * 17 - 10 })
  const first = dayMap(plan, day, mapBox(3))
  const under = words(first).length
  const map = under === 3 ? first : dayMap(plan, day, mapBox(under))
  const told = new Column(margin, bottom - (words(map).length - 1) * 17 - 2, mapWide)
  told.text(mapWords(of, map))
  parts.push(
    ...order.parts,
    drawRect(order.x - 12, 104, order.width + 24, order.y - 4 - 104, { stroke: ink, width: 1.4 }),
    map.svg,
    ...told.parts,
  )

  const time = new Column(margin, bottom + 20, whole)
  time.heading('Stamping windows')
  const timeTall = timelineTall(strips, restOf(bottom) - (isWhole ? checksTall : 0))
  parts.push(
    ...time.parts,
    dayTimeline(day, zone, plan.site.units, { x: margin, y: time.y - 8, width: whole, height: timeTall }),
  )
  const said = new Column(margin, time.y - 8 + timeTall + 18, whole)
  for (const line of windows) said.text(line)
  parts.push(...said.parts)
  if (!isWhole) return { svg: svgPage(parts, widthPt, heightPt), left: lines }
  const rule = said.y - 4
  parts.push(drawPath(moveLine([margin, rule], [right, rule]), { stroke: ink, width: 1.2 }))
  const checks = new Column(margin, rule + 14, whole)
  checks.heading('Before the truck')
  drawChecks(checks, lines, Math.min(22, (heightPt - margin + 8 - checks.y) / rowsOf(lines)))
  parts.push(...checks.parts)
  return { svg: svgPage(parts, widthPt, heightPt), left: [] }
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

/** How the second page is set: the first way in which the log has room to write. */
const secondPageWays = [
  { sizePt: 14, isBrief: false },
  { sizePt: 12.5, isBrief: false },
  { sizePt: 12, isBrief: true },
  { sizePt: 11, isBrief: true },
] as const
const leastRowPt = 18
/** Under the cautions; nothing is written there. */
const footMargin = 22

type Setting = (typeof secondPageWays)[number]

/** What to do when the day goes otherwise, a line a case. */
function drawCases(column: Column, { plan, day }: SheetOf): void {
  const { zone } = plan.site.place
  const { x, width, sizePt } = column
  const at = [0, 118, 170, 232].map(own => x + (own * sizePt) / letterPt)
  const head = (text: string, i: number): string => drawText(text, at[i]!, column.y, { sizePt: Math.min(12.5, sizePt) })
  column.parts.push(...['', 'truck', 'slack', 'what to do'].map(head))
  column.y += sizePt + 5
  for (const row of day.plan.whatIf) {
    const top = column.y
    const slack = Number.isFinite(row.slackMin) ? Math.round(row.slackMin) : null
    const slackText = slack === null ? 'lost' : slack < 0 ? `${row.firstLostStripId ?? ''} lost` : `${slack} min`
    column.parts.push(
      drawPath(moveLine([x, top - sizePt], [x + width, top - sizePt]), { stroke: ink, width: 0.5 }),
      drawText(caseName(row.case, plan.site.units), at[0]!, top, { sizePt, face: 'planBold' }),
      drawText(sheetClock(row.startMs, zone, plan.site.units), at[1]!, top, { sizePt }),
      drawText(slackText, at[2]!, top, { sizePt, face: 'planBold' }),
    )
    const told = new Column(at[3]!, top, x + width - at[3]!, sizePt)
    told.text(row.doNext)
    column.parts.push(...told.parts)
    column.y = Math.max(told.y, top + sizePt * 1.25) + 3
  }
}

/** Where to set the header if the concrete stops, and until when to decide. */
function fallbackText({ plan, day }: SheetOf): string | null {
  const [first, second] = day.plan.loads
  const { place, units } = plan.site
  const clock = (ms: number): string => sheetClock(toFiveMinutes(ms + 30 * 60_000), place.zone, units)
  const last = first?.portions.at(-1)?.stripIds.at(-1)
  if (second && last !== undefined)
    return `Fallback joint after strip ${last}: if load 2 is not here by ${clock(second.onSiteMs)}, set the header there and finish.`
  const { strips } = day.plan
  const middle = strips.length > 1 ? strips[Math.floor((strips.length - 1) / 2)] : undefined
  if (!middle) return null
  return `Fallback joint after strip ${middle.id}: if placing stops, set the header there by ${clock(middle.placedMs)} and finish.`
}

const rolesOf = (day: PourDayPlan): [role: string, count: string][] => {
  const roles = new Map<string, number>()
  for (const { role } of day.plan.crew) roles.set(role, (roles.get(role) ?? 0) + 1)
  return [...roles].map(([role, count]) => [role, String(count)])
}

/** More materials than these are told by the list of quantities. */
const mostMaterials = 4

/** What the pour takes of each material that goes by the area, against what is on hand. */
function stockOf({ plan, day }: SheetOf): string[] {
  const { units, materials = [], stock = [] } = plan.site
  const figure = (id: string): number | undefined => plan.quantities.find(own => own.id === id)?.value
  return materials
    .filter(({ kind }) => kind !== 'retarder')
    .flatMap(({ id, name, unit, packageSize }): string[] => {
      const onHand = stock.find(({ materialId }) => materialId === id)?.onHand
      const amount = figure(materialFigureId(day.pourId, id))
      const packages = figure(`${materialFigureId(day.pourId, id)}-packages`)
      if (amount === undefined && onHand === undefined) return []
      const print = (value: number): string => printQuantity(value, unit, units)
      const wanted =
        amount === undefined || packages === undefined
          ? []
          : [`takes ${print(amount)}, ${printQuantity(packages, 'packages', units)} of ${print(packageSize)}`]
      const held = onHand === undefined ? 'stock not entered' : `${print(onHand)} on hand`
      const short = onHand === undefined || amount === undefined ? 0 : Math.ceil((amount - onHand) / packageSize - 1e-9)
      return [
        `${name}: ${[...wanted, held, ...(short > 0 ? [`${printQuantity(short, 'packages', units)} short`] : [])].join('; ')}.`,
      ]
    })
    .slice(0, mostMaterials)
}

function drawJobs(column: Column, of: SheetOf, isBrief: boolean): void {
  const jobs = rolesOf(of.day)
  const stock = stockOf(of)
  const retarder = retarderText(of)
  if (isBrief) {
    column.y += 4
    column.text(`Jobs: ${jobs.map(([role, count]) => `${count} ${role}`).join('; ')}.`)
    const held = stock.length === 0 ? 'no stock entered.' : stock.join(' ')
    column.text(`Stock: ${held}${retarder === null ? '' : ` ${retarder}.`}`)
    return
  }
  const leftWide = column.width * 0.36
  const left = new Column(column.x, column.y, leftWide, column.sizePt)
  left.heading('Jobs')
  for (const [role, count] of jobs) left.row(role, count)
  const right = new Column(column.x + leftWide + 24, column.y, column.width - leftWide - 24, column.sizePt)
  right.heading('Stock')
  if (stock.length === 0) right.text('No stock entered.')
  for (const own of stock) right.text(own)
  if (retarder !== null) right.text(`${retarder}.`)
  column.parts.push(...left.parts, ...right.parts)
  column.y = Math.max(left.y, right.y)
}

interface SecondPage {
  readonly svg: string
  /** Height of a line of the log. */
  readonly rowPt: number
}

function secondPage(
  of: SheetOf,
  widthPt: number,
  heightPt: number,
  { left: checks }: FirstPage,
  { sizePt, isBrief }: Setting,
): SecondPage {
  const { day } = of
  const right = widthPt - margin
  const whole = right - margin
  const column = new Column(margin, 68, whole, sizePt)
  column.parts.push(
    drawText(`Pour ${day.number}, ${printDay(day.date, 'short')}`, right, 46, { sizePt: letterPt, anchor: 'end' }),
    drawText('If the day goes otherwise', margin, 48, { sizePt: 20, face: 'name' }),
  )
  drawCases(column, of)
  if (day.doseMarks.length > 0) {
    column.heading('Retarder')
    for (const mark of day.doseMarks) column.text(doseText(mark, of))
    column.text('Its effect ends suddenly.')
  }
  drawJobs(column, of, isBrief)
  column.y += 4
  const fallback = fallbackText(of)
  if (fallback !== null) column.text(fallback, { face: 'planBold' })
  column.text(canWait)
  const after = afterText(of)
  if (after !== null) column.text(after, { sizePt: Math.min(13, sizePt) })
  if (checks.length > 0) {
    column.heading('Before the truck')
    drawChecks(column, checks, lineStep)
  }
  column.heading('Log')
  const loadRows = [
    ['Load', 'batched', 'on site', 'empty', 'temp', 'slump', 'water'],
    ...day.plan.loads.map(load => [String(load.no), '', '', '', '', '', '']),
  ]
  const { strips } = day.plan
  // Many strips stand in two tables side by side.
  const sides = strips.length > 6 ? 2 : 1
  const perSide = Math.ceil(strips.length / sides)
  const share = (parts: readonly number[], of = whole): number[] => parts.map(part => part * of)
  const rowCount = loadRows.length + perSide + 1
  const warned = cautionOf(of)
  const footTall = 16 + 12 * 1.22 * wrapText(warned, 12, whole, 'planBold').length + sentenceTall(whole)
  const rowPt = Math.min(26, (heightPt - footTall - footMargin - column.y - 8) / rowCount)
  column.parts.push(table(margin, column.y - 12, share([0.1, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15]), loadRows, rowPt))
  const gap = 14
  const sideWide = (whole - (sides - 1) * gap) / sides
  const heads = ['Strip', 'placed', 'ready', 'too hard', 'stamped', ...(sides === 1 ? ['notes'] : [])]
  const widths = sides === 1 ? [0.1, 0.15, 0.15, 0.15, 0.15, 0.3] : [0.16, 0.21, 0.21, 0.21, 0.21]
  for (let side = 0; side < sides; side++) {
    const own = strips.slice(side * perSide, (side + 1) * perSide)
    const rows = [heads, ...own.map(({ id }) => [id, ...heads.slice(1).map(() => '')])]
    const left = margin + side * (sideWide + gap)
    column.parts.push(table(left, column.y - 12 + loadRows.length * rowPt + 8, share(widths, sideWide), rows, rowPt))
  }
  const foot = new Column(margin, heightPt - footMargin - footTall + 16, whole)
  foot.text(warned, { sizePt: 12, face: 'planBold' })
  foot.text(daySentence, { sizePt: sentencePt })
  column.parts.push(...foot.parts)
  return { svg: svgPage(column.parts, widthPt, heightPt), rowPt }
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
  let second = ''
  for (const way of secondPageWays) {
    const { svg, rowPt } = secondPage(of, widthPt, heightPt, first, way)
    second = svg
    if (rowPt >= leastRowPt) break
  }
  return {
    title: sheetText(`${plan.site.name}, day sheet of pour ${day.number}`),
    subject: sheetText(`${plan.site.name}, ${day.date}`),
    footText: '',
    sections: [page(first.svg), page(second)],
  }
}
