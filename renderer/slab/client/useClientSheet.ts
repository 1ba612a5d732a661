import { useMemo } from 'react'
import { type BidPage, clientBid } from '../../../core/reports/client/clientBid'
import { type ClientSheet, clientDrawing } from '../../../core/reports/client/clientDrawing'
import { type ClientPrice, clientPrice, type PricedPlan } from '../../../core/reports/client/clientPrice'
import { papers } from '../../../core/reports/paper'
import { sheetPour } from '../../../core/reports/planSheetData'
import { usePlan, useSession } from '../../app/session'
import type { LivePlan } from '../../store/livePlan'
import type { ClientState } from './clientStore'

const typedPrice = (total: string): ClientPrice | null =>
  total.trim() === '' ? null : { lines: [], tax: [], total: total.trim(), payments: [], open: [] }

/** The price as it stands on the drawing: typed, else by the site's prices; null where neither says one. */
export const priceOf = (
  { total }: ClientState,
  { site, slabs }: Pick<LivePlan, 'site' | 'slabs'>,
  plan: PricedPlan,
): ClientPrice | null => typedPrice(total) ?? clientPrice(site, slabs, plan)

/** Joint lengths and pours of the last plan, which prices may go by. */
export function usePricedPlan(): PricedPlan {
  const { pours, quantities } = usePlan(({ parts }) => ({ pours: parts.pours, quantities: parts.quantities }))
  return useMemo(() => ({ figures: quantities ?? [], pourCount: pours?.length ?? 0 }), [pours, quantities])
}

/** The client's drawing of what is on screen, of today whatever day the sun is shown of; undefined while nothing is drawn. */
export function useClientSheet(live: LivePlan, state: ClientState): ClientSheet | undefined {
  const { pours, quantities } = usePlan(({ parts }) => ({ pours: parts.pours, quantities: parts.quantities }))
  const { today } = useSession().start
  const priced = usePricedPlan()
  return useMemo(
    () =>
      clientDrawing(live.site, live.slabs, today, {
        paper: papers[state.paper],
        title: state.title.trim(),
        client: state.client.trim(),
        showAreas: state.showAreas,
        price: state.showPrice ? priceOf(state, live, priced) : null,
        pours: state.showPours && pours ? pours.map(pour => sheetPour(pour, quantities ?? [])) : [],
        signed: state.signed,
      }),
    [live, today, state, pours, quantities, priced],
  )
}

/** Pages of the bid behind the drawing, where its price is shown; it holds from today. */
export function useBidPages({ site, slabs }: LivePlan, state: ClientState): readonly BidPage[] {
  const { today } = useSession().start
  const priced = usePricedPlan()
  return useMemo(
    () =>
      clientBid(site, today, {
        paper: papers[state.paper],
        title: state.title.trim(),
        client: state.client.trim(),
        price: state.showPrice ? priceOf(state, { site, slabs }, priced) : null,
        signed: state.signed,
      }),
    [site, slabs, today, state, priced],
  )
}
