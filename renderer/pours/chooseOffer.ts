import type { OfferedSplit } from '../../core/plan/deriveScreen'
import type { PlannedPour } from '../../core/plan/plan'
import { acceptPours, type PoursOffer } from '../../core/pours/editing/acceptPours'
import type { EditOf } from '../app/applyEdit'
import { recommendedOf } from './recommendedOf'

const isSamePart = (a: OfferedSplit, b: OfferedSplit): boolean => a.slabId === b.slabId && a.part === b.part

/** A part in several pieces is accepted whole: the other pieces as their fewest pours. */
function takenWith(offer: OfferedSplit, offers: readonly OfferedSplit[]): PoursOffer {
  const others = offers.filter(
    each => isSamePart(each, offer) && each.region !== offer.region && each.kind === 'fewest',
  )
  const taken = [offer, ...others].map(({ proposal }) => proposal)
  return {
    slabId: offer.slabId,
    part: offer.part,
    pours: taken.flatMap(({ pours }) => pours),
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

/** Areas closer than this are the same pour (m²). */
const sameM2 = 1e-3

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
