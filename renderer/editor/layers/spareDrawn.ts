import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Caster } from '../../../shared/document/caster'
import { toScreen } from '../camera/camera'
import { closedOutline } from './closedOutline'
import { around, type LabelRoom } from './labelRoom'
import type { Pen } from './pen'

/** Letters keep off the edges of slabs and off the crowns of trees, where they can. */
export function spareDrawn(
  { camera }: Pen,
  slabs: readonly ResolvedSlab[],
  casters: readonly Caster[],
  room: LabelRoom,
): void {
  for (const { outline } of slabs) room.spareLine(closedOutline(outline).map(at => toScreen(camera, at)))
  for (const caster of casters) {
    if (caster.kind !== 'tree') continue
    // The square with the area of the crown.
    const side = Math.sqrt(Math.PI) * caster.crownRadiusM * camera.zoom
    room.spare(around(toScreen(camera, caster.at), side, side))
  }
}
