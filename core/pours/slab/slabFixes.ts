/** What a foreman can still do when the hands are too few or a strip would be lost, each with what it brings. */
import { settingValue } from '../../../shared/settings'
import { mostOnSiteMin } from '../../concrete/tables/retarderDose'
import { leastHands } from '../day/crewSplit'
import { packagesFor } from '../day/retarder'
import type { SlabFront } from './front'
import { type AtSlabInput, planAtSlab } from './planAtSlab'
import { type LoadSeen, placedCount } from './slabState'

/** `slackMin` of what is then placed; null where hands or weather do not let it be told. */
export type SlabFix = { readonly slackMin: number | null } & (
  | { readonly does: 'hands'; readonly more: number; readonly hands: number; readonly areMissing: boolean }
  /** The header before this strip, this far along, with so much placed behind it. */
  | { readonly does: 'stop'; readonly stripId: string; readonly comeM: number; readonly areaM2: number }
  | { readonly does: 'later'; readonly load: number; readonly minutes: number }
  | {
      readonly does: 'dose'
      readonly load: number
      readonly packages: number
      readonly doseMin: number
    }
)

/** A gain under this is none (own choice). */
const leastGainMin = 2
const laterMin = [30, 60] as const

const slackOf = (input: AtSlabInput): number | null => {
  const made = planAtSlab(input)
  return made.ok ? made.value.slackMin : null
}

/** The pour as far as the first strips only. */
function upTo(input: AtSlabInput, count: number): AtSlabInput {
  const { day, plan, state } = input
  const strips = day.strips.slice(0, count)
  return {
    ...input,
    day: { ...day, strips },
    plan: { ...plan, strips: plan.strips.slice(0, count), loads: plan.loads.slice(0, strips.at(-1)!.load + 1) },
    state: { ...state, strips: state.strips.slice(0, count) },
  }
}

const withHands = (input: AtSlabInput, more: number): AtSlabInput => ({
  ...input,
  state: { ...input.state, handsMissing: input.state.handsMissing - more },
})

const withLoad = (input: AtSlabInput, load: number, change: Partial<LoadSeen>): AtSlabInput => ({
  ...input,
  state: {
    ...input.state,
    loads: input.state.loads.map((own, i) => (i === load ? { ...own, ...change } : own)),
  },
})

/**
 * The most slack first. With too few hands to go on, slack is told as if just enough were there by then; what helps
 * nothing is left out, the rest of a pour that stands still excepted.
 */
export function slabFixes(input: AtSlabInput, front: SlabFront): readonly SlabFix[] {
  const { day, state } = input
  const { strips } = day
  const hands = day.hands - state.handsMissing
  const isShort = hands < leastHands
  const more = isShort ? leastHands - hands : 1
  const now = isShort ? null : slackOf(input)
  const helped = isShort ? withHands(input, more) : input
  const helps = (slackMin: number | null): boolean =>
    isShort || (slackMin !== null && slackMin > (now ?? Number.NEGATIVE_INFINITY) + leastGainMin)
  const fixes: SlabFix[] = []
  const offer = (fix: SlabFix): void => {
    if (helps(fix.slackMin)) fixes.push(fix)
  }
  const withMore = slackOf(withHands(input, more))
  offer({
    ...{ does: 'hands', more, hands: hands + more, areMissing: state.handsMissing >= more },
    slackMin: withMore,
  })
  const down = placedCount(state)
  const stop = (count: number, slackMin: number | null): SlabFix => {
    const areaM2 = strips.slice(0, count).reduce((sum, strip) => sum + strip.areaM2, 0)
    return { does: 'stop', stripId: strips[count]!.id, comeM: front.comeFor(areaM2), areaM2, slackMin }
  }
  if (isShort && down > 0 && down < strips.length) offer(stop(down, null))
  else if (!isShort) {
    const wantedMin = settingValue(day.settings, 'wantedSlackMin')
    let best: SlabFix | null = null
    for (let count = strips.length - 1; count >= Math.max(1, down); count--) {
      const slackMin = slackOf(upTo(input, count))
      if (slackMin === null || slackMin <= (best?.slackMin ?? Number.NEGATIVE_INFINITY)) continue
      best = stop(count, slackMin)
      if (slackMin >= wantedMin) break
    }
    if (best) offer(best)
  }
  const next = state.loads.findIndex(
    (load, i) =>
      load.batchedMs === undefined && load.onSiteMs === undefined && strips.some((s, k) => s.load === i && k >= down),
  )
  // Once concrete is down, a later truck only makes a cold joint nearer: unless nobody could place it.
  if (next >= 0 && (isShort || down === 0)) {
    const tried = laterMin.map((minutes): SlabFix => {
      const lateMin = state.loads[next]!.lateMin + minutes
      return { does: 'later', load: next + 1, minutes, slackMin: slackOf(withLoad(helped, next, { lateMin })) }
    })
    offer(tried.reduce((a, b) => ((b.slackMin ?? -1e9) > (a.slackMin ?? -1e9) ? b : a)))
  }
  const load = strips[down]?.load
  const drum = load === undefined ? undefined : state.loads[load]
  if (load !== undefined && drum?.onSiteMs !== undefined && (drum.doseMin ?? 0) < mostOnSiteMin) {
    const leftM3 = strips.reduce((sum, s, i) => (s.load === load && i >= down ? sum + s.volumeM3 : sum), 0)
    const slackMin = slackOf(withLoad(helped, load, { doseMin: mostOnSiteMin }))
    // A drum dosed too far holds the hands up as well: only where it beats the hands alone.
    if (!isShort || (slackMin ?? -1e9) > (withMore ?? -1e9) + leastGainMin)
      offer({
        ...{ does: 'dose', load: load + 1, doseMin: mostOnSiteMin, slackMin },
        packages: packagesFor(mostOnSiteMin - (drum.doseMin ?? 0), leftM3, day),
      })
  }
  return fixes.sort((a, b) => (b.slackMin ?? Number.NEGATIVE_INFINITY) - (a.slackMin ?? Number.NEGATIVE_INFINITY))
}
