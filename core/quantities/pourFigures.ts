import type { PourPart } from '../../shared/document/pours'
import type { CurveEdge, CurveRegion } from '../geometry/curve'
import { intersectCurves } from '../geometry/curveBoolean'
import type { ResolvedBorder, ResolvedSlab } from '../geometry/resolvedSlab'
import { curveArea } from '../geometry/ringArea'
import { ringLength } from '../geometry/ringLength'
import { runsAlong } from '../geometry/runsAlong'
import { type Quantity, quantity } from './quantity'

export interface FiguredPour {
  readonly id: string
  readonly slabId: string
  readonly part: PourPart
  readonly number: string
  readonly region: CurveRegion
  readonly areaM2: number
}

/** What a pour takes of a border: the piece, and the border's outer edge that lies in the pour or on its edge. */
export function borderPiece(
  { region }: Pick<FiguredPour, 'region'>,
  { shape, outerSide }: ResolvedBorder,
): { piece: readonly CurveRegion[]; edges: readonly CurveEdge[] } {
  const piece = intersectCurves(shape, [region]).regions
  const onSide = runsAlong(outerSide)
  const boundary = [region.outer, ...region.holes].flat()
  const onBoundary = runsAlong(boundary)
  const inside = piece.flatMap(({ outer, holes }) => [outer, ...holes].flat())
  return { piece, edges: [...boundary.filter(onSide), ...inside.filter(edge => onSide(edge) && !onBoundary(edge))] }
}

/** Area of a pour, and of each border it takes a piece of: the piece's area and the length of its outer edge. */
export function pourFigures(pour: FiguredPour, slab: ResolvedSlab): Quantity[] {
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
      const { piece, edges } = borderPiece(pour, border)
      const pieceM2 = curveArea(piece)
      if (pieceM2 === 0) return []
      const lengthM = ringLength(edges)
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
          formula: 'length of the outer edge in the pour',
          inputs: { 'length of the outer edge in the pour': [lengthM, 'm'] },
        }),
      ]
    }),
  ]
}
