/** Which lines and shapes on the plan an id stands for: what is selected, and what a figure was measured on. */

import { editablePaths } from '../../../core/document/commands/findPath'
import { findLinePoint } from '../../../core/document/commands/linePoints'
import type { CurveEdge, CurveRegion, CurveRing } from '../../../core/geometry/curve'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { edgeFromRise } from '../../../core/geometry/resolvePath'
import { stepLines } from '../../../core/geometry/stepLines'
import type { Plan } from '../../../core/plan/plan'
import { planContraction } from '../../../core/plan/planContraction'
import { formedEdges, isolationEdges } from '../../../core/quantities/edgeLengths'
import { borderPiece } from '../../../core/quantities/pourFigures'
import { isPourTotal } from '../../../core/quantities/pourTotals'
import { furnishingShape } from '../../../core/reports/furnishingShape'
import type { Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import type { Quantity } from '../../../shared/planJson'
import type { LivePlan } from '../../store/livePlan'
import { outlineOf } from './drawCasters'
import { shownDirection } from './drawParts'

export interface PlanGeometry {
  readonly edges: readonly CurveEdge[]
  readonly regions: readonly CurveRegion[]
  readonly points: readonly Pt[]
}

type Worked = { readonly pours?: Plan['pours']; readonly joints?: Plan['joints'] }

const nothing: PlanGeometry = { edges: [], regions: [], points: [] }

const byRing = (ring: readonly CurveEdge[]): PlanGeometry => ({ ...nothing, edges: ring })
const byRegions = (regions: readonly CurveRegion[]): PlanGeometry => ({ ...nothing, regions })

/** The geometry of one entity of the site, or of a pour or joint of the plan; nothing where the id is unknown. */
export function entityGeometry(live: LivePlan, worked: Worked, id: string): PlanGeometry {
  for (const slab of live.slabs) {
    if (slab.id === id) return byRing(slab.outline)
    const opening = slab.openings.find(each => each.id === id)
    if (opening) return byRing(opening.ring)
    const claim = [...slab.borders, ...slab.bands, ...slab.insets].find(each => each.id === id)
    if (claim) return byRegions(claim.shape)
    const steps = live.site.slabs.find(each => each.id === slab.id)?.steps.find(each => each.id === id)
    if (steps) return byRing(stepLines(slab.outline, steps))
  }
  const { casters, points } = live.site
  const caster = casters.find(each => each.id === id)
  switch (caster?.kind) {
    case 'building':
      return byRing(outlineOf(caster.footprint))
    case 'cover':
      return byRing(outlineOf(caster.outline))
    case 'tree':
      return { ...nothing, points: [caster.at] }
    case 'wall':
      return {
        ...nothing,
        edges: caster.line.slice(1).map((to, i) => ({ edgeId: caster.id, from: caster.line[i]!, to })),
      }
  }
  for (const wish of live.site.wishes) {
    if (wish.id !== id) continue
    if (wish.kind === 'direction') {
      const shown = shownDirection(live.site, live.slabs, wish)
      return shown ? { ...nothing, edges: [{ edgeId: id, from: shown[0], to: shown[1] }] } : nothing
    }
    if (wish.kind === 'forbiddenArea') return byRing(outlineOf(wish.path))
    const line = wish.kind === 'required' ? wish.line.map(({ last }) => last) : wish.line
    return { ...nothing, edges: line.slice(1).map((to, i) => ({ edgeId: id, from: line[i]!, to })) }
  }
  const { access, furnishings = [], notes = [], tapes = [] } = live.site
  const furnishing = furnishings.find(each => each.id === id)
  if (furnishing) {
    const { body } = furnishingShape(furnishing)
    // Stakes at its four corners, not at every cut of its outline.
    return {
      ...nothing,
      regions: [
        {
          outer: body.map((from, i) => ({ edgeId: id, from, to: body[(i + 1) % body.length]! })),
          holes: [],
        },
      ],
    }
  }
  const note = notes.find(each => each.id === id)
  if (note) return { ...nothing, points: [note.at] }
  const tape = tapes.find(each => each.id === id)
  if (tape) return { ...nothing, edges: [{ edgeId: id, from: tape.ends[0].last, to: tape.ends[1].last }] }
  const keptOff = access?.noGo.find(each => each.id === id)
  if (keptOff) return byRing(outlineOf(keptOff))
  const spots = [
    ...(access ? [...access.truckSpots, ...access.pumpSpots, ...access.washouts, ...access.ways] : []),
    ...live.site.slabs.flatMap(({ obstacles }) => obstacles),
  ]
  const spot = spots.find(each => each.id === id)
  if (spot) return { ...nothing, points: [spot.at] }
  for (const path of editablePaths(live.site)) {
    const corner = path.vertices.find(each => each.id === id)
    if (corner) return { ...nothing, points: [corner.at] }
    const i = path.edges.findIndex(each => each.id === id)
    if (i >= 0) {
      const to = path.vertices[(i + 1) % path.vertices.length]!
      return byRing([edgeFromRise(id, path.vertices[i]!.at, to.at, path.edges[i]!.riseM)])
    }
  }
  const linePoint = findLinePoint(live.site, id)
  if (linePoint) return { ...nothing, points: [linePoint.at] }
  const point = points.find(each => each.id === id)
  if (point) return { ...nothing, points: [point.at] }
  const pour = worked.pours?.find(each => each.id === id)
  if (pour) return byRegions([pour.region])
  const joint = worked.joints?.find(each => each.id === id)
  if (joint) return { ...nothing, edges: [{ edgeId: joint.id, from: joint.from, to: joint.to }] }
  return nothing
}

/** What a figure was measured on, told by the end of its id. */
export function figureGeometry(
  live: LivePlan,
  worked: Worked,
  figure: Pick<Quantity, 'id' | 'slabId' | 'pourId'>,
): PlanGeometry {
  const { id, slabId, pourId } = figure
  if (pourId !== undefined) return pourGeometry(live, worked, figure, pourId)
  const slab = live.slabs.find(each => each.id === slabId)
  if (slabId === undefined) return siteGeometry(live, worked, id)
  if (!slab) return nothing
  const entity = /^(?<entity>[a-z]+\d+)-/.exec(id)?.groups?.entity ?? slab.id
  if (entity !== slab.id) {
    const border = slab.borders.find(each => each.id === entity)
    if (border && id.endsWith('-outer-length')) return byRing(border.outerSide)
    return entityGeometry(live, worked, entity)
  }
  const source = live.site.slabs.find(each => each.id === slab.id)
  if (id.includes('-opening-')) return byRing(slab.openings.flatMap(each => each.ring))
  if (id.endsWith('-gross-area') || id.endsWith('-perimeter')) return byRing(slab.outline)
  if (id.endsWith('-field-area')) return byRegions(slab.field)
  if (id.endsWith('-form-length') && source) return byRing(formedEdges(slab, source))
  if (id.endsWith('-isolation-length') && source) return byRing(isolationEdges(slab, source))
  if (id.endsWith('-steps-order') && source) return byRing(stepEdges(slab, source))
  const finishId = /-finish-(?<finish>[a-z]+\d+)-area$/.exec(id)?.groups?.finish
  if (finishId !== undefined) {
    const claims = [...slab.borders, ...slab.bands, ...slab.insets].filter(each => each.finishId === finishId)
    return byRegions([...(slab.finishId === finishId ? slab.field : []), ...claims.flatMap(({ shape }) => shape)])
  }
  if (/-(construction-joint|header)-length$/.test(id)) return jointGeometry(worked, slab.id)
  if (id.includes('-contraction-joint-') && source)
    return byRing(
      planContraction(source, worked.pours ?? []).lines.map(({ from, to }) => ({ edgeId: slab.id, from, to })),
    )
  return byRegions(slab.net)
}

/** All of the pour, or of its part of a border: the piece, or its outer edge. */
function pourGeometry(
  live: LivePlan,
  worked: Worked,
  { id, slabId }: Pick<Quantity, 'id' | 'slabId'>,
  pourId: string,
): PlanGeometry {
  const borderId = id.startsWith(`${pourId}-`)
    ? /^-(?<border>[a-z]+\d+)-/.exec(id.slice(pourId.length))?.groups?.border
    : undefined
  const pour = worked.pours?.find(each => each.id === pourId)
  const border = live.slabs.find(each => each.id === slabId)?.borders.find(each => each.id === borderId)
  if (!pour || !border) return entityGeometry(live, worked, pourId)
  const { piece, edges } = borderPiece(pour, border)
  return id.endsWith('-length') ? byRing(edges) : byRegions(piece)
}

export const stepEdges = (slab: ResolvedSlab, source: Slab): CurveRing =>
  source.steps.flatMap(each => stepLines(slab.outline, each))

const jointGeometry = (worked: Worked, slabId?: string): PlanGeometry =>
  byRing(
    (worked.joints ?? [])
      .filter(joint => joint.kind === 'construction' && (slabId === undefined || joint.slabId === slabId))
      .map(joint => ({ edgeId: joint.id, from: joint.from, to: joint.to })),
  )

/** A total lights what it is the sum of. */
function siteGeometry(live: LivePlan, worked: Worked, id: string): PlanGeometry {
  if (id === 'total-construction') return jointGeometry(worked)
  if (isPourTotal({ id })) return byRegions((worked.pours ?? []).map(({ region }) => region))
  const ends: Readonly<Record<string, string>> = {
    'total-form': '-form-length',
    'total-isolation': '-isolation-length',
    'total-steps': '-steps-order',
  }
  const end = ends[id]
  if (end)
    return byRing(
      live.slabs.flatMap(slab => figureGeometry(live, worked, { id: `${slab.id}${end}`, slabId: slab.id }).edges),
    )
  if (id === 'total-border')
    return byRing(live.slabs.flatMap(slab => slab.borders.flatMap(({ outerSide }) => outerSide)))
  return byRegions(live.slabs.flatMap(({ net }) => net))
}
