import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { type Exposure, exposure, updateExposure } from '../sun/exposure'
import { pointSun } from '../sun/pointSun'
import type { ResolvedCaster } from '../sun/resolveCaster'
import { shadeAt } from '../sun/shadeAt'
import { dayInstants, type SiteDay, wholeHours } from '../sun/siteDay'
import { sunPosition } from '../sun/sunPosition'
import { areaMask, sunShares } from '../sun/sunShares'
import type { LastAnswer, Memo } from './memo'
import type { HourShadow, PlannedPoint, PlannedPour, PlanShade } from './plan'
import { pourShares } from './pourShares'

export interface ShadeOf {
  readonly slabs: readonly ResolvedSlab[]
  readonly casters: readonly ResolvedCaster[]
  readonly pours: readonly PlannedPour[]
  readonly place: Place
  readonly day: SiteDay
  readonly stepMin: number
  readonly settings: SettingOverrides | undefined
}

const hourShadows = (slab: ResolvedSlab, of: ShadeOf): HourShadow[] =>
  wholeHours(of.day).flatMap(ms => {
    const sun = sunPosition(ms, of.place.latDeg, of.place.lonDeg)
    const shade = shadeAt(slab, of.casters, sun, of.place, of.day.date, of.settings)
    if (shade === null) return []
    return [{ ms, slabId: slab.id, areaM2: shade.opaqueAreaM2, polygons: shade.opaque, dapple: shade.dapple }]
  })

/** When only casters changed: the last exposure with the old ones taken out and the new ones put in. */
function withCasters(
  casters: readonly ResolvedCaster[],
  rest: readonly unknown[],
  last: LastAnswer<Exposure> | undefined,
): Exposure | null {
  if (!last?.inputs.slice(1).every((input, i) => Object.is(input, rest[i]))) return null
  return updateExposure(last.value, casters)
}

export interface DerivedShade {
  readonly shade: PlanShade
  readonly exposures: ReadonlyMap<string, Exposure>
}

/** The raster of each slab. Yields before each. */
export function* planExposures(
  memo: Memo,
  { slabs, casters, place, day, stepMin, settings }: Omit<ShadeOf, 'pours'>,
): Generator<void, ReadonlyMap<string, Exposure>> {
  const exposures = new Map<string, Exposure>()
  for (const slab of slabs) {
    yield
    const raster = memo.part<Exposure>(
      'exposure',
      slab.id,
      [casters, slab, place, day, stepMin, settings],
      last =>
        withCasters(casters, [slab, place, day, stepMin, settings], last) ??
        exposure(slab, casters, place, day, stepMin, settings),
    )
    exposures.set(slab.id, raster)
  }
  return exposures
}

/** Sun and shade of the day: shares by step for slabs and pours, outlines on the whole hours. Yields before each slab. */
export function* planShade(memo: Memo, of: ShadeOf): Generator<void, DerivedShade> {
  const { place, day, stepMin, settings, casters } = of
  const instants = dayInstants(day, stepMin)
  const exposures = yield* planExposures(memo, of)
  const slabShares = new Map(
    of.slabs.map(slab => {
      const raster = exposures.get(slab.id)!
      const mask = memo.part('slabMask', slab.id, [raster.covered], () => areaMask(raster))
      return [slab.id, memo.part('slabShares', slab.id, [raster, mask], () => sunShares(raster, mask))]
    }),
  )
  const sharesOfPours = new Map(
    of.pours.flatMap(({ id, slabId, region }) => {
      const raster = exposures.get(slabId)
      return raster ? [[id, pourShares(memo, id, raster, region)] as const] : []
    }),
  )
  const shadows: HourShadow[] = []
  for (const slab of of.slabs) {
    yield
    shadows.push(
      ...memo.part('hourShadows', slab.id, [slab, casters, place, day, settings], () => hourShadows(slab, of)),
    )
  }
  return {
    exposures,
    shade: {
      stepMin,
      minSunAltitudeDeg: settingValue(settings, 'minSunAltitudeDeg'),
      instants,
      sun: memo.part('sun', 'site', [place, day, stepMin], () =>
        instants.map(ms => sunPosition(ms, place.latDeg, place.lonDeg)),
      ),
      slabShares,
      pourShares: sharesOfPours,
      shadows,
    },
  }
}

export interface PointOf {
  readonly id: string
  readonly name: string
  readonly at: Pt
  readonly slabId: string
}

export function planPoint(memo: Memo, point: PointOf, slab: ResolvedSlab, of: ShadeOf): PlannedPoint {
  const { casters, place, day, settings } = of
  const sun = memo.part('pointSun', point.id, [point.at, slab.levelM, casters, place, day, settings], () =>
    pointSun(point.at, slab.levelM, casters, place, day, settings),
  )
  return {
    ...point,
    directSunMin: sun.directSunMin,
    firstSunMs: sun.firstSunMs,
    lastSunMs: sun.lastSunMs,
  }
}
