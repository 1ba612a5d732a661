import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Caster } from '../../../shared/document/caster'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { onceFrozen } from '../../../shared/onceFrozen'
import { toScreen } from '../camera/camera'
import { closedOutline } from './closedOutline'
import { outlineOf, ridgeOf } from './drawCasters'
import { mostNames } from './drawNames'
import { around, type LabelRoom } from './labelRoom'
import type { Pen } from './pen'

function linesOf(caster: Caster): readonly (readonly Pt[])[] {
  switch (caster.kind) {
    case 'building': {
      const ridge = ridgeOf(caster)
      const walls = [caster.footprint, ...(caster.courtyards ?? [])].map(path => closedOutline(outlineOf(path)))
      return ridge ? [...walls, ridge] : walls
    }
    case 'cover':
      return [closedOutline(outlineOf(caster.outline))]
    case 'wall':
      return [caster.line]
    case 'tree':
      return []
  }
}

/** Made once for the casters of a site: the lines they are drawn with, crowns apart. */
const casterLines = onceFrozen((casters: readonly Caster[]) => casters.flatMap(linesOf))

/**
 * Letters keep off the edges of slabs and openings, and off what stands around, where they can; off the lines of few
 * casters only.
 */
export function spareDrawn(
  { camera }: Pen,
  slabs: readonly ResolvedSlab[],
  { casters, access }: Pick<Site, 'casters' | 'access'>,
  room: LabelRoom,
): void {
  const spare = (points: readonly Pt[]): void => room.spareLine(points.map(at => toScreen(camera, at)))
  for (const { outline, openings } of slabs) {
    spare(closedOutline(outline))
    for (const { ring } of openings) spare(closedOutline(ring))
  }
  if (casters.length <= mostNames) casterLines(casters).forEach(spare)
  for (const path of access?.noGo ?? []) spare(closedOutline(outlineOf(path)))
  for (const caster of casters) {
    if (caster.kind !== 'tree') continue
    // The square with the area of the crown.
    const side = Math.sqrt(Math.PI) * caster.crownRadiusM * camera.zoom
    room.spare(around(toScreen(camera, caster.at), side, side))
  }
}
