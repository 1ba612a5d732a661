import { useEffect, useRef } from 'react'
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
const partsOfPath = (path: Path): readonly (readonly [Id, string])[] => [...edgesOfPath(path), ...cornersOfPath(path)]

export const edgesOfPath = ({ vertices, edges }: Path): readonly (readonly [Id, string])[] =>
  edges.map(({ id }, i) => [id, `edge ${cornerLetter(i)} to ${cornerLetter((i + 1) % vertices.length)}`])

export const cornersOfPath = ({ vertices }: Path): readonly (readonly [Id, string])[] =>
  vertices.map(({ id }, i) => [id, `corner ${cornerLetter(i)}`])

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

/** Where the last choice led: the form of that place is another one, and its own list takes the focus over. */
let arriving: Id | null = null

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
  const list = useRef<HTMLSelectElement>(null)
  useEffect(() => {
    if (arriving === value) list.current?.focus()
    arriving = null
  }, [value])
  return (
    <ChoiceField
      ref={list}
      label="Go to"
      value={value}
      choices={[whole, ...parts]}
      onSet={id => {
        arriving = id
        view.setState({ selection: [id] })
      }}
    />
  )
}
