/** What one caster shades on a level plane at one sun position. */
import type { Pt } from '../../shared/document/primitives'
import type { SettingOverrides } from '../../shared/settings'
import type { ResolvedCaster } from './resolveCaster'
import { traceShadow } from './traceShadow'
import { transmission } from './transmission'

/** Filled by the non-zero rule, `cycles` (x0, y0, x1, y1 …) are exactly the shade; together they
 * wind negatively nowhere. */
export interface ShadowPart {
  /** Share of the direct sun that comes through: 0 opaque … 1. */
  readonly transmission: number
  readonly cycles: readonly Float64Array[]
}

/** Whether each solid weakens the sun on its own: sun that crosses two screens of a fence is weakened twice. */
export const crossesApart = (resolved: ResolvedCaster, share: number): boolean =>
  share > 0 && resolved.caster.kind === 'wall'

/**
 * The shade of one caster on the plane z = `levelM`. What is below the plane throws none; what floats above it leaves
 * the ground beneath free. Each screen of an open fence is a part of its own.
 * @param perMeter shadow per meter of height (`shadowPerMeter`)
 * @param date `YYYY-MM-DD`, for leaves
 */
export const casterShadow = (
  resolved: ResolvedCaster,
  levelM: number,
  perMeter: Pt,
  date: string,
  settings: SettingOverrides | undefined,
): ShadowPart[] => {
  const share = transmission(resolved.caster, date, settings)
  if (share >= 1) return []
  const perSolid = resolved.solids.map(solid => {
    const cycles: Float64Array[] = []
    traceShadow(solid, levelM, perMeter[0], perMeter[1], (cycle, count) => cycles.push(cycle.slice(0, count)))
    return cycles
  })
  const parts = crossesApart(resolved, share) ? perSolid : [perSolid.flat()]
  return parts.filter(cycles => cycles.length > 0).map(cycles => ({ transmission: share, cycles }))
}
