import { produce } from 'immer'
import type { Site } from '../../../shared/document/site'
import { resolvePath } from '../../geometry/resolvePath'
import { ringArea } from '../../geometry/ringArea'
import { type SitePath, sitePaths } from '../sitePaths'
import type { Edit } from './editSite'
import { reversePath } from './reversePath'

const runsClockwise = ({ field }: SitePath): boolean => /\/(openings|courtyards)\//.test(field)

const isWrongWay = (sitePath: SitePath): boolean => {
  const { path, mayBeOpen } = sitePath
  if (mayBeOpen || path.edges.length !== path.vertices.length) return false
  const area = ringArea(resolvePath(path, path.id).ring)
  return runsClockwise(sitePath) ? area > 0 : area < 0
}

/**
 * Outlines run counter-clockwise, openings clockwise: a ring that an edit has turned inside out (a corner dragged
 * across the opposite edge) is walked the other way from then on. As-built shapes are left as they were built.
 */
export const turnRings = (before: Site, after: Site, edit: Edit): Site => {
  const known = new Set(sitePaths(before).map(({ path }) => path))
  const wrong = sitePaths(after).map(
    sitePath => !known.has(sitePath.path) && !/\/poured\//.test(sitePath.field) && isWrongWay(sitePath),
  )
  if (!wrong.includes(true)) return after
  return produce(after, draft => {
    sitePaths(draft as Site).forEach(({ path }, i) => {
      if (wrong[i]) reversePath(draft as Site, path, 'same', edit)
    })
  })
}
