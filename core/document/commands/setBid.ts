/** What the bid says beside its price list: tax, how long it holds, notes, payments. */
import { Bid } from '../../../shared/document/bid'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, editSite } from './editSite'
import { firstFault } from './firstFault'

/** An empty list and `undefined` take a field away; a bid that says nothing leaves the document. */
export const setBid =
  (patch: Patch<Bid, keyof Bid>): Command =>
  site =>
    editSite(site, draft => {
      const bid: Bid = { ...draft.bid }
      applyPatch<Bid>(bid, patch)
      if (bid.notes?.length === 0) delete bid.notes
      if (bid.payments?.length === 0) delete bid.payments
      if (Object.keys(bid).length === 0) delete draft.bid
      else draft.bid = bid
      return firstFault(Bid, bid, '/bid')
    })
