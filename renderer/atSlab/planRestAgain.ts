import { acceptPours } from '../../core/pours/editing/acceptPours'
import { replanRest } from '../../core/pours/replan/replanRest'
import { applyEdit } from '../app/applyEdit'
import type { Session } from '../app/session'
import { committedDocument } from '../store/siteStore'

/** Sides the search for a new split may visit. */
const restBudget = 400_000

/** Splits anew what is neither poured nor locked, in every part where something is. */
export function planRestAgain(session: Session): void {
  const accepted = committedDocument(session.site.getState())?.accepted ?? []
  const fixed = accepted.filter(({ pours }) => pours.some(({ lock, poured }) => lock.shape || poured))
  for (const { slabId, part } of fixed)
    applyEdit(session, 'plan the rest again', (site, caps) => {
      const { capM2 } = caps(slabId)
      const rest = replanRest(site, slabId, part, { budget: restBudget, capM2 })
      return rest.ok ? acceptPours(site, rest.value.offer, caps) : { ok: false, error: rest.error }
    })
}
