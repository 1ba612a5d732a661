/** What is to be done next at the slab, by the time it is due. */
import { type DayInput, isSetKnown } from '../day/dayProblem'
import { packagesFor } from '../day/retarder'
import type { SlabPlan, SlabStrip } from './planAtSlab'
import { placedCount, type SlabState } from './slabState'

export interface SlabStep {
  readonly what: 'batched' | 'onSite' | 'dosed' | 'placed' | 'ready' | 'stamped' | 'done'
  readonly dueMs: number
  /** Load, from 1: batched, onSite, dosed. */
  readonly load?: number
  /** Strip: placed, ready, stamped; of dosed the strip that gets it. */
  readonly strip?: string
  /** Of dosed: delay the drum is to have and has, packages to put in, concrete left. */
  readonly doseMin?: number
  readonly inDrumMin?: number
  readonly packages?: number
  readonly leftM3?: number
  /** Of stamped: too hard then. */
  readonly byMs?: number
  /** Of ready and stamped: the weather hours end before, so that nothing is known of the time. */
  readonly isTimeless?: true
}

/** A step this long past due is late. */
export const lateAfterMin = 5

/** Whole packages make a dose that differs a little from the one wanted. */
const doseSlopMin = 10

/** The strip stamped next: the first in the order of stamping that is not. */
function nextToStamp(strips: readonly SlabStrip[]): SlabStrip | undefined {
  return strips
    .filter(({ state }) => state === 'ready' || state === 'placed')
    .reduce<SlabStrip | undefined>(
      (first, strip) => (first === undefined || strip.stampFromMs < first.stampFromMs ? strip : first),
      undefined,
    )
}

const timeless = (strip: SlabStrip) => (isSetKnown(strip) ? {} : ({ isTimeless: true } as const))

/** The soonest first. */
export function nextSteps(day: DayInput, state: SlabState, plan: SlabPlan): readonly SlabStep[] {
  const steps: SlabStep[] = []
  const down = placedCount(state)
  const { strips, loads } = plan
  const coming = loads.find(load => load.state === 'toBatch')
  if (coming) steps.push({ what: 'batched', load: coming.no, dueMs: coming.batchMs })
  const riding = loads.find(load => load.state === 'onTheWay')
  if (riding) steps.push({ what: 'onSite', load: riding.no, dueMs: riding.onSiteMs })
  const next = strips[down]
  const load = next && loads[next.load]
  if (next && load?.state === 'onSite') {
    const { doseMin: drumMin = 0, isDoseTold = false } = state.loads[next.load] ?? {}
    const beganMs = strips[down - 1]?.placedMs ?? load.onSiteMs
    if (next.doseMin > drumMin + doseSlopMin && !isDoseTold) {
      const leftM3 = day.strips.reduce(
        (sum, { load: own, volumeM3 }, i) => (own === next.load && i >= down ? sum + volumeM3 : sum),
        0,
      )
      const packages = packagesFor(next.doseMin - drumMin, leftM3, day)
      steps.push({
        ...{ what: 'dosed', load: load.no, strip: next.id, dueMs: beganMs },
        ...{ doseMin: next.doseMin, inDrumMin: drumMin, packages, leftM3 },
      })
    }
    steps.push({ what: 'placed', strip: next.id, dueMs: next.placedMs })
  }
  const soft = strips.find(strip => strip.state === 'placed')
  if (soft) steps.push({ what: 'ready', strip: soft.id, dueMs: soft.readyMs, ...timeless(soft) })
  const open = nextToStamp(strips)
  if (open?.state === 'ready')
    steps.push({ what: 'stamped', strip: open.id, dueMs: open.stampToMs, byMs: open.tooHardMs, ...timeless(open) })
  if (strips.every(strip => strip.state === 'stamped') && state.doneMs === null)
    steps.push({ what: 'done', dueMs: Math.max(...strips.map(strip => strip.stampToMs)) })
  return steps.sort((a, b) => a.dueMs - b.dueMs)
}
