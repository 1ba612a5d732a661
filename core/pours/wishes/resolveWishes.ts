/** The joint wishes of a site worked out for one part of a slab. */
import type { Finish } from '../../../shared/document/materials'
import type { AcceptedPours, PourPart } from '../../../shared/document/pours'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { settingValue } from '../../../shared/settings'
import { groundRings, pourGround } from '../../document/commands/pourGround'
import { Ends } from '../../document/commands/settlePours'
import { edgeSpans } from '../../geometry/edgeSpans'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { resolvePath } from '../../geometry/resolvePath'
import { patternTile } from '../../reports/pattern/finishPattern'
import { findHiding } from './findHiding'
import { findMiters } from './findMiters'
import type { Courses, JointWishes, RequiredLine } from './jointWishes'
import { wishedDeg } from './wishedDirection'

/** Patterns whose courses run straight through along the pattern axis. */
const courseWork: ReadonlySet<string> = new Set(['runningBond', 'plank'])

/** None where the pattern's direction is not set or its joints are broken. */
function findCourses(finish: Finish | undefined): Courses[] {
  if (!finish || finish.patternDeg === undefined || !courseWork.has(finish.pattern)) return []
  const tile = patternTile(finish.pattern)
  const { patternDeg: deg, patternAt: at } = finish
  return tile && at ? [{ deg, lines: { at, stepM: tile.jointM } }] : [{ deg }]
}

export type WishSite = Pick<Site, 'wishes' | 'finishes' | 'settings'>

function findRequired(own: WishSite['wishes'], slab: Slab, part: PourPart, accepted: AcceptedPours | undefined) {
  const lines = own.filter(wish => wish.kind === 'required')
  if (lines.length === 0) return []
  const ends = new Ends(slab, edgeSpans(groundRings(pourGround(slab, part))), accepted?.joints ?? [])
  return lines.map(({ id, line: [a, b] }): RequiredLine => ({ id, from: ends.at(a), to: ends.at(b) }))
}

/**
 * Lines in the drawing frame, directions in degrees counter-clockwise from drawing-right. Besides what was wished for:
 * the miters of the borders, and what hides a joint. Undefined where nothing bears on the joints.
 */
export function resolveWishes(
  site: WishSite,
  source: Slab,
  slab: ResolvedSlab,
  part: PourPart,
  accepted: AcceptedPours | undefined,
): JointWishes | undefined {
  const own = site.wishes.filter(({ slabId }) => slabId === source.id)
  const finish = site.finishes.find(({ id }) => id === source.finishId)
  const rings = [
    { pathId: source.outline.id, ring: slab.outline },
    ...source.openings.map(({ id, path }) => ({
      pathId: path.id,
      ring: slab.openings.find(opening => opening.id === id)?.ring ?? [],
    })),
  ]
  const wishes = {
    required: findRequired(own, source, part, accepted),
    forbiddenLines: own.flatMap(wish => (wish.kind === 'forbiddenLine' ? [{ id: wish.id, line: wish.line }] : [])),
    forbiddenAreas: own.flatMap(wish =>
      wish.kind === 'forbiddenArea' ? [{ id: wish.id, ring: resolvePath(wish.path, wish.id).ring }] : [],
    ),
    directionsDeg: own.flatMap(wish => (wish.kind === 'direction' ? [wishedDeg(wish, finish)] : [])),
    courses: part === 'border' ? [] : findCourses(finish),
    // A joint from a re-entrant corner is where it should be; only a border on its own is cut clear of that miter too.
    miters: rings
      .flatMap(({ pathId, ring }) =>
        findMiters(
          ring,
          source.borders.filter(border => border.pathId === pathId),
        ),
      )
      .filter(({ isConvex }) => part === 'border' || isConvex)
      .map(({ from, to }) => ({ from, to })),
    hiding: findHiding(slab, source.bands),
  }
  const leastWidthM = settingValue(site.settings, 'leastPourWidthM')
  if (leastWidthM === 0 && Object.values(wishes).every(list => list.length === 0)) return undefined
  return { ...wishes, leastWidthM }
}
