/** What the sheet of a day says: cautions, doses, what follows, what if, stock. */

import type { UnitSystem } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import type { Plan } from '../../plan/plan'
import { tellPortions } from '../../pours/day/doseWords'
import type { DoseMark, PourDayPlan } from '../../pours/day/pourDay'
import { packagesFor, packagesOfPour } from '../../pours/day/retarder'
import type { WhatIfCase } from '../../pours/day/whatIf'
import type { AfterTaskName } from '../../pours/order/afterTasks'
import { materialFigureId } from '../../quantities/materials'
import { capitalize } from '../../units/capitalize'
import { printDay } from '../../units/printDay'
import { printMeasures } from '../../units/printMeasures'
import { printNumber } from '../../units/printNumber'
import { printQuantity } from '../printQuantity'
import { nextQuarter, sheetClock, toFiveMinutes } from '../sheetClock'
import type { DayMap } from './dayMap'

export interface SheetOf {
  readonly plan: Plan
  readonly day: PourDayPlan
}

export const daySentence =
  'Estimate from forecast weather and typical mix behavior. It can be off by 30 minutes or more until you log a few pours. The finger test and the foreman decide. Measure each load’s temperature and note its batch time. Follow the admixture label and the ready-mix producer.'

const caution =
  'Wet concrete burns skin: boots, gloves, eye cover, no kneeling in it, rinse at once. Retarder, hardener and release: mask, gloves, label. Cut wet: the dust is silica. Lift by two. Stay clear of power lines. At thunder everybody inside.'
const pumpCaution = 'Nobody before the end of the hose while it is primed, blocked or cleared.'
const whoRules = 'Local rules, producer and labels come first.'

/** What can hurt somebody on this day. */
export function cautionOf({ plan, day }: SheetOf): string {
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

export function doseText(mark: DoseMark, { plan, day }: SheetOf): string {
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
export function retarderText({ day }: SheetOf): string | null {
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
export function afterText({ plan, day }: SheetOf): string | null {
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

/** What the map's marks mean, and which strips a load is for. */
export function mapWords({ day }: SheetOf, map: DayMap): string {
  const loads = day.plan.loads.map(({ no, portions }) => `Load ${no}: ${tellPortions(portions)}.`)
  const marks = [
    ...(day.doseMarks.some(({ marks: own }) => own.length > 0) ? ['X = dose mark'] : []),
    ...(map.doses === 'number' ? ['figure under a letter = minutes of retarder'] : []),
    ...(map.shade ? ['dashed = edge of the shade'] : []),
  ]
  const told = marks.length === 0 ? '' : ` ${capitalize(marks.join('; '))}.`
  return `Place ${day.plan.strips[0]!.id} first. ${loads.join(' ')}${told}`
}

export function windowWords({ day }: SheetOf): string {
  const { plan } = day
  const tight = plan.strips.find(strip => strip.id === plan.tightestStripId)!
  const slack = Math.round(tight.slackMin)
  const said =
    slack >= 0 ? `Tightest: strip ${tight.id}, ${slack} min of slack.` : `Strip ${tight.id} is lost by ${-slack} min.`
  return `Hatched: placing. Open: ready to too hard. Solid: stamping. Bracket: ready falls within it 8 days in 10. ${said} In 100 such days ${Math.round(plan.chanceOfMiss * 100)} lose a strip.`
}

/** Where to set the header if the concrete stops, and until when to decide. */
export function fallbackText({ plan, day }: SheetOf): string | null {
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

export const rolesOf = (day: PourDayPlan): [role: string, count: string][] => {
  const roles = new Map<string, number>()
  for (const { role } of day.plan.crew) roles.set(role, (roles.get(role) ?? 0) + 1)
  return [...roles].map(([role, count]) => [role, String(count)])
}

/** More materials than these are told by the list of quantities. */
const mostMaterials = 4

/** What the pour takes of each material that goes by the area, against what is on hand. */
export function stockOf({ plan, day }: SheetOf): string[] {
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
