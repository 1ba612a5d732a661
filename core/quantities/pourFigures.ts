import type { PourPart } from '../../shared/document/pours'
import type { Slab } from '../../shared/document/slab'
import type { CurveRegion, CurveRing } from '../geometry/curve'
import { intersectCurves } from '../geometry/curveBoolean'
import { edgeLength } from '../geometry/edgeLength'
import { edgeOwners } from '../geometry/edgeOwners'
import type { ResolvedBorder, ResolvedSlab } from '../geometry/resolvedSlab'
import { curveArea } from '../geometry/ringArea'
import { type Quantity, quantity } from './quantity'

export interface FiguredPour {
  readonly id: string
  readonly slabId: string
  readonly part: PourPart
  readonly number: string
  readonly region: CurveRegion
  readonly areaM2: number
}

/** Edges of the pour that lie on bordered edges of the slab; joints carry ids of their own. */
export function borderedEdges(
  pour: Pick<FiguredPour, 'region'>,
  border: Pick<ResolvedBorder, 'id' | 'pathId'>,
  source: Slab,
): CurveRing {
  const path = [source.outline, ...source.openings.map(o => o.path)].find(p => p.id === border.pathId)
  const edges = source.borders.find(b => b.id === border.id)?.edges
  if (!path || edges === undefined) return []
  const owners = edgeOwners(path)
  const isBordered = (edgeId: string) => {
    const own = owners.get(edgeId) ?? []
    return edges === 'all' ? own.length > 0 : own.some(owner => edges.includes(owner))
  }
  return [pour.region.outer, ...pour.region.holes].flat().filter(edge => isBordered(edge.edgeId))
}

/** Area of a pour, and of each border it takes a piece of: the piece's area and the length of bordered edges. */
export function pourFigures(pour: FiguredPour, slab: ResolvedSlab, source: Slab): Quantity[] {
  const whose = { slabId: pour.slabId, pourId: pour.id }
  const area = quantity({
    id: `${pour.id}-area`,
    label: `Pour ${pour.number} area`,
    ...whose,
    value: pour.areaM2,
    unit: 'm²',
    formula: 'area inside the joints and edges of the pour',
    inputs: { 'area inside the joints and edges of the pour': [pour.areaM2, 'm²'] },
  })
  const borders = pour.part === 'whole' ? slab.borders : []
  return [
    area,
    ...borders.flatMap((border, i) => {
      const pieceM2 = curveArea(intersectCurves(border.shape, [pour.region]).regions)
      if (pieceM2 === 0) return []
      const lengthM = borderedEdges(pour, border, source).reduce((sum, edge) => sum + edgeLength(edge), 0)
      return [
        quantity({
          id: `${pour.id}-${border.id}-area`,
          label: `Pour ${pour.number}, border ${i + 1} area`,
          ...whose,
          value: pieceM2,
          unit: 'm²',
          formula: 'area of the border inside the pour',
          inputs: { 'area of the border inside the pour': [pieceM2, 'm²'] },
        }),
        quantity({
          id: `${pour.id}-${border.id}-length`,
          label: `Pour ${pour.number}, border ${i + 1} length`,
          ...whose,
          value: lengthM,
          unit: 'm',
          formula: 'length of the bordered edges of the pour',
          inputs: { 'length of the bordered edges of the pour': [lengthM, 'm'] },
        }),
      ]
    }),
  ]
}
