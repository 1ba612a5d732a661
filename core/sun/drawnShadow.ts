/** What one caster shades on a level plane, as a canvas draws it: the ellipse of a crown as one. */
import type { Pt } from '../../shared/document/primitives'
import type { SettingOverrides } from '../../shared/settings'
import { casterShadow } from './casterShadow'
import { crownEllipse, type ShadowEllipse } from './crownEllipse'
import type { ResolvedCaster } from './resolveCaster'
import { transmission } from './transmission'

/** Filled by the non-zero rule, rings and ellipses (turning counter-clockwise) together are exactly the shade. */
export interface DrawnShadow {
  /** Share of the direct sun that comes through: 0 opaque … 1. */
  readonly transmission: number
  /** x0, y0, x1, y1 … */
  readonly rings: readonly Float64Array[]
  readonly ellipses: readonly ShadowEllipse[]
}

/**
 * As `casterShadow`, but for a crown no part of which is below the plane: that comes as its ellipse, in place of a ring
 * of 96 corners.
 */
export const drawnShadow = (
  resolved: ResolvedCaster,
  levelM: number,
  perMeter: Pt,
  date: string,
  settings: SettingOverrides | undefined,
): DrawnShadow[] => {
  const [solid] = resolved.solids
  if (resolved.solids.length !== 1 || solid?.form !== 'crown' || solid.bottomM < levelM)
    return casterShadow(resolved, levelM, perMeter, date, settings).map(part => ({
      transmission: part.transmission,
      rings: part.cycles,
      ellipses: [],
    }))
  const share = transmission(resolved.caster, date, settings)
  if (share >= 1) return []
  return [{ transmission: share, rings: [], ellipses: [crownEllipse(solid, levelM, perMeter[0], perMeter[1])] }]
}
