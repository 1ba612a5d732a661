/** Corners and edges of what is chosen: what a press takes hold of, and what a click narrows the choice to. */

import { editablePaths, isClosed } from '../../core/document/commands/findPath'
import { findLinePoint, type PointLine, pointLines } from '../../core/document/commands/linePoints'
import { chosenEntities, type Entity } from '../../core/document/commands/siteEntities'
import { distanceToEdge, ringContains } from '../../core/geometry/contains'
import { linePointId } from '../../core/geometry/linePointId'
import { resolvePath } from '../../core/geometry/resolvePath'
import { isRounding } from '../../core/reports/dimensions'
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { DimensionedRing } from './layers/placeLine'
import { isOnFurnishing } from './pickAt'

const apart = (a: Pt, b: Pt): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The path whose corners and edges a thing is shaped by. */
export function pathOf({ kind, row }: Entity): Path | null {
  switch (kind) {
    case 'slab':
      return row.outline
    case 'opening':
    case 'inset':
      return row.path
    case 'band':
      return row.line
    case 'noGo':
      return row
    case 'wish':
      return row.kind === 'forbiddenArea' ? row.path : null
    case 'caster':
      return row.kind === 'building' ? row.footprint : row.kind === 'cover' ? row.outline : null
    default:
      return null
  }
}

/** The paths of what is chosen, and those that a chosen corner or edge is on. */
export function chosenPaths(site: Site, ids: readonly Id[]): readonly Path[] {
  const own = chosenEntities(site, ids).flatMap(entity => pathOf(entity) ?? [])
  const held = editablePaths(site).filter(
    path =>
      !own.includes(path) && (path.vertices.some(v => ids.includes(v.id)) || path.edges.some(e => ids.includes(e.id))),
  )
  return [...own, ...held]
}

/**
 * The lines of walls and fences that are chosen, or of which a point is, with their lengths to show; each run is named by
 * its number.
 */
export const chosenWalls = (site: Site, ids: readonly Id[]): readonly DimensionedRing[] =>
  site.casters.flatMap(caster =>
    caster.kind === 'wall' && ids.some(id => id === caster.id || findLinePoint(site, id)?.line.id === caster.id)
      ? [
          {
            ring: caster.line.slice(1).map((to, i) => ({ edgeId: `${caster.id}/${i}`, from: caster.line[i]!, to })),
            name: caster.name,
            wallId: caster.id,
          },
        ]
      : [],
  )

/** The edge nearest to a point, of any slab's outline or opening. */
export function pickEdge(site: Site, at: Pt, nearM: number): Id | null {
  const rings = site.slabs.flatMap(slab => [slab.outline, ...slab.openings.map(({ path }) => path)])
  return nearestEdge(rings, at, nearM)
}

/** `roundings`: the arcs of rounded corners, each by the id of its corner, in place of the edges. */
function nearestEdge(paths: readonly Path[], at: Pt, nearM: number, roundings = false): Id | null {
  let best: { readonly id: Id; readonly farM: number } | null = null
  for (const path of paths)
    for (const edge of resolvePath(path, path.id, isClosed(path)).ring) {
      if (isRounding(edge) !== roundings) continue
      const farM = distanceToEdge(edge, at)
      if (farM <= nearM && farM < (best?.farM ?? Infinity))
        best = { id: roundings ? edge.edgeId.slice(0, -1) : edge.edgeId, farM }
    }
  return best?.id ?? null
}

const nearestCorner = (
  paths: readonly Path[],
  lines: readonly PointLine[],
  at: Pt,
  nearM: number,
): { readonly id: Id; readonly at: Pt } | undefined =>
  [
    ...paths.flatMap(({ vertices }) => vertices),
    ...lines.flatMap(({ id, points }) => points.map((point, i) => ({ id: linePointId(id, i), at: point }))),
  ]
    .filter(corner => apart(corner.at, at) <= nearM)
    .sort((a, b) => apart(a.at, at) - apart(b.at, at))[0]

/** The fences, joint lines and tapes of what is chosen, and those that a chosen point is on. */
const chosenLines = (site: Site, ids: readonly Id[]): readonly PointLine[] => {
  const held = ids.map(id => findLinePoint(site, id)?.line.id)
  return pointLines(site).filter(({ id }) => ids.includes(id) || held.includes(id))
}

const isOnLine = ({ points }: PointLine, at: Pt, nearM: number): boolean =>
  points.slice(1).some((to, i) => distanceToEdge({ edgeId: '', from: points[i]!, to }, at) <= nearM)

/** A corner, rounded or not, or a point of a line, else an edge, of what is chosen. */
export function pickPart(site: Site, ids: readonly Id[], at: Pt, nearM: number): Id | null {
  const paths = chosenPaths(site, ids)
  return (
    nearestCorner(paths, chosenLines(site, ids), at, nearM)?.id ??
    nearestEdge(paths, at, nearM, true) ??
    nearestEdge(paths, at, nearM)
  )
}

export interface Handle {
  readonly at: Pt
  readonly ids: readonly Id[]
}

/** A corner of what is chosen, else all of it with its nearest corner as the point that catches. */
export function pickHandle(site: Site, ids: readonly Id[], at: Pt, nearM: number): Handle | null {
  const paths = chosenPaths(site, ids)
  const lines = chosenLines(site, ids)
  const held = nearestCorner(paths, lines, at, nearM)
  if (held) return { at: held.at, ids: [held.id] }
  const edge = nearestEdge(paths, at, nearM)
  if (edge && ids.includes(edge)) return { at, ids: [edge] }
  const inside = paths.some(path =>
    isClosed(path) ? ringContains(resolvePath(path, path.id).ring, at) : nearestEdge([path], at, nearM) !== null,
  )
  const spot = chosenEntities(site, ids).find(entity => {
    if (entity.kind === 'caster') {
      const { row } = entity
      if (row.kind === 'tree') return apart(row.at, at) <= row.crownRadiusM
    }
    if (entity.kind === 'furnishing') return isOnFurnishing(entity.row, at)
    // What holds on to a corner or an edge is not carried off it.
    if (entity.kind === 'tape' && entity.row.ends.some(({ on }) => on.on !== 'free')) return false
    if (entity.kind === 'wish' && entity.row.kind === 'required') return false
    const line = lines.find(({ id }) => id === entity.row.id)
    if (line) return isOnLine(line, at, nearM)
    return 'at' in entity.row && apart(entity.row.at, at) <= 2 * nearM
  })
  if (!inside && !spot) return null
  const whole = ids.filter(id => chosenEntities(site, [id]).length > 0)
  if (whole.length === 0) return null
  const corner = nearestCorner(paths, lines, at, Infinity)
  return { at: spot && 'at' in spot.row ? spot.row.at : (corner?.at ?? at), ids: whole }
}
