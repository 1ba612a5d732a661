import { flattenRing } from '../../../core/geometry/flattenRing'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Caster } from '../../../shared/document/caster'
import type { Pt } from '../../../shared/document/primitives'
import { toScreen } from '../camera/camera'
import { around, type LabelRoom } from './labelRoom'
import type { Pen } from './pen'

/** Chords this near to an arc tell where its line runs among letters. */
const sagittaM = 0.02

const outlines = new WeakMap<ResolvedSlab['outline'], readonly Pt[]>()

function closedOutline(ring: ResolvedSlab['outline']): readonly Pt[] {
  const known = outlines.get(ring)
  if (known) return known
  const points = flattenRing(ring, sagittaM)
  const made = [...points, ...points.slice(0, 1)]
  outlines.set(ring, made)
  return made
}

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
