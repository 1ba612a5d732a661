/** What holds the pointer, by the names on the plan: "In line" and "with Patio and House". */
import { namesOfKind } from '../../core/document/kindNames'
import { openingNames } from '../../core/document/openingNames'
import type { SnapHold } from '../../core/geometry/field/findSnaps'
import { capitalize } from '../../core/units/capitalize'
import type { JointWish } from '../../shared/document/pours'
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { obstacleNames } from './obstacleNames'

interface Named {
  readonly id: Id
  readonly name: string
}

const wishNames: Readonly<Record<JointWish['kind'], string>> = {
  required: 'the required joint',
  forbiddenLine: 'the line without joints',
  forbiddenArea: 'the area without joints',
  direction: 'the joint direction',
}

/** What is drawn on a thing, or ends on it, comes before it: its own ids are among those of its edges. */
function* namesOf(site: Site): Generator<Named> {
  for (const { joints } of site.accepted) for (const { id } of joints) yield { id, name: 'the joint' }
  for (const { id, kind } of site.wishes) yield { id, name: wishNames[kind] }
  for (const { openings, bands, insets, obstacles } of site.slabs) {
    const names = [openingNames(openings), namesOfKind(bands, 'band'), namesOfKind(insets, 'inset')]
    for (const named of [...names, obstacleNames(obstacles)]) for (const [id, { the }] of named) yield { id, name: the }
  }
  yield* site.slabs
  yield* site.casters
  const { truckSpots = [], pumpSpots = [], washouts = [], ways = [], noGo = [] } = site.access ?? {}
  for (const [i, { id }] of truckSpots.entries()) yield { id, name: `Truck ${i + 1}` }
  for (const [i, { id }] of pumpSpots.entries()) yield { id, name: `Pump ${i + 1}` }
  for (const [i, { id }] of washouts.entries()) yield { id, name: `Washout ${i + 1}` }
  for (const { id, name } of ways) yield { id, name: name ?? 'the way in and out' }
  for (const { id } of noGo) yield { id, name: 'the area to keep off' }
}

/** The name of what one of these ids is of; what bears none yet is being drawn. */
export function nameOf(site: Site, ids: readonly Id[]): string {
  for (const { id, name } of namesOf(site)) if (ids.includes(id)) return name
  return 'what is drawn'
}

const joined = (words: string): string =>
  words === 'in line' ? 'with ' : ['square to', 'square at', 'alongside'].includes(words) ? '' : 'of '

export function caughtWords(
  site: Site,
  [first, second]: readonly SnapHold[],
): { readonly relation: string; readonly rest: string } {
  if (!first) return { relation: '', rest: '' }
  const named = ({ words, ids }: SnapHold) => (words === 'square at' ? 'the first corner' : nameOf(site, ids))
  const [name, other] = [named(first), second && named(second)]
  const relation = capitalize(first.words)
  const whole = `${joined(first.words)}${name}`
  if (!second || other === undefined) return { relation, rest: whole }
  if (first.words !== second.words)
    return { relation, rest: `${whole}, ${second.words} ${joined(second.words)}${other === name ? 'it' : other}` }
  if (other !== name) return { relation, rest: `${whole} and ${other}` }
  const isOfEdges = first.words === 'crossing' || first.words === 'in line'
  return { relation, rest: isOfEdges ? `${joined(first.words)}two edges of ${name}` : whole }
}
