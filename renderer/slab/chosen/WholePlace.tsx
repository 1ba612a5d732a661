import type { Entity } from '../../../core/document/commands/siteEntities'
import { circleCenter } from '../../../core/geometry/circleCenter'
import { linePointId } from '../../../core/geometry/linePointId'
import { resolvePath } from '../../../core/geometry/resolvePath'
import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { pathOf } from '../../editor/pickPart'
import { PlaceFields } from './PlaceFields'

const corners = ({ vertices }: Path): readonly Id[] => vertices.map(({ id }) => id)

/** The middle of a circle, which has no corner to be placed by; undefined where it is none. */
const middleOf = (path: Path): Pt | undefined => circleCenter(resolvePath(path, path.id).ring)

/** The point a shape is placed by, and all corners that move along with it; undefined where something has no shape. */
function placingPoint(
  entity: Entity,
): { readonly at: Pt; readonly words: string; readonly own: readonly Id[] } | undefined {
  if (entity.kind === 'caster' && entity.row.kind === 'wall') {
    const { id, line } = entity.row
    return { at: line[0]!, words: 'Point A', own: line.map((_, i) => linePointId(id, i)) }
  }
  const path = pathOf(entity)
  if (!path) return undefined
  const along = entity.kind === 'slab' ? entity.row.openings.flatMap(opening => corners(opening.path)) : []
  const own = [...corners(path), ...along]
  const middle = middleOf(path)
  return middle ? { at: middle, words: 'Middle', own } : { at: path.vertices[0]!.at, words: 'Corner A', own }
}

/** Where a shape stands, typed: all of it moves. */
export function WholePlace({ site, entity }: { readonly site: Site; readonly entity: Entity }) {
  const by = placingPoint(entity)
  return by ? (
    <div className="fields">
      <PlaceFields site={site} id={entity.row.id} at={by.at} placedBy={by.words} own={by.own} />
    </div>
  ) : null
}
