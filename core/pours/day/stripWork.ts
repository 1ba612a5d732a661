/** How long a job takes on a strip with so many hands. Minutes; more hands never take longer. */
import type { HandRates, TaskName } from './taskTable'

/** What of a strip the work is counted by. */
export interface StripSize {
  readonly areaM2: number
  /** Formed edge to tool. */
  readonly edgeM: number
  /** Border printed today. */
  readonly borderM: number
  /** Of the border: along arcs, where mats are fitted piece by piece. None if left out. */
  readonly borderArcM?: number
  /** Corners at which the border meets itself. None if left out. */
  readonly miters?: number
  /** Printed with mats; all of it if left out. A border printed by length is not. */
  readonly printM2?: number
  /** Along the header or the print's front: the room the stampers have. */
  readonly frontM: number
}

export interface TimedTask {
  readonly name: TaskName
  readonly min: number
  readonly hands: number
}

/** m²/h that the method brings to this place, without an end where the crew sets the pace. */
export type MethodRate = number

const hours = (amount: number, perHour: number): number => (amount <= 0 ? 0 : amount / perHour)

/**
 * Placing as one flow of the hands told off to it: place, strike off, bull-float, edge. Its rate is the least of what
 * the hands, the method at this haul, and the screed can do.
 */
export function placingTasks(strip: StripSize, hands: number, rates: HandRates, methodM2H: MethodRate): TimedTask[] {
  const { areaM2, edgeM } = strip
  const handHours = [
    hours(areaM2, rates.placeM2H),
    hours(areaM2, rates.strikeOffM2H),
    hours(areaM2, rates.bullFloatM2H),
    hours(edgeM, rates.edgeMH),
  ]
  const sum = handHours.reduce((total, own) => total + own, 0)
  const least = hours(areaM2, Math.min(methodM2H, rates.strikeOffMostM2H))
  const wholeMin = 60 * Math.max(sum / hands, least)
  const names: readonly TaskName[] = ['place', 'strikeOff', 'bullFloat', 'edge']
  return names.map((name, i) => ({ name, min: sum === 0 ? 0 : (wholeMin * handHours[i]!) / sum, hands }))
}

/**
 * First pass, wetting out, float, second pass, float again. The first of the color wets out while the rest is thrown, so
 * only what is left of that wait is waited.
 */
export function colorTasks(strip: StripSize, hands: number, rates: HandRates): TimedTask[] {
  const min = (rate: number): number => (60 * hours(strip.areaM2, rate)) / hands
  if (!rates.hardener) return [{ name: 'float', min: min(rates.floatM2H), hands }]
  const firstMin = min(rates.hardenerFirstM2H)
  return [
    { name: 'hardenerFirst', min: firstMin, hands },
    { name: 'wetOut', min: Math.max(0, rates.wetOutMin - firstMin), hands },
    { name: 'float', min: min(rates.floatM2H), hands },
    { name: 'hardenerSecond', min: min(rates.hardenerSecondM2H), hands },
    { name: 'floatAgain', min: min(rates.floatM2H), hands },
  ]
}

/** Hands that find room along a front of this length; one always does. */
const roomFor = (frontM: number, rates: HandRates): number => Math.max(1, frontM / rates.frontM)

/** Release, then stamping at min(hands × rate, mats ÷ cycle, room along the front); the border too without a hand of its own. */
export function stampingTasks(strip: StripSize, hands: number, rates: HandRates, withBorder: boolean): TimedTask[] {
  const { areaM2, borderM } = strip
  const printM2 = strip.printM2 ?? areaM2
  const pace = Math.min(Math.min(hands, roomFor(strip.frontM, rates)) * rates.stampM2H, rates.matsM2H)
  const tasks: TimedTask[] = []
  if (rates.stamped) tasks.push({ name: 'release', min: (60 * hours(areaM2, rates.releaseM2H)) / hands, hands })
  tasks.push({ name: 'stamp', min: 60 * hours(printM2, pace), hands })
  if (withBorder && borderM > 0) tasks.push({ name: 'border', min: borderMin(strip, hands, rates), hands })
  return tasks
}

/** By length; slower along arcs, and each miter takes a time of its own. */
export function borderMin(strip: StripSize, hands: number, rates: HandRates): number {
  const { borderM, borderArcM = 0, miters = 0 } = strip
  const handHours = hours(borderM - borderArcM, rates.borderMH) + hours(borderArcM, rates.borderArcMH)
  return (60 * handHours + miters * rates.miterMin) / hands
}

export const touchUpMin = (strip: StripSize, hands: number, rates: HandRates): number =>
  (60 * hours(strip.areaM2, rates.touchUpM2H)) / hands

export const sumMin = (tasks: readonly TimedTask[]): number => tasks.reduce((sum, task) => sum + task.min, 0)
