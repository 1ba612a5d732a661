/** The shade on a slab at one sun position, as polygons clipped to its concrete. */
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import type { SettingOverrides } from '../../shared/settings'
import { type Box, boxesMeet, flatBounds, joinBounds } from '../geometry/bounds'
import { intersectRegions, subtractRegions, unionShadow } from '../geometry/clip'
import type { Region } from '../geometry/curve'
import { flatArea } from '../geometry/flatArea'
import { flattenRegion } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { casterShadow, type ShadowPart } from './casterShadow'
import type { ResolvedCaster } from './resolveCaster'
import { canReach } from './shadowBox'
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

interface Piece {
  readonly regions: readonly Region[]
  readonly transmission: number
  readonly box: Box
}

const pieceOf = (regions: readonly Region[], transmission: number): Piece => ({
  regions,
  transmission,
  box: joinBounds(regions.map(({ ring }) => flatBounds(ring))),
})

/** Lays one more translucent part over pieces that do not overlap: where they meet, the shares multiply. */
const layOver = (pieces: readonly Piece[], part: Piece): Piece[] => {
  const next: Piece[] = []
  let rest = part.regions
  for (const piece of pieces) {
    const both = rest.length > 0 && boxesMeet(piece.box, part.box) ? intersectRegions(piece.regions, rest) : []
    if (both.length === 0) {
      next.push(piece)
      continue
    }
    next.push(pieceOf(both, piece.transmission * part.transmission))
    const only = subtractRegions(piece.regions, both)
    if (only.length > 0) next.push(pieceOf(only, piece.transmission))
    rest = subtractRegions(rest, both)
  }
  if (rest.length > 0) next.push(pieceOf(rest, part.transmission))
  return next
}

/** What the casters whose shade can reach the regions throw. */
export const partsReaching = (
  regions: readonly Region[],
  casters: readonly ResolvedCaster[],
  levelM: number,
  perMeter: Pt,
  date: string,
  settings: SettingOverrides | undefined,
): ShadowPart[] => {
  const box = joinBounds(regions.map(({ ring }) => flatBounds(ring)))
  const [kx, ky] = perMeter
  return casters
    .filter(({ solids, boxes }) => solids.some((solid, i) => canReach(solid, boxes[i]!, box, levelM, kx, ky)))
    .flatMap(caster => casterShadow(caster, levelM, perMeter, date, settings))
}

/** Shade of parts already cast, clipped to flat regions. */
export const shadeOfParts = (parts: readonly ShadowPart[], clip: readonly Region[]): Shade => {
  const opaqueCycles = parts.filter(part => part.transmission === 0).flatMap(part => part.cycles)
  const opaque = opaqueCycles.length === 0 ? [] : unionShadow(opaqueCycles, clip)
  const translucent = parts.filter(part => part.transmission > 0)
  const open = opaque.length === 0 || translucent.length === 0 ? clip : subtractRegions(clip, opaque)
  let pieces: Piece[] = []
  for (const part of translucent) {
    const regions = unionShadow(part.cycles, open)
    if (regions.length > 0) pieces = layOver(pieces, pieceOf(regions, part.transmission))
  }
  return {
    opaque,
    opaqueAreaM2: flatArea(opaque),
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
  const clip = slab.net.map(region => flattenRegion(region))
  return shadeOfParts(partsReaching(clip, casters, slab.levelM, perMeter, date, settings), clip)
}
