import { type LinePoint, pointLines } from '../../../core/document/commands/linePoints'
import { siteEntities } from '../../../core/document/commands/siteEntities'
import { linePointId } from '../../../core/geometry/linePointId'
import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { useSession } from '../../app/session'
import { cornerLetter } from '../../editor/cornerNames'
import { pathOf } from '../../editor/pickPart'
import { ChoiceField } from '../ChoiceField'

/** Edges and corners of a path, in the order they are walked. */
const partsOfPath = ({ vertices, edges }: Path): readonly (readonly [Id, string])[] => [
  ...edges.map(({ id }, i) => [id, `edge ${cornerLetter(i)} to ${cornerLetter((i + 1) % vertices.length)}`] as const),
  ...vertices.map(({ id }, i) => [id, `corner ${cornerLetter(i)}`] as const),
]

/** The same for a path and the thing it shapes. */
export function GoToPart({ site, path, value }: { readonly site: Site; readonly path: Path; readonly value: Id }) {
  const owner = siteEntities(site).find(entity => pathOf(entity) === path)
  if (!owner) return null
  const whole = owner.kind === 'slab' ? 'the whole slab' : 'all of it'
  return <GoTo value={value} whole={[owner.row.id, whole]} parts={partsOfPath(path)} />
}

/** Points of a line, in order, each by its letter. */
export const partsOfLine = ({ id, points }: LinePoint['line']): readonly (readonly [Id, string])[] =>
  points.map((_, i) => [linePointId(id, i), `point ${cornerLetter(i)}`] as const)

/** To one point of a line that is chosen as a whole; nothing where it is none. */
export function GoToPoint({ site, lineId }: { readonly site: Site; readonly lineId: Id }) {
  const line = pointLines(site).find(({ id }) => id === lineId)
  return line ? <GoTo value={lineId} whole={[lineId, 'the whole line']} parts={partsOfLine(line)} /> : null
}

/** From a thing to one part of it, without pointing; from a part to another, and back to all of it. */
export function GoTo({
  value,
  whole,
  parts,
}: {
  /** What is chosen now: an id of `parts`, or of the whole. */
  readonly value: Id
  readonly whole: readonly [Id, string]
  readonly parts: readonly (readonly [Id, string])[]
}) {
  const { view } = useSession()
  return (
    <ChoiceField
      label="Go to"
      value={value}
      choices={[whole, ...parts]}
      onSet={id => view.setState({ selection: [id] })}
    />
  )
}
