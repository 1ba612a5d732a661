/** Form and isolation length, edge by edge. */
import type { Slab } from '../../shared/document/slab'
import type { CurveEdge, CurveRing } from '../geometry/curve'
import { edgeLength } from '../geometry/edgeLength'
import type { ResolvedOpening, ResolvedSlab } from '../geometry/resolvedSlab'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

/** A rounding arc stands against existing work only where both edges it joins do. */
function standsAgainst(ring: CurveRing, index: number, against: ReadonlySet<string>): boolean {
  const edge = ring[index]!
  if (!edge.edgeId.endsWith('~')) return against.has(edge.edgeId)
  const count = ring.length
  return against.has(ring[(index + count - 1) % count]!.edgeId) && against.has(ring[(index + 1) % count]!.edgeId)
}

const lengthWhere = (ring: CurveRing, keep: (index: number) => boolean): number =>
  ring.reduce((sum, edge, i) => (keep(i) ? sum + edgeLength(edge) : sum), 0)

/** Planters, columns and other openings are formed; a pool only where its edge is formed in place; a drain never. */
const isFormed = (o: ResolvedOpening): boolean =>
  o.kind === 'planter' || o.kind === 'column' || o.kind === 'other' || (o.kind === 'pool' && o.pool === 'cantilevered')

export const isIsolated = (o: ResolvedOpening): boolean =>
  o.kind === 'column' || o.kind === 'pool' || o.kind === 'planter'

/** The edges of a slab that carry an isolation joint. */
export function isolationEdges(slab: ResolvedSlab, source: Slab): readonly CurveEdge[] {
  const against = new Set<string>(source.againstExisting)
  return [
    ...slab.outline.filter((_, i) => standsAgainst(slab.outline, i, against)),
    ...slab.openings.filter(isIsolated).flatMap(o => o.ring),
  ]
}

/** The edges of a slab that a form is set along. */
export function formedEdges(slab: ResolvedSlab, source: Slab): readonly CurveEdge[] {
  const against = new Set<string>(source.againstExisting)
  return [
    ...slab.outline.filter((_, i) => !standsAgainst(slab.outline, i, against)),
    ...slab.openings.filter(isFormed).flatMap(o => o.ring),
  ]
}

export function edgeLengths(slab: ResolvedSlab, source: Slab): Quantity[] {
  const against = new Set<string>(source.againstExisting)
  const existing = lengthWhere(slab.outline, i => standsAgainst(slab.outline, i, against))
  const openingInputs = (keep: (o: ResolvedOpening) => boolean): Inputs =>
    Object.fromEntries(slab.openings.filter(keep).map(o => [`${o.kind} ${o.id}`, [o.perimeterM, 'm'] as const]))
  const formed = openingInputs(isFormed)
  const isolated: Inputs = {
    ...(existing > 0 ? { 'edges against existing work': [existing, 'm'] } : {}),
    ...openingInputs(isIsolated),
  }
  return [
    quantity({
      id: `${slab.id}-form-length`,
      label: 'Form length',
      slabId: slab.id,
      value: slab.perimeterM - existing + sumInputs(formed),
      unit: 'm',
      formula: ['outline length − edges against existing work', ...Object.keys(formed)].join(' + '),
      inputs: { 'outline length': [slab.perimeterM, 'm'], 'edges against existing work': [existing, 'm'], ...formed },
    }),
    quantity({
      id: `${slab.id}-isolation-length`,
      label: 'Isolation joint length',
      slabId: slab.id,
      value: sumInputs(isolated),
      unit: 'm',
      formula: sumFormula(isolated),
      inputs: isolated,
      source:
        'isolation joints at walls, columns, pool shells and existing slabs: NRMCA, Concrete in Practice 6, Joints in Concrete Slabs on Grade',
    }),
  ]
}
