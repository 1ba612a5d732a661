import { addLinePoint, type LinePoint } from '../../../core/document/commands/linePoints'
import { moveSelection } from '../../../core/document/commands/moveSelection'
import { linePointId } from '../../../core/geometry/linePointId'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { cornerLetter } from '../../editor/cornerNames'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { GoTo, partsOfLine } from './GoTo'
import { PlaceFields } from './PlaceFields'

/** One point of a fence, of a joint line or of a tape: where it stands, and how far from its neighbors. */
export function PointPanel({ site, point: { line, index, at } }: { readonly site: Site; readonly point: LinePoint }) {
  const run = useRun()
  const id = linePointId(line.id, index)
  const letter = cornerLetter(index)
  const neighbors = [index - 1, index + 1].flatMap(i => {
    const neighbor = line.points[i]
    const lengthM = neighbor ? Math.hypot(at[0] - neighbor[0], at[1] - neighbor[1]) : 0
    return neighbor && lengthM > 0 ? [{ name: cornerLetter(i), from: neighbor, lengthM }] : []
  })
  /** Along the line from the neighbor, so that only this point moves. */
  const stretch = (from: Pt, lengthM: number, toM: number) => {
    if (!(toM > 0)) return 'Type a length greater than zero.'
    const grow = toM / lengthM - 1
    return run('length', moveSelection([id], [(at[0] - from[0]) * grow, (at[1] - from[1]) * grow]))
  }
  return (
    <>
      <header>
        <h2>
          Point {letter}
          {nameOf(site, line.id)}
        </h2>
      </header>
      <div className="fields">
        <GoTo value={id} whole={[line.id, 'the whole line']} parts={partsOfLine(line)} />
        <PlaceFields site={site} id={id} at={at} step="move point" />
        {neighbors.map(({ name, from, lengthM }) => (
          <MeasureField
            key={`${id} ${name}`}
            label={`Length from ${name}, ${letter} moves`}
            lengthM={lengthM}
            units={site.units}
            onSet={toM => stretch(from, lengthM, toM)}
          />
        ))}
        {line.hasMany && index + 1 < line.points.length ? (
          <button type="button" className="btn" onClick={() => run('new point', addLinePoint(id))}>
            New point halfway to {cornerLetter(index + 1)}
          </button>
        ) : null}
      </div>
    </>
  )
}

const nameOf = (site: Site, lineId: Id): string => {
  const caster = site.casters.find(({ id }) => id === lineId)
  if (caster) return ` of ${caster.name}`
  return site.wishes.some(({ id }) => id === lineId) ? ' of a joint line' : ' of a tape'
}
