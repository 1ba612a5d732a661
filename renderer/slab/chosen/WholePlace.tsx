import type { Entity } from '../../../core/document/commands/siteEntities'
import { linePointId } from '../../../core/geometry/linePointId'
import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { pathOf } from '../../editor/pickPart'
import { PlaceFields } from './PlaceFields'

const corners = ({ vertices }: Path): readonly Id[] => vertices.map(({ id }) => id)

/** The corner a shape is placed by, and all corners that move along with it; undefined where something has no shape. */
function firstCorner(
  entity: Entity,
): { readonly at: Pt; readonly words: string; readonly own: readonly Id[] } | undefined {
  if (entity.kind === 'caster' && entity.row.kind === 'wall') {
    const { id, line } = entity.row
    return { at: line[0]!, words: 'Point A', own: line.map((_, i) => linePointId(id, i)) }
  }
  const path = pathOf(entity)
  if (!path) return undefined
  const along = entity.kind === 'slab' ? entity.row.openings.flatMap(opening => corners(opening.path)) : []
  return { at: path.vertices[0]!.at, words: 'Corner A', own: [...corners(path), ...along] }
}

/** Where a shape stands, typed: all of it moves. */
export function WholePlace({ site, entity }: { readonly site: Site; readonly entity: Entity }) {
  const first = firstCorner(entity)
  return first ? (
    <div className="fields">
      <PlaceFields site={site} id={entity.row.id} at={first.at} placedBy={first.words} own={first.own} />
    </div>
  ) : null
}
