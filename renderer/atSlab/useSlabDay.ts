import { useMemo, useRef } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import type { DayInput, SetTables } from '../../core/pours/day/dayProblem'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { type SolvedDay, solveDay } from '../../core/pours/day/solveDay'
import { balanceAtSlab, type SlabBalance } from '../../core/pours/slab/balanceAtSlab'
import { type SlabFront, slabFront } from '../../core/pours/slab/front'
import { measuredInput } from '../../core/pours/slab/measuredInput'
import { nextSteps, type SlabStep } from '../../core/pours/slab/nextSteps'
import { planAtSlab, type SlabPlan } from '../../core/pours/slab/planAtSlab'
import { type SlabFix, slabFixes } from '../../core/pours/slab/slabFixes'
import { readTaps, type SlabState } from '../../core/pours/slab/slabState'
import type { LogLoad, LogTap } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'

export interface SlabDay {
  readonly state: SlabState
  /** Null where too few hands are left to go on. */
  readonly plan: SlabPlan | null
  readonly findings: readonly Finding[]
  readonly steps: readonly SlabStep[]
  readonly front: SlabFront
  readonly balance: SlabBalance | null
  /** What would help, worked out when it is asked for. */
  readonly fixes: () => readonly SlabFix[]
}

/** Runs of the heat balance are kept while the mix of the day stays what it was seen to be. */
const mostTables = 8

/** The pour under way, from its plan, its taps and the minute: the same object as long as none of them changes. */
export function useSlabDay(
  day: PourDayPlan,
  pour: PlannedPour,
  taps: readonly LogTap[],
  loads: readonly LogLoad[],
  minuteMs: number,
): SlabDay | null {
  const input = useMemo(() => measuredInput(day.input, loads), [day, loads])
  const solved = useMemo((): SolvedDay | null => {
    const made = solveDay({ ...input, tables: new Map() }, { withLargest: true })
    return made.ok ? made.value : null
  }, [input])
  const tables = useRef<{ of: DayInput; kept: Map<string, SetTables> }>({ of: input, kept: new Map() })
  const front = useMemo(() => slabFront(pour.region, day.direction), [pour.region, day.direction])
  const state = useMemo(() => readTaps(taps, day.input.strips, day.plan.loads.length), [taps, day])
  return useMemo(() => {
    if (!solved) return null
    if (tables.current.of !== input) tables.current = { of: input, kept: new Map() }
    const { kept } = tables.current
    const tablesFor = (movedLn: number, weight: number): SetTables => {
      const key = `${movedLn} ${weight}`
      const known = kept.get(key)
      if (known) return known
      if (kept.size >= mostTables) kept.clear()
      const made: SetTables = new Map()
      kept.set(key, made)
      return made
    }
    const of = {
      ...{ day: input, plan: day.plan, solved, state, nowMs: minuteMs, tablesFor },
      ...(state.front === null ? {} : { frontM2: front.areaTo(state.front.comeM) }),
    }
    const fixes = () => slabFixes(of, front)
    const made = planAtSlab(of)
    if (!made.ok) return { state, plan: null, findings: made.error, steps: [], front, balance: null, fixes }
    return {
      state,
      plan: made.value,
      findings: [],
      steps: nextSteps(input, state, made.value),
      front,
      balance: balanceAtSlab({ day: input, state }, made.value, front),
      fixes,
    }
  }, [solved, input, day, state, minuteMs, front])
}
