/**
 * Moves the first truck of a pour: shown at once and planned again, kept as one step when the hand lets go. With a pour
 * that is only proposed the split on screen is chosen in the same step.
 */
import { DateTime } from 'luxon'
import type { PlannedPour } from '../../core/plan/plan'
import { redatePour } from '../../core/pours/editing/changePour'
import { instantOf } from '../../core/sun/siteDay'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { usePlan, useSession, useView } from '../app/session'
import { chooseWithStart, chosenPour, shownOfferOf } from '../pours/chooseOffer'
import { shownDocument } from '../store/siteStore'

export interface PourStart {
  /** Where the hand holds it, else as written in the document, UTC ms; null where the pour has none of its own. */
  readonly wantedMs: number | null
  /** False where the pour is poured, its time is locked, or the ways to split are still being worked out. */
  readonly canMove: boolean
  show(ms: number): void
  keep(): void
  drop(): void
}

export function usePourStart(site: Site, pour: PlannedPour, date: string): PourStart {
  const session = useSession()
  const { view, plan } = session
  const { zone } = site.place
  const { id, number } = pour
  const triedTime = useView(({ triedStart }) => (triedStart?.pourId === id ? triedStart.time : undefined))
  const own = chosenPour(site, pour)
  const offer = usePlan(({ parts }) => (own ? undefined : shownOfferOf(pour, parts.offers ?? [], parts.pours ?? [])))
  const start = triedTime === undefined ? own?.start : { time: triedTime }
  const at = start && instantOf(date, start.time, 'fold' in start ? start.fold : undefined, zone)
  return {
    wantedMs: at?.ok ? at.value.ms : null,
    canMove: own ? own.poured === undefined && !own.lock.time : offer !== undefined,
    show(ms) {
      const time = DateTime.fromMillis(ms, { zone }).toFormat('HH:mm')
      if (!own) view.setState({ triedStart: { pourId: id, time } })
      else
        session.site.show(document => {
          const made = redatePour(document, own.id, { start: { time } })
          return made.ok ? made.value : document
        })
    },
    keep() {
      const { triedStart } = view.getState()
      if (session.site.getState().preview) session.site.keep(`start of pour ${number}`)
      else if (offer && triedStart?.pourId === id) {
        const { offers = [], pours = [] } = plan.getState().parts
        const count = offer.proposal.pours.length
        const name = `${count === 1 ? 'one pour' : `split into ${count}`}, start of pour ${number}`
        view.setState({ triedStart: null })
        if (!applyEdit(session, name, chooseWithStart(offer, offers, pours, triedStart))) return
        const document = shownDocument(session.site.getState())
        const chosen = document && chosenPour(document, pour)
        if (chosen)
          view.setState(({ selection }) => ({ selection: selection.map(each => (each === id ? chosen.id : each)) }))
      }
    },
    drop() {
      view.setState({ triedStart: null })
      session.site.drop()
    },
  }
}
