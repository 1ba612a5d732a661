import type { OfferedSplit } from '../../core/plan/deriveScreen'
import type { PlannedPour } from '../../core/plan/plan'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import type { EditOf } from '../app/applyEdit'

const isSamePart = (a: OfferedSplit, b: OfferedSplit): boolean => a.slabId === b.slabId && a.part === b.part

/** A part in several pieces is accepted whole: the other pieces as their fewest pours. */
export function chooseOffer(offer: OfferedSplit, offers: readonly OfferedSplit[]): EditOf {
  const others = offers.filter(
    each => isSamePart(each, offer) && each.region !== offer.region && each.id.endsWith(' fewest'),
  )
  const taken = [offer, ...others].map(({ proposal }) => proposal)
  return site =>
    acceptPours(site, {
      slabId: offer.slabId,
      part: offer.part,
      pours: taken.flatMap(({ pours }) => pours),
      joints: taken.flatMap(({ joints }) => joints),
      keptJoints: offer.kept.joints,
      keptPourIds: offer.kept.pourIds,
    })
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
