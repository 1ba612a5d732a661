/** Moves the first truck of a chosen pour: shown at once and planned again, kept as one step when the hand lets go. */
import { DateTime } from 'luxon'
import { redatePour } from '../../core/pours/editing/changePour'
import { instantOf } from '../../core/sun/siteDay'
import type { Site } from '../../shared/document/site'
import { useSession } from '../app/session'

const acceptedPour = (site: Site, pourId: string) =>
  site.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === pourId)

/** The start written in the document, UTC ms; null where the pour has none of its own. */
export function fixedStart(site: Site, pourId: string, date: string): number | null {
  const start = acceptedPour(site, pourId)?.start
  if (!start) return null
  const at = instantOf(date, start.time, start.fold, site.place.zone)
  return at.ok ? at.value.ms : null
}

export interface PourStart {
  /** False for a pour that is only proposed, poured, or whose time is locked. */
  readonly canMove: boolean
  show(ms: number): void
  keep(): void
  drop(): void
}

export function usePourStart(site: Site, pourId: string, number: string): PourStart {
  const session = useSession()
  const own = acceptedPour(site, pourId)
  return {
    canMove: own !== undefined && own.poured === undefined && !own.lock.time,
    show: ms => {
      const time = DateTime.fromMillis(ms, { zone: site.place.zone }).toFormat('HH:mm')
      session.site.show(document => {
        const made = redatePour(document, pourId, { start: { time } })
        return made.ok ? made.value : document
      })
    },
    keep: () => {
      if (session.site.getState().preview) session.site.keep(`start of pour ${number}`)
    },
    drop: () => session.site.drop(),
  }
}
