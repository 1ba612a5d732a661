import { findVertex } from '../../../core/document/commands/findPath'
import { lineUpCorners } from '../../../core/document/commands/lineUp'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { cornerLetter } from '../../editor/cornerNames'
import { useRun } from '../useRun'
import { ChooseSeveral } from './ChooseSeveral'
import { CornerRadius } from './CornerRadius'
import { cornersOfPath, GoToPart } from './GoTo'
import { PlaceFields } from './PlaceFields'

/** One corner, with its place; or several, each with its radius. */
export function CornerPanel({ site, ids }: { readonly site: Site; readonly ids: readonly Id[] }) {
  const run = useRun()
  const first = findVertex(site, ids[0]!)
  const only = ids.length === 1 ? first : undefined
  return (
    <>
      <header>
        <h2>{only ? `Corner ${cornerLetter(only.index)}` : `${ids.length} corners`}</h2>
      </header>
      <div className="fields">
        {ids.length > 2 ? (
          <button type="button" className="btn" onClick={() => run('line up', lineUpCorners(ids))}>
            Put them on the line from the first to the last
          </button>
        ) : null}
        {only ? <GoToPart site={site} path={only.path} value={ids[0]!} /> : null}
        {only ? (
          <PlaceFields site={site} id={ids[0]!} at={only.path.vertices[only.index]!.at} step="move corner" />
        ) : null}
        {ids.map(id => {
          const { path, index } = findVertex(site, id)!
          return <CornerRadius key={id} path={path} index={index} units={site.units} />
        })}
        {first ? <ChooseSeveral what="corners" parts={cornersOfPath(first.path)} chosen={ids} /> : null}
      </div>
    </>
  )
}
