import { findEdge, findVertex } from '../../../core/document/commands/findPath'
import { findLinePoint } from '../../../core/document/commands/linePoints'
import { chosenEntities } from '../../../core/document/commands/siteEntities'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'

/** What of a choice stands in the site; null where nothing does: what was chosen may have been undone since. */
export function chosenParts(site: Site, selection: readonly Id[]) {
  const entities = chosenEntities(site, selection)
  const edges = selection.filter(id => findEdge(site, id))
  const corners = selection.filter(id => findVertex(site, id))
  const points = selection.filter(id => findLinePoint(site, id))
  return entities.length + edges.length + corners.length + points.length === 0
    ? null
    : { entities, edges, corners, points }
}
