/** The trucks of a pour: how many, how much each brings, and the parts with a dose of their own. */
import type { Finding } from '../../../shared/problem'
import { err, ok, type Result } from '../../../shared/problem'
import { type SettingOverrides, settingValue } from '../../../shared/settings'

export interface Portion {
  readonly load: number
  readonly volumeM3: number
}

export interface LoadPlan {
  /** m³ of each load, in order. */
  readonly loadsM3: readonly number[]
  /** In placing order. */
  readonly portions: readonly Portion[]
}

export interface LoadsInput {
  readonly orderM3: number
  /** What one truck brings; the setting if left out. */
  readonly loadM3?: number
  /** 1 to 4; by size if left out. */
  readonly portionsALoad?: number
  readonly settings?: SettingOverrides
}

/** Portions a load: about the setting `portionM3` each, `portionsALoad` at most. */
const portionCount = (volumeM3: number, input: LoadsInput): number =>
  input.portionsALoad ??
  Math.min(
    settingValue(input.settings, 'portionsALoad'),
    Math.max(1, Math.round(volumeM3 / settingValue(input.settings, 'portionM3'))),
  )

/**
 * As few trucks as carry the order, equally full: no short load where the order lets it, and one dose table for all. A
 * truck that carries nothing stops.
 */
export function planLoads(input: LoadsInput): Result<LoadPlan, readonly Finding[]> {
  const loadM3 = input.loadM3 ?? settingValue(input.settings, 'loadM3')
  if (!(loadM3 > 0)) return err([{ code: 'truckEmpty', severity: 'stop', values: { loadM3 } }])
  const count = Math.max(1, Math.ceil(input.orderM3 / loadM3 - 1e-9))
  const loadsM3 = Array.from({ length: count }, () => input.orderM3 / count)
  return ok({
    loadsM3,
    portions: loadsM3.flatMap((volumeM3, load) => {
      const parts = portionCount(volumeM3, input)
      return Array.from({ length: parts }, () => ({ load, volumeM3: volumeM3 / parts }))
    }),
  })
}

/** How far the concrete has come: what the balance load has to bring, and when to call it. */
export interface BalanceInput {
  readonly placedM2: number
  readonly wholeM2: number
  /** Discharged so far. */
  readonly usedM3: number
  /** m²/h so far. */
  readonly paceM2H: number
  readonly nowMs: number
  /** Plants want 1.5 to 3 h (common practice, no source). */
  readonly noticeMin: number
  /** Still in the truck on site. */
  readonly onSiteM3: number
  readonly settings?: SettingOverrides
}

export interface Balance {
  /** What the slab really runs at. */
  readonly thicknessM: number
  readonly neededM3: number
  /** Null when nothing more is needed. */
  readonly callByMs: number | null
}

/**
 * Thickness running = concrete out ÷ area covered. Needed = the rest at that thickness with the over-run of small
 * loads, less what is on site. Call by = when the truck on site runs out, less the notice. Null before anything is
 * placed.
 */
export function balanceLoad(input: BalanceInput): Balance | null {
  const { placedM2, wholeM2, usedM3, paceM2H, nowMs, noticeMin, onSiteM3 } = input
  if (!(placedM2 > 0 && usedM3 > 0 && paceM2H > 0)) return null
  const thicknessM = usedM3 / placedM2
  const restM3 = Math.max(0, wholeM2 - placedM2) * thicknessM
  const overRun = 1 + settingValue(input.settings, 'overRunSmallShare')
  const neededM3 = Math.max(0, restM3 * overRun - onSiteM3)
  if (neededM3 === 0) return { thicknessM, neededM3, callByMs: null }
  const runsOutMs = nowMs + ((onSiteM3 / thicknessM / paceM2H) * 60 - noticeMin) * 60_000
  return { thicknessM, neededM3, callByMs: runsOutMs }
}
