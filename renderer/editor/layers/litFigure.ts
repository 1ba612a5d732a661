/** What on the plan a figure of the ledger was measured on. */
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Plan } from '../../../core/plan/plan'
import { isBidFigure, priceOfFigure } from '../../../core/quantities/priceFigures'
import { measureOf, pricedByOf } from '../../../core/quantities/priceParts'
import type { Price } from '../../../shared/document/materials'
import type { Slab } from '../../../shared/document/slab'
import type { Quantity } from '../../../shared/planJson'
import type { LivePlan } from '../../store/livePlan'
import { figureGeometry, type PlanGeometry, stepEdges } from './planGeometry'

type Worked = { readonly pours?: Plan['pours']; readonly joints?: Plan['joints'] }

export function litFigure(live: LivePlan, worked: Worked, figure: Quantity): PlanGeometry {
  if (!isBidFigure(figure)) return figureGeometry(live, worked, figure)
  const price = priceOfFigure(figure.id, live.site.prices)
  const parts = price ? live.slabs.map((slab, i) => priced(live, worked, price, slab, live.site.slabs[i]!)) : []
  const regions = parts.flatMap(part => part.regions)
  const edges = parts.flatMap(part => part.edges)
  if (regions.length + edges.length > 0) return { regions, edges, points: [] }
  return { regions: live.slabs.flatMap(({ net }) => net), edges: [], points: [] }
}

type Lit = Pick<PlanGeometry, 'regions' | 'edges'>

/** What of one slab a line of the price list goes by. */
function priced(live: LivePlan, worked: Worked, price: Price, slab: ResolvedSlab, source: Slab): Lit {
  const { finishId, per } = price
  const slabId = slab.id
  const isOf = (own: { readonly finishId: string }) => finishId === undefined || own.finishId === finishId
  const regionsOf = (rows: readonly ResolvedSlab['insets'][number][]): Lit => ({
    regions: rows.filter(isOf).flatMap(({ shape }) => shape),
    edges: [],
  })
  const figure = (end: string): Lit => figureGeometry(live, worked, { id: `${slabId}-${end}`, slabId })
  const field: Lit = { regions: isOf(slab) ? slab.field : [], edges: [] }
  switch (pricedByOf(price)) {
    case 'slab':
      if (finishId === undefined) return { regions: slab.net, edges: [] }
      return {
        regions: [...field.regions, ...regionsOf([...slab.borders, ...slab.bands, ...slab.insets]).regions],
        edges: [],
      }
    case 'field':
      return field
    case 'border':
      if (measureOf(per) === 'area') return regionsOf(slab.borders)
      return {
        regions: [],
        edges: slab.borders
          .filter(isOf)
          .flatMap(({ id }) => figureGeometry(live, worked, { id: `${id}-outer-length`, slabId }).edges),
      }
    case 'band':
      return regionsOf(slab.bands)
    case 'inset':
      return regionsOf(slab.insets)
    case 'steps':
      return { regions: [], edges: stepEdges(slab, source) }
    case 'opening':
      return { regions: [], edges: slab.openings.flatMap(({ ring }) => ring) }
    case 'form':
      return figure('form-length')
    case 'constructionJoint':
      return figure('construction-joint-length')
    case 'contractionJoint':
      return figure('contraction-joint-length')
    case 'pour':
    case 'own':
      return { regions: slab.net, edges: [] }
  }
}
