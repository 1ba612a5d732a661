import { standsAlone } from '../../../core/document/commands/copySelection'
import { findLinePoint } from '../../../core/document/commands/linePoints'
import type { Entity } from '../../../core/document/commands/siteEntities'
import type { Site } from '../../../shared/document/site'
import { useView } from '../../app/session'
import { useEditorState } from '../../editor/useEditor'
import { CornerPanel } from './CornerPanel'
import { chosenParts } from './chosenParts'
import { EdgePanel } from './EdgePanel'
import { EntityPanel } from './EntityPanel'
import { MoveBy } from './MoveBy'
import { PointPanel } from './PointPanel'
import { Together } from './Together'
import { WholePlace } from './WholePlace'

/** False of what is a place alone, and of a tree: turned about itself it is the same. */
const hasSides = (entity: Entity): boolean =>
  !['spot', 'obstacle', 'note', 'point', 'way'].includes(entity.kind) &&
  !(entity.kind === 'caster' && entity.row.kind === 'tree')

/** Properties of what is chosen on the plan. */
export function SelectionPanel({ site }: { readonly site: Site }) {
  const selection = useView(state => state.selection)
  const action = useEditorState(state => state.action)
  if (action !== 'select' || selection.length === 0) return null
  const chosen = chosenParts(site, selection)
  if (chosen === null) return null
  const { entities, edges, corners, points } = chosen
  const [entity] = entities
  const point = entities.length + edges.length + corners.length === 0 ? findLinePoint(site, points[0]!) : undefined
  return (
    <section className="slab-form chosen-form" aria-label="What is chosen">
      {entities.length === 1 && entity ? (
        <>
          <EntityPanel key={entity.row.id} site={site} entity={entity} />
          <WholePlace site={site} entity={entity} />
        </>
      ) : null}
      {entities.length === 0 && edges.length > 0 ? <EdgePanel site={site} edgeIds={edges} /> : null}
      {entities.length + edges.length === 0 && corners.length > 0 ? <CornerPanel site={site} ids={corners} /> : null}
      {point && points.length === 1 ? <PointPanel site={site} point={point} /> : null}
      {point && points.length > 1 ? (
        <header>
          <h2>{points.length} points</h2>
        </header>
      ) : null}
      {entities.length > 1 ? (
        <>
          <header>
            <h2>{entities.length} chosen</h2>
          </header>
          <MoveBy site={site} ids={selection} />
        </>
      ) : null}
      <Together
        site={site}
        ids={selection}
        canLineUp={entities.length > 1}
        canCopy={entities.some(standsAlone)}
        canTurn={entities.length > 1 || (entity !== undefined && hasSides(entity))}
      />
    </section>
  )
}
