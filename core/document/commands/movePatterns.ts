import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Edit } from './editSite'
import { type RigidMotion, turnedEitherWay } from './rigidMotion'

/** Carries along, stone for stone, the patterns that lie on carried slabs alone; what others share stays. */
export const movePatterns = (site: Site, edit: Edit, motion: RigidMotion): void => {
  if (edit.carried.size === 0) return
  const goesAlong = new Map<Id, boolean>()
  for (const slab of site.slabs)
    for (const { finishId } of [slab, ...slab.borders, ...slab.bands, ...slab.insets])
      goesAlong.set(finishId, (goesAlong.get(finishId) ?? true) && edit.carried.has(slab.id))
  for (const finish of site.finishes) {
    if (goesAlong.get(finish.id) !== true) continue
    const { patternDeg = 0, patternAt = [0, 0] } = finish
    const deg = turnedEitherWay(motion, patternDeg)
    if (deg !== patternDeg) finish.patternDeg = deg
    finish.patternAt = motion.at(patternAt)
  }
}
