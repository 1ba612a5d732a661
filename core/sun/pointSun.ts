/** Sun and shade of one point through a day, exact to the second. */
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import { bisect } from './bisect'
import { crossesApart } from './casterShadow'
import type { ResolvedCaster } from './resolveCaster'
import { canReach } from './shadowBox'
import type { SiteDay } from './siteDay'
import { sunlitSpans } from './sunlitSpans'
import { shadowPerMeter, sunPosition } from './sunPosition'
import { traceShadow } from './traceShadow'
import { transmission } from './transmission'
import { windingNumber } from './windingNumber'

export interface SunCrossing {
  readonly ms: number
  readonly into: 'sun' | 'shade'
}

export interface PointSun {
  /** ∫ τ dt, τ = share of the direct sun that comes through. */
  readonly directSunMin: number
  /** First and last instant in sun (τ ≥ 0.5); null if never. */
  readonly firstSunMs: number | null
  readonly lastSunMs: number | null
  /** In order; sunrise into sun and sunset out of it are among them. */
  readonly crossings: readonly SunCrossing[]
}

/** "In sun" means at least this share of the direct beam. */
export const inSunShare = 0.5

/** Samples between which the shade's edge is looked for; shade that comes and goes in less may be missed. */
const sampleMs = 2 * 60_000

/** The share of the direct sun that reaches a point on z = `levelM`, 0 … 1. */
export const pointShare = (
  at: Pt,
  levelM: number,
  casters: readonly ResolvedCaster[],
  perMeter: Pt,
  date: string,
  settings: SettingOverrides | undefined,
): number => {
  const [x, y] = at
  const [kx, ky] = perMeter
  const here = { minX: x, minY: y, maxX: x, maxY: y }
  let through = 1
  for (const resolved of casters) {
    const share = transmission(resolved.caster, date, settings)
    if (share >= 1) continue
    const apart = crossesApart(resolved, share)
    let winding = 0
    for (let i = 0; i < resolved.solids.length; i++) {
      const solid = resolved.solids[i]!
      if (!canReach(solid, resolved.boxes[i]!, here, levelM, kx, ky)) continue
      traceShadow(solid, levelM, kx, ky, (cycle, count) => {
        winding += windingNumber(cycle, count, x, y)
      })
      if (apart && winding !== 0) {
        through *= share
        winding = 0
      }
    }
    if (winding !== 0) through *= share
    if (through === 0) return 0
  }
  return through
}

/**
 * Direct sun at a point: sampled every 2 minutes while the sun is above the threshold, every change between two samples
 * found to the second by halving.
 * @param levelM elevation of the slab's top
 */
export const pointSun = (
  at: Pt,
  levelM: number,
  casters: readonly ResolvedCaster[],
  place: Place,
  day: SiteDay,
  settings: SettingOverrides | undefined,
): PointSun => {
  const shareAt = (ms: number): number => {
    const sun = sunPosition(ms, place.latDeg, place.lonDeg)
    return pointShare(at, levelM, casters, shadowPerMeter(sun, place.northDeg), day.date, settings)
  }
  const crossings: SunCrossing[] = []
  let directMs = 0
  let firstSunMs: number | null = null
  let lastSunMs: number | null = null
  let inSun = false
  const enter = (ms: number, share: number): void => {
    if (share >= inSunShare === inSun) return
    inSun = share >= inSunShare
    crossings.push({ ms, into: inSun ? 'sun' : 'shade' })
    if (inSun) firstSunMs ??= ms
    else lastSunMs = ms
  }
  for (const { fromMs, toMs } of sunlitSpans(place, day, settings).spans) {
    let ms = fromMs
    let share = shareAt(fromMs)
    enter(fromMs, share)
    while (ms < toMs) {
      const nextMs = Math.min(toMs, ms + sampleMs)
      const nextShare = shareAt(nextMs)
      if (nextShare === share) directMs += share * (nextMs - ms)
      else {
        const changeMs = bisect(ms, nextMs, middle => shareAt(middle) !== share)
        directMs += share * (changeMs - ms) + nextShare * (nextMs - changeMs)
        enter(changeMs, nextShare)
      }
      ms = nextMs
      share = nextShare
    }
    enter(toMs, 0)
  }
  return { directSunMin: directMs / 60_000, firstSunMs, lastSunMs, crossings }
}
