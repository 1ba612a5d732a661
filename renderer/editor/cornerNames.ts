/** Corners by letter, so that a typed place can be told from one: "corner A of Patio". */

import { openingNames } from '../../core/document/openingNames'
import { linePointId } from '../../core/geometry/linePointId'
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'

export interface NamedCorner {
  readonly id: Id
  readonly at: Pt
  readonly words: string
}

/** A … Z, then A2 … Z2. */
export const cornerLetter = (i: number): string =>
  String.fromCharCode(65 + (i % 26)) + (i < 26 ? '' : String(Math.floor(i / 26) + 1))

/** In a list of nothing but places: `A of Patio`. */
export const placeWords = (words: string): string => words.replace(/^(corner|point) /, '')

const known = new WeakMap<Site, readonly NamedCorner[]>()

/** Every corner of slabs, openings, buildings and covers, and the points of fences. */
export function cornersOfSite(site: Site): readonly NamedCorner[] {
  const ready = known.get(site)
  if (ready) return ready
  const ofPath = (path: Path, name: string): readonly NamedCorner[] =>
    path.vertices.map(({ id, at }, i) => ({ id, at, words: `corner ${cornerLetter(i)} of ${name}` }))
  const ofOpenings = ({ name, openings }: Slab): readonly NamedCorner[] => {
    const names = openingNames(openings)
    return openings.flatMap(({ id, path }) => ofPath(path, `${names.get(id)!.words} in ${name}`))
  }
  const all = [
    ...site.slabs.flatMap(slab => [...ofPath(slab.outline, slab.name), ...ofOpenings(slab)]),
    ...site.casters.flatMap((caster): readonly NamedCorner[] => {
      if (caster.kind === 'building') return ofPath(caster.footprint, caster.name)
      if (caster.kind === 'cover') return ofPath(caster.outline, caster.name)
      if (caster.kind === 'tree') return [{ id: caster.id, at: caster.at, words: `trunk of ${caster.name}` }]
      return caster.line.map((at, i) => ({
        id: linePointId(caster.id, i),
        at,
        words: `point ${cornerLetter(i)} of ${caster.name}`,
      }))
    }),
    ...site.points.map(({ id, at, name }) => ({ id, at, words: name })),
  ]
  known.set(site, all)
  return all
}
