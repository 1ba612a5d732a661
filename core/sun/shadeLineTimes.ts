/** When the shade line enters, crosses and leaves an area. */
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import type { CurveRegion, Region } from '../geometry/curve'
import { flatArea } from '../geometry/flatArea'
import { flattenRegion } from '../geometry/flattenRing'
import { bisect } from './bisect'
import { inSunShare } from './pointSun'
import type { ResolvedCaster } from './resolveCaster'
import { partsReaching, shadeOfParts } from './shadeAt'
import type { SiteDay } from './siteDay'
import { sunlitSpans } from './sunlitSpans'
import { shadowPerMeter, sunPosition } from './sunPosition'

/** How the area lies: all of it in sun, the shade line across it, all of it in shade (or the sun too low). */
export type Lying = 'sun' | 'across' | 'shade'

export interface ShadeLineTimes {
  /** First and last instant at which some of the area is in sun; null if never. */
  readonly firstSunMs: number | null
  readonly lastSunMs: number | null
  /** Each change, in order, from the shade of the night. */
  readonly changes: readonly { readonly ms: number; readonly to: Lying }[]
}

const sampleMs = 5 * 60_000
/** A sliver below this share of the area is a crumb of the clipping grid. */
const crumbShare = 1e-6

/**
 * Times on the polygons themselves: sampled every 5 minutes while the sun is above the threshold, each change found to
 * the second by halving. In sun = at least half of the direct beam.
 * @param levelM elevation of the slab's top
 */
export const shadeLineTimes = (
  area: readonly CurveRegion[],
  levelM: number,
  casters: readonly ResolvedCaster[],
  place: Place,
  day: SiteDay,
  settings: SettingOverrides | undefined,
): ShadeLineTimes => {
  const flat: Region[] = area.map(region => flattenRegion(region))
  const wholeM2 = flatArea(flat)
  const lyingAt = (ms: number): Lying => {
    const sun = sunPosition(ms, place.latDeg, place.lonDeg)
    const perMeter = shadowPerMeter(sun, place.northDeg)
    const parts = partsReaching(flat, casters, levelM, perMeter, day.date, settings)
    const { opaqueAreaM2, dapple } = shadeOfParts(parts, flat)
    const shadedM2 = dapple.reduce(
      (sum, { region, transmission }) => (transmission < inSunShare ? sum + flatArea([region]) : sum),
      opaqueAreaM2,
    )
    if (shadedM2 <= crumbShare * wholeM2) return 'sun'
    return shadedM2 >= (1 - crumbShare) * wholeM2 ? 'shade' : 'across'
  }
  const changes: { ms: number; to: Lying }[] = []
  let now: Lying = 'shade'
  const turn = (ms: number, to: Lying): void => {
    if (to !== now) changes.push({ ms, to })
    now = to
  }
  for (const { fromMs, toMs } of wholeM2 > 0 ? sunlitSpans(place, day, settings).spans : []) {
    turn(fromMs, lyingAt(fromMs))
    for (let ms = fromMs; ms < toMs; ) {
      const nextMs = Math.min(toMs, ms + sampleMs)
      const next = lyingAt(nextMs)
      // From sun to shade between two samples passes through "across": each change is found on its own.
      for (let fromHere = ms; next !== now; ) {
        const before: Lying = now
        const changeMs = bisect(fromHere, nextMs, middle => lyingAt(middle) !== before)
        turn(changeMs, lyingAt(changeMs))
        fromHere = changeMs
      }
      ms = nextMs
    }
    turn(toMs, 'shade')
  }
  const first = changes.find(({ to }) => to !== 'shade')
  const last = changes.findLast(({ to }) => to === 'shade')
  return { firstSunMs: first?.ms ?? null, lastSunMs: first === undefined ? null : (last?.ms ?? null), changes }
}
