import type { OfferedSplit } from '../../core/plan/deriveScreen'
import type { PlannedPour } from '../../core/plan/plan'
import type { TriedStart } from '../../core/plan/planDayPlans'
import { acceptPours, type PoursOffer } from '../../core/pours/editing/acceptPours'
import { redatePour } from '../../core/pours/editing/changePour'
import type { Pour } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import type { EditOf } from '../app/applyEdit'
import { recommendedOf } from './recommendedOf'

/** Areas closer than this are the same pour (m²). */
const sameM2 = 1e-3

/** One was worked out as the other was, but in an answer of its own. */
const isSamePour = (a: Pick<PlannedPour, 'region' | 'areaM2'>, b: Pick<PlannedPour, 'region' | 'areaM2'>): boolean => {
  const [p, q] = [a.region.outer[0]!.from, b.region.outer[0]!.from]
  return Math.abs(a.areaM2 - b.areaM2) < sameM2 && p[0] === q[0] && p[1] === q[1]
}

const isSamePart = (a: OfferedSplit, b: OfferedSplit): boolean => a.slabId === b.slabId && a.part === b.part

/** A part in several pieces is accepted whole: the other pieces as their fewest pours. `shown` = pours that keep their numbers. */
function takenWith(
  offer: OfferedSplit,
  offers: readonly OfferedSplit[],
  shown: readonly PlannedPour[] = [],
): PoursOffer {
  const others = offers.filter(
    each => isSamePart(each, offer) && each.region !== offer.region && each.kind === 'fewest',
  )
  const taken = [offer, ...others].map(({ proposal }) => proposal)
  return {
    slabId: offer.slabId,
    part: offer.part,
    pours: taken.flatMap(({ pours }) =>
      pours.map(pour => {
        const number = shown.find(own => isSamePour(own, pour))?.number
        return number === undefined ? pour : { ...pour, number }
      }),
    ),
    joints: taken.flatMap(({ joints }) => joints),
    keptJoints: offer.kept.joints,
    keptPourIds: offer.kept.pourIds,
  }
}

export const chooseOffer =
  (offer: OfferedSplit, offers: readonly OfferedSplit[]): EditOf =>
  (site, caps) =>
    acceptPours(site, takenWith(offer, offers), caps)

/** What acceptPours takes to split a part as recommended; null while no way is known. */
export function offerOf(
  { slabId, part }: Pick<OfferedSplit, 'slabId' | 'part'>,
  offers: readonly OfferedSplit[],
): PoursOffer | null {
  const own = offers.filter(each => each.slabId === slabId && each.part === part)
  const first = recommendedOf(own.filter(({ region }) => region === own[0]?.region))
  return first ? takenWith(first, offers) : null
}

export type ShownPour = Pick<PlannedPour, 'id' | 'number' | 'slabId' | 'part'>

/** Whether the pours on screen are those of the offer, kept or still as proposed. */
export function offerState(offer: OfferedSplit, pours: readonly PlannedPour[]): 'chosen' | 'shown' | 'other' {
  const own = pours.filter(({ slabId, part }) => slabId === offer.slabId && part === offer.part)
  const areas = offer.proposal.pours.map(({ areaM2 }) => areaM2)
  const left = own.map(({ areaM2 }) => areaM2)
  for (const area of areas) {
    const at = left.findIndex(each => Math.abs(each - area) < sameM2)
    if (at < 0) return 'other'
    left.splice(at, 1)
  }
  return own.some(({ proposed }) => proposed) ? 'shown' : 'chosen'
}

/** The split on screen that holds this proposed pour; undefined while the ways are being worked out. */
export const shownOfferOf = (
  pour: PlannedPour,
  offers: readonly OfferedSplit[],
  pours: readonly PlannedPour[],
): OfferedSplit | undefined =>
  offers.find(
    offer =>
      offer.slabId === pour.slabId &&
      offer.part === pour.part &&
      offer.proposal.pours.some(own => isSamePour(own, pour)) &&
      offerState(offer, pours) === 'shown',
  )

/** Takes the split on screen, pours with the numbers they are shown with, and fixes the start of one of them. */
export const chooseWithStart =
  (offer: OfferedSplit, offers: readonly OfferedSplit[], shown: readonly PlannedPour[], start: TriedStart): EditOf =>
  (site, caps) => {
    const pour = shown.find(({ id }) => id === start.pourId)
    const chosen = acceptPours(site, takenWith(offer, offers, shown), caps)
    const own = chosen.ok && pour ? chosenPour(chosen.value, pour) : undefined
    if (!chosen.ok || !own) return chosen
    const started = redatePour(chosen.value, own.id, { start: { time: start.time } })
    return started.ok ? { ...started, findings: [...chosen.findings, ...started.findings], made: chosen.made } : started
  }

/** What a pour of the plan is in the document, also where it was chosen after that plan was made. */
export const chosenPour = ({ accepted }: Site, { id, number, slabId, part }: ShownPour): Pour | undefined =>
  accepted.flatMap(({ pours }) => pours).find(pour => pour.id === id) ??
  accepted.find(own => own.slabId === slabId && own.part === part)?.pours.find(pour => pour.number === number)
