/** What the page computes itself on the document on screen, preview included: shapes, and the shade of the shown hour. */
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import type { Memo } from '../../core/plan/memo'
import { type DrawnShadow, drawnShadow } from '../../core/sun/drawnShadow'
import { type ResolvedCaster, resolveCaster } from '../../core/sun/resolveCaster'
import { type SiteDay, siteDay } from '../../core/sun/siteDay'
import { type SunPosition, shadowPerMeter, sunPosition } from '../../core/sun/sunPosition'
import type { Site } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import { rowByRow } from './rowByRow'

/** The same object as long as site and date are: moving the hour leaves it alone. */
export interface LivePlan {
  readonly site: Site
  readonly slabs: readonly ResolvedSlab[]
  readonly casters: readonly ResolvedCaster[]
  readonly date: string
  readonly day: SiteDay | null
}

/** Shade on one level, to be filled by the non-zero rule, each transmission on its own. */
export interface LevelShade {
  readonly levelM: number
  readonly parts: readonly DrawnShadow[]
}

export interface ShownHour {
  readonly hourMs: number
  readonly sun: SunPosition
  /** Empty while the sun is under the lowest height that counts. */
  readonly shade: readonly LevelShade[]
}

/** The slots of entities that are gone are swept by the caller, once both parts were asked. */
export function deriveLive(site: Site, date: string, memo: Memo): LivePlan {
  const slabs = site.slabs.map(slab => memo.part('slab', slab.id, [slab], () => resolveSlab(slab)))
  const casters = rowByRow(memo, 'casters', 'site', [site.casters], caster => resolveCaster(caster).value)
  const day = memo.part('day', 'site', [date, site.place.zone], () => {
    const found = siteDay(date, site.place.zone)
    return found.ok ? found.value : null
  })
  return memo.part('live', 'site', [site, date], () => ({ site, slabs, casters, date, day }))
}

/** The slabs' levels, the lowest first; of no slab, the site datum. */
const levelsOf = (slabs: readonly ResolvedSlab[]): number[] =>
  slabs.length === 0 ? [0] : [...new Set(slabs.map(slab => slab.levelM))].sort((a, b) => a - b)

const noShade: ShownHour['shade'] = []

/**
 * Sun and shade at an instant. While one caster is dragged, the shade of the others is kept; while none is, the shade
 * stays the same object.
 */
export function deriveHour({ site, slabs, casters, date }: LivePlan, hourMs: number, memo: Memo): ShownHour {
  const { place, settings } = site
  const sun = memo.part('sun', 'site', [hourMs, place.latDeg, place.lonDeg], () =>
    sunPosition(hourMs, place.latDeg, place.lonDeg),
  )
  if (sun.altitudeDeg < settingValue(settings, 'minSunAltitudeDeg')) return { hourMs, sun, shade: noShade }
  const perMeter = memo.part('perMeter', 'site', [sun, place.northDeg], () => shadowPerMeter(sun, place.northDeg))
  const shade = levelsOf(slabs).map(levelM => {
    const level = String(levelM)
    const thrown = rowByRow(memo, 'shadows', level, [casters, levelM, perMeter, date, settings], caster =>
      drawnShadow(caster, levelM, perMeter, date, settings),
    )
    return memo.part('levelShade', level, [thrown], () => ({ levelM, parts: thrown.flat() }))
  })
  return { hourMs, sun, shade: memo.part('shade', 'site', shade, () => shade) }
}
