/** Points of the lines that keep no corners of their own: fences, joint lines, tapes. */
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { readLinePointId } from '../../geometry/linePointId'
import { endAt } from '../tapeEnds'
import { type Command, editSite, missing } from './editSite'
import { jointEndAt } from './jointEndAt'

export interface PointLine {
  readonly id: Id
  readonly points: readonly Pt[]
  /** Points may be added and taken away; false where there are always two. */
  readonly hasMany: boolean
}

export interface LinePoint {
  readonly line: PointLine
  readonly index: number
  readonly at: Pt
}

/** Every such line, in document order. */
export const pointLines = (site: Site): readonly PointLine[] => [
  ...site.casters.flatMap(caster =>
    caster.kind === 'wall' ? [{ id: caster.id, points: caster.line, hasMany: true }] : [],
  ),
  ...site.wishes.flatMap((wish): readonly PointLine[] => {
    if (wish.kind === 'forbiddenLine') return [{ id: wish.id, points: wish.line, hasMany: true }]
    if (wish.kind === 'required') return [{ id: wish.id, points: wish.line.map(({ last }) => last), hasMany: false }]
    return []
  }),
  ...(site.tapes ?? []).map(({ id, ends }) => ({ id, points: ends.map(({ last }) => last), hasMany: false })),
]

export function findLinePoint(site: Site, pointId: Id): LinePoint | undefined {
  const told = readLinePointId(pointId)
  if (!told) return undefined
  const line = pointLines(site).find(({ id }) => id === told.lineId)
  const at = line?.points[told.index]
  return line && at ? { line, index: told.index, at } : undefined
}

/** Puts a point elsewhere, on a draft. An end that held on to an edge or a corner holds on to what it now lies on. */
export function placeLinePoint(site: Site, pointId: Id, place: (at: Pt) => Pt): boolean {
  const found = findLinePoint(site, pointId)
  if (!found) return false
  const { line, index } = found
  const to = place(found.at)
  const caster = site.casters.find(({ id }) => id === line.id)
  if (caster?.kind === 'wall') caster.line[index] = to
  const wish = site.wishes.find(({ id }) => id === line.id)
  if (wish?.kind === 'forbiddenLine') wish.line[index] = to
  const slab = wish && site.slabs.find(({ id }) => id === wish.slabId)
  if (wish?.kind === 'required' && slab) wish.line[index] = jointEndAt(slab, to)
  const tape = site.tapes?.find(({ id }) => id === line.id)
  if (tape) tape.ends[index] = endAt(site, to)
  return true
}

/** Takes a point out of its line, on a draft; two stay. */
export function removeLinePoint(site: Site, pointId: Id): Finding | undefined {
  const found = findLinePoint(site, pointId)
  if (!found) return missing('point', pointId)
  const { line, index } = found
  if (!line.hasMany || line.points.length <= 2)
    return {
      code: 'pathTooShort',
      severity: 'stop',
      values: { vertices: line.points.length - 1, least: 2, what: 'line' },
    }
  pointsOf(site, line.id)?.splice(index, 1)
  return undefined
}

const pointsOf = (site: Site, lineId: Id): Pt[] | undefined => {
  const caster = site.casters.find(({ id }) => id === lineId)
  if (caster?.kind === 'wall') return caster.line
  const wish = site.wishes.find(({ id }) => id === lineId)
  return wish?.kind === 'forbiddenLine' ? wish.line : undefined
}

/** A new point halfway to the next one, of a line that may have many. */
export const addLinePoint =
  (pointId: Id): Command =>
  site =>
    editSite(site, draft => {
      const found = findLinePoint(draft, pointId)
      const next = found?.line.points[found.index + 1]
      const points = found && pointsOf(draft, found.line.id)
      if (!found || !next || !points) return missing('point', pointId)
      const [[ax, ay], [bx, by]] = [found.at, next]
      points.splice(found.index + 1, 0, [(ax + bx) / 2, (ay + by) / 2])
      return undefined
    })
