/** The sentences of the screen at the slab. */
import { settingValue } from '../../../shared/settings'
import type { Measures } from '../../units/measures'
import { printNumber } from '../../units/printNumber'
import type { DayInput } from '../day/dayProblem'
import { tellDoses } from '../day/doseWords'
import type { SlabBalance } from './balanceAtSlab'
import type { SlabStep } from './nextSteps'
import type { SlabPlan } from './planAtSlab'
import type { SlabState } from './slabState'

/** An instant on the site's clock: `9:40 am`. */
export type Clock = (ms: number) => string

const minutes = (min: number): string => `${printNumber(Math.max(0, Math.round(min)), 0)} min`

/** `2 h 10 min`, `25 min` */
export function printSpan(ms: number): string {
  const min = Math.max(0, Math.round(ms / 60_000))
  return min < 100 ? `${min} min` : `${Math.floor(min / 60)} h ${min % 60} min`
}

const list = (ids: readonly string[]): string =>
  ids.length < 2 ? ids.join('') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`

const strips = (ids: readonly string[]): string => `${ids.length === 1 ? 'Strip' : 'Strips'} ${list(ids)}`

const timelessWords = 'The weather hours end before this sets: watch it by hand.'

function tellSlack(day: DayInput, plan: SlabPlan): string {
  const { slackMin, tightestStripId, firstLostStripId } = plan
  if (plan.strips.every(({ state }) => state === 'stamped')) return 'All strips are stamped.'
  if (slackMin === null) return timelessWords
  if (firstLostStripId !== null || slackMin < 0) {
    const lost = plan.strips.find(({ id }) => id === (firstLostStripId ?? tightestStripId))!
    const late = minutes(-slackMin)
    return lost.state === 'toPlace'
      ? `Strip ${lost.id} would be lost, ${late} short. Set the header before strip ${lost.id} and finish there; hold the rest of the concrete.`
      : `Strip ${lost.id} is lost first, ${late} short. All hands to strip ${lost.id}; keep the texture, the rest waits until tomorrow.`
  }
  const least = `${minutes(slackMin)} of slack, least in strip ${tightestStripId}.`
  return slackMin < settingValue(day.settings, 'wantedSlackMin')
    ? `Only ${least} Keep the texture; touch-up waits until tomorrow.`
    : least
}

function tellDosesLeft({ strips: all, dosesChanged }: SlabPlan): string | null {
  const open = all.filter(({ state }) => state === 'toPlace')
  if (!dosesChanged || open.length === 0) return null
  return `Retarder from now on: ${tellDoses(open)}.`
}

function tellSet({ setFactor }: SlabPlan): string | null {
  const percent = Math.round(Math.abs(1 - setFactor) * 100)
  if (percent < 3) return null
  return `It sets about ${percent} % ${setFactor < 1 ? 'sooner' : 'later'} than planned.`
}

function tellPace({ pace, strips: all }: SlabPlan): string | null {
  const { factor, isLimited } = pace
  const percent = Math.round(Math.abs(factor - 1) * 100)
  if (percent < 10 || !all.some(({ state }) => state === 'toPlace')) return null
  const seen = `seen on ${pace.strips === 1 ? '1 strip' : `${pace.strips} strips`}`
  if (isLimited)
    return `Placing was tapped more than twice as ${factor > 1 ? 'slow' : 'fast'} as planned, ${seen}: the rest is planned at twice. Check the taps.`
  return `Placing takes about ${percent} % ${factor > 1 ? 'longer' : 'less'} than planned, ${seen}: the rest is planned so.`
}

function tellRain({ strips: all }: SlabPlan, { rainMs }: SlabState, clock: Clock): string | null {
  if (rainMs === null) return null
  const open = all.filter(({ state, stampToMs }) => state !== 'stamped' && stampToMs > rainMs)
  if (open.length === 0) return `Printed before the rain at ${clock(rainMs)}: cover it until the color can be washed.`
  const wet = strips(open.map(({ id }) => id))
  const unplaced = open.find(({ state }) => state === 'toPlace')
  const header = unplaced ? ` Set the header before strip ${unplaced.id} if it is sure to come.` : ''
  return `${wet} ${open.length === 1 ? 'is' : 'are'} still open when the rain comes at ${clock(rainMs)}: covers at hand.${header}`
}

/** How the day stands: slack, what is lost first, retarder, pace, set, rain. `before` = the slack before the last tap. */
export function tellPlan(
  day: DayInput,
  plan: SlabPlan,
  state: SlabState,
  clock: Clock,
  before: number | null = null,
): string {
  const moved = before === null || plan.slackMin === null ? 0 : Math.round(plan.slackMin - before)
  const change = Math.abs(moved) < 2 ? null : `${minutes(Math.abs(moved))} ${moved > 0 ? 'more' : 'less'} than before.`
  return [
    tellSlack(day, plan),
    change,
    tellDosesLeft(plan),
    tellPace(plan),
    tellSet(plan),
    tellRain(plan, state, clock),
  ]
    .filter(words => words !== null)
    .join(' ')
}

export interface StepWords {
  readonly ask: string
  readonly detail: string
  /** On the button. */
  readonly done: string
}

export function tellStep(step: SlabStep, day: DayInput, plan: SlabPlan, print: Measures, clock: Clock): StepWords {
  const { what, load, strip } = step
  const due = `about ${clock(step.dueMs)}`
  switch (what) {
    case 'batched':
      return {
        ask: `Load ${load} batched?`,
        detail: `Planned ${due}. Ask the plant or read the ticket.`,
        done: 'Batched',
      }
    case 'onSite':
      return { ask: `Load ${load} here?`, detail: `Expected ${due}.`, done: 'On site' }
    case 'dosed': {
      const count = step.packages === 1 ? '1 package' : `${step.packages} packages`
      const mixMin = printNumber(settingValue(day.settings, 'mixingStopMin'), 0)
      return {
        ask: `Retarder before strip ${strip}: ${count}`,
        detail: `${step.inDrumMin ? `From ${printNumber(step.inDrumMin, 0)} to` : 'For'} ${step.doseMin} min, with ${print.volume(step.leftM3 ?? 0)} left in load ${load}. Stop, mix ${mixMin} min. The label and the producer rule.`,
        done: `${count} in`,
      }
    }
    case 'placed':
      return { ask: `Strip ${strip} placed?`, detail: `Struck off and bull-floated ${due}.`, done: 'Placed' }
    case 'ready': {
      if (step.isTimeless) return { ask: `Strip ${strip} ready?`, detail: timelessWords, done: 'Ready' }
      const own = plan.strips.find(({ id }) => id === strip)
      const band = own ? ` It may be from ${clock(own.readyP10Ms)} to ${clock(own.readyP90Ms)}.` : ''
      return { ask: `Strip ${strip} ready?`, detail: `Test by finger ${due}.${band}`, done: 'Ready' }
    }
    case 'stamped':
      return {
        ask: `Strip ${strip} stamped?`,
        detail: step.isTimeless ? timelessWords : `Planned ${due}; too hard about ${clock(step.byMs ?? step.dueMs)}.`,
        done: 'Stamped',
      }
    case 'done':
      return { ask: 'All stamped: end the pour?', detail: 'Cover, cure and rope it off first.', done: 'End the pour' }
  }
}

/** Off by more than this share of the thickness, something is wrong: own choice. */
const thicknessOff = 0.1

/** Thickness running, what is needed, and the call for it. */
export function tellBalance(
  balance: SlabBalance,
  plannedM: number,
  print: Measures,
  clock: Clock,
  nowMs: number,
): string {
  const { thicknessM } = balance
  const check =
    thicknessM < (1 - thicknessOff) * plannedM
      ? ' Too thin: check forms, base and the mark.'
      : thicknessM > (1 + thicknessOff) * plannedM
        ? ' Check the base.'
        : ''
  const running = `Running ${print.size(thicknessM)} thick, ${print.size(plannedM)} planned.${check}`
  if (balance.neededM3 === 0) return `${running} What is ordered is enough.`
  const need = `${running} ${print.volume(balance.neededM3)} more than ordered.`
  if (balance.callByMs === null) return need
  return balance.callByMs <= nowMs ? `${need} Call the plant now.` : `${need} Call by ${clock(balance.callByMs)}.`
}
