/** The rest of a pour under way: planned again from what was tapped and the clock. */
import { type Finding, ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import { rideMinutes } from '../../concrete/setTargets'
import type { DayPlan, PlannedStrip } from '../day/dayPlan'
import { batchedMin, type DayInput, dosesMin, isSetKnown, type TruckTimes } from '../day/dayProblem'
import { type Observation, replan, type TablesFor } from '../day/replan'
import { type SolvedDay, solveDay } from '../day/solveDay'
import { firstLost } from '../day/whatIf'
import { type SeenPace, seenPace } from './seenPace'
import { placedCount, type SlabState } from './slabState'

const minuteMs = 60_000

/** A planned strip as far as it has come; its slack is infinite once it is stamped. */
export interface SlabStrip extends Omit<PlannedStrip, 'areaM2' | 'placeMs'> {
  readonly state: 'toPlace' | 'placed' | 'ready' | 'stamped'
}

export interface SlabLoad {
  /** From 1. */
  readonly no: number
  readonly state: 'toBatch' | 'onTheWay' | 'onSite' | 'empty'
  readonly batchMs: number
  readonly onSiteMs: number
  readonly volumeM3: number
  /** In the drum by the strips that are down, m³. */
  readonly leftM3: number
  /** Packages of retarder that went in. */
  readonly packages: number
}

export interface SlabPlan {
  readonly strips: readonly SlabStrip[]
  readonly loads: readonly SlabLoad[]
  /** Of what is not stamped yet; null when all is, or when the weather does not tell. */
  readonly slackMin: number | null
  readonly firstLostStripId: string | null
  /** The strip with the least slack. */
  readonly tightestStripId: string | null
  /** Doses of the strips not yet placed differ from the plan of the morning. */
  readonly dosesChanged: boolean
  /** Set of today's mix over what was planned: under 1 sets sooner. */
  readonly setFactor: number
  /** Placing as it was seen: what is not down is planned at this pace. */
  readonly pace: SeenPace
  readonly hands: number
}

export interface AtSlabInput {
  readonly day: DayInput
  /** The plan of the morning, and its solution on this machine. */
  readonly plan: DayPlan
  readonly solved: SolvedDay
  readonly state: SlabState
  readonly nowMs: number
  /** Area behind the mark of the concrete's front, where one was set. */
  readonly frontM2?: number
  readonly tablesFor?: TablesFor
}

/** 10th and 90th percentile of a normal, in spreads. */
const tenthPercentile = 1.2815515655446004

function trucksOf({ plan, state, day, nowMs }: AtSlabInput): TruckTimes[] {
  const rideMs = rideMinutes(day.mix, day.settings) * minuteMs
  return plan.loads.map(({ onSiteMs }, load) => {
    const seen = state.loads[load]
    const lateMs = (seen?.lateMin ?? 0) * minuteMs
    if (seen?.onSiteMs !== undefined)
      return { onSiteMs: seen.onSiteMs, ...(seen.batchedMs === undefined ? {} : { batchedMs: seen.batchedMs }) }
    if (seen?.batchedMs !== undefined)
      return { batchedMs: seen.batchedMs, onSiteMs: Math.max(seen.batchedMs + rideMs + lateMs, nowMs) }
    return { onSiteMs: Math.max(onSiteMs + lateMs, nowMs) }
  })
}

function observationsOf({ state, day }: AtSlabInput): Observation[] {
  const down = placedCount(state)
  return state.strips.slice(0, down).map(({ placedMs, readyMs, doseMin }, strip) => {
    const load = day.strips[strip]!.load
    const isFirst = strip === 0 || day.strips[strip - 1]!.load !== load
    const truck = state.loads[load]
    return {
      strip,
      ...(truck?.batchedMs === undefined ? {} : { batchedMs: truck.batchedMs }),
      ...(placedMs === undefined ? {} : { placedToMs: placedMs }),
      ...(isFirst && truck?.onSiteMs !== undefined && (placedMs === undefined || truck.onSiteMs < placedMs)
        ? { placedFromMs: truck.onSiteMs }
        : {}),
      ...(doseMin === undefined ? {} : { doseMin }),
      ...(readyMs === undefined ? {} : { readyMs }),
    }
  })
}

/** What the drum has where a dose, or none, was told since the last strip; the next strip gets it. */
function freshDose({ day, state }: AtSlabInput, down: number): number | undefined {
  const next = day.strips[down]
  const { doseMin, isDoseTold } = (next && state.loads[next.load]) ?? {}
  if (next === undefined || doseMin === undefined) return undefined
  if (isDoseTold) return doseMin
  const before = day.strips[down - 1]?.load === next.load ? state.strips[down - 1]?.doseMin : undefined
  return before !== undefined && before >= doseMin ? undefined : doseMin
}

/**
 * Strips, loads and slack from now on. Fails where fewer hands are left than can place and stamp. What was not tapped is
 * taken as planned, but ends no sooner than now; what is not down is placed at the pace seen today.
 */
export function planAtSlab(input: AtSlabInput): Result<SlabPlan, readonly Finding[]> {
  const { day, plan, solved, state, nowMs } = input
  const down = placedCount(state)
  const drumMin = freshDose(input, down)
  const isTouched =
    down > 0 ||
    state.loads.some(load => load.batchedMs !== undefined || load.onSiteMs !== undefined || load.lateMin > 0)
  const stampedMs = state.strips.map(strip => strip.stampedMs)
  const pace = seenPace(day, solved, state, input.frontM2)
  const today: DayInput = {
    ...day,
    hands: day.hands - state.handsMissing,
    ...(isTouched || nowMs > plan.startMs ? { trucks: trucksOf(input), nowMs } : {}),
    ...(stampedMs.some(at => at !== undefined) ? { stampedMs } : {}),
    ...(drumMin === undefined ? {} : { drumDoseMin: drumMin }),
    ...(pace.strips === 0 ? {} : { placingFactor: pace.factor }),
    tables: solved.tables,
  }
  const again = down > 0 ? replan(today, solved, observationsOf(input), input.tablesFor) : null
  if (again && !again.ok) return again
  const first = again ? null : solveDay(today)
  if (first && !first.ok) return first
  const now = again ? again.value.solved : first!.value
  const replanned = again ? again.value.day : today
  const at = (min: number): number => day.startMs + min * minuteMs
  const stopMin = settingValue(day.settings, 'mixingStopMin')
  const spreadLn = [...now.tables.values()][0]?.spreadLn ?? settingValue(day.settings, 'setSpreadLn')
  const strips = [...now.run.times]
    .sort((a, b) => a.strip - b.strip)
    .map((time): SlabStrip => {
      const seen = state.strips[time.strip]!
      const { id, load, borderM } = day.strips[time.strip]!
      const placed = now.placed[time.strip]!
      const isDown = time.strip < down
      const readyMs = at(time.window.readyMin)
      const age = readyMs - at(batchedMin(replanned, placed))
      const spread = seen.readyMs === undefined ? Math.exp(tenthPercentile * spreadLn) - 1 : 0
      const doneMin = borderM > 0 ? Math.max(time.stampToMin, time.borderToMin) : time.stampToMin
      return {
        ...{ id, load },
        state:
          seen.stampedMs !== undefined
            ? 'stamped'
            : seen.readyMs !== undefined
              ? 'ready'
              : isDown
                ? 'placed'
                : 'toPlace',
        placedMs: at(placed.toMin + (isDown ? 0 : time.stops * stopMin)),
        readyMs: seen.readyMs ?? readyMs,
        readyP10Ms: readyMs - (age * spread) / (1 + spread),
        readyP90Ms: readyMs + age * spread,
        tooHardMs: at(time.window.tooHardMin),
        stampFromMs: at(time.stampFromMin),
        stampToMs: seen.stampedMs ?? at(time.stampToMin),
        doseMin: dosesMin[time.dose]!,
        slackMin: seen.stampedMs === undefined ? time.window.tooHardMin - doneMin : Number.POSITIVE_INFINITY,
      }
    })
  const open = strips.filter(strip => strip.state !== 'stamped')
  const tightest = open.reduce<SlabStrip | null>(
    (least, strip) => (least === null || strip.slackMin < least.slackMin ? strip : least),
    null,
  )
  const isKnown = tightest !== null && isSetKnown(tightest)
  return ok({
    strips,
    loads: loadsOf(input, now, replanned),
    slackMin: isKnown ? tightest.slackMin : null,
    firstLostStripId: isKnown && tightest.slackMin < 0 ? firstLost(now.run, day) : null,
    tightestStripId: tightest?.id ?? null,
    dosesChanged: strips.some((strip, i) => i >= down && strip.doseMin !== plan.strips[i]?.doseMin),
    setFactor: again ? again.value.setFactor : 1,
    pace,
    hands: today.hands,
  })
}

function loadsOf({ plan, state, day }: AtSlabInput, now: SolvedDay, replanned: DayInput): SlabLoad[] {
  const down = placedCount(state)
  const rideMs = rideMinutes(day.mix, day.settings) * minuteMs
  return plan.loads.map(({ no, volumeM3 }, load): SlabLoad => {
    const seen = state.loads[load]!
    const own = day.strips.flatMap((strip, i) => (strip.load === load ? [i] : []))
    const first = own[0] ?? 0
    const arrivedMs = day.startMs + now.placed[first]!.arrivedMin * minuteMs
    const batchMs = seen.batchedMs ?? day.startMs + batchedMin(replanned, now.placed[first]!) * minuteMs
    const isEmpty = own.every(i => i < down)
    return {
      ...{ no, volumeM3, packages: seen.packages },
      leftM3: own.reduce((sum, i) => (i < down ? sum : sum + day.strips[i]!.volumeM3), 0),
      state: isEmpty
        ? 'empty'
        : seen.onSiteMs !== undefined || first < down
          ? 'onSite'
          : seen.batchedMs !== undefined
            ? 'onTheWay'
            : 'toBatch',
      batchMs,
      onSiteMs:
        seen.onSiteMs ?? (seen.batchedMs === undefined ? arrivedMs : seen.batchedMs + rideMs + seen.lateMin * minuteMs),
    }
  })
}
