/** The shade on a slab at one sun position, as polygons clipped to its concrete. */
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import { intersectRegions, subtractRegions, unionShadow } from '../geometry/clip'
import type { Region } from '../geometry/curve'
import { flattenRegion } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { casterShadow, type ShadowPart } from './casterShadow'
import { signedDoubleArea } from './flatRing'
import type { ResolvedCaster } from './resolveCaster'
import { isSunUp } from './sunlitSpans'
import { type SunPosition, shadowPerMeter } from './sunPosition'

export interface Dapple {
  readonly region: Region
  /** Share of the direct sun that comes through, all crowns and screens in its way together. */
  readonly transmission: number
}

export interface Shade {
  readonly opaque: readonly Region[]
  readonly opaqueAreaM2: number
  /** Do not overlap each other nor the opaque shade. */
  readonly dapple: readonly Dapple[]
}

export const regionArea = ({ ring, holes }: Region): number =>
  holes.reduce((sum, hole) => sum - Math.abs(signedDoubleArea(hole)) / 2, Math.abs(signedDoubleArea(ring)) / 2)

interface Piece {
  readonly regions: readonly Region[]
  readonly transmission: number
}

/** Lays one more translucent part over pieces that do not overlap: where they meet, the shares multiply. */
const layOver = (pieces: readonly Piece[], part: Piece): Piece[] => {
  const next: Piece[] = []
  let rest = part.regions
  for (const piece of pieces) {
    const both = rest.length === 0 ? [] : intersectRegions(piece.regions, rest)
    if (both.length === 0) {
      next.push(piece)
      continue
    }
    next.push({ regions: both, transmission: piece.transmission * part.transmission })
    const only = subtractRegions(piece.regions, both)
    if (only.length > 0) next.push({ regions: only, transmission: piece.transmission })
    rest = subtractRegions(rest, both)
  }
  if (rest.length > 0) next.push({ regions: rest, transmission: part.transmission })
  return next
}

/** Shade of parts already cast, clipped to flat regions. */
export const shadeOfParts = (parts: readonly ShadowPart[], clip: readonly Region[]): Shade => {
  const opaqueCycles = parts.filter(part => part.transmission === 0).flatMap(part => part.cycles)
  const opaque = opaqueCycles.length === 0 ? [] : unionShadow(opaqueCycles, clip)
  let pieces: Piece[] = []
  for (const part of parts) {
    if (part.transmission === 0) continue
    const shaded = unionShadow(part.cycles, clip)
    const regions = opaque.length === 0 || shaded.length === 0 ? shaded : subtractRegions(shaded, opaque)
    if (regions.length > 0) pieces = layOver(pieces, { regions, transmission: part.transmission })
  }
  return {
    opaque,
    opaqueAreaM2: opaque.reduce((sum, region) => sum + regionArea(region), 0),
    dapple: pieces.flatMap(({ regions, transmission }) => regions.map(region => ({ region, transmission }))),
  }
}

/**
 * Shade on the net area of a slab, at its level; arcs as chords within 1/16 in.
 * @param date `YYYY-MM-DD`, for leaves
 * @returns null when the sun is below the threshold of the settings
 */
export const shadeAt = (
  slab: ResolvedSlab,
  casters: readonly ResolvedCaster[],
  sun: SunPosition,
  place: Place,
  date: string,
  settings: SettingOverrides | undefined,
): Shade | null => {
  if (!isSunUp(sun.altitudeDeg, settings)) return null
  const perMeter = shadowPerMeter(sun, place.northDeg)
  const parts = casters.flatMap(caster => casterShadow(caster, slab.levelM, perMeter, date, settings))
  return shadeOfParts(
    parts,
    slab.net.map(region => flattenRegion(region)),
  )
}
