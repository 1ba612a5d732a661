/** How the concrete gets from the truck to this pour. */

import type * as z from 'zod/mini'
import type { Pt } from '../../../shared/document/primitives'
import type { Access } from '../../../shared/document/site'
import { type PlacingRate, placingRates } from '../../concrete/tables/placingRates'

export interface PlacingMethod {
  readonly method: PlacingRate['method']
  /** From the truck to the far side of the pour; null where no truck spot is marked. */
  readonly haulM: number | null
  /** m³/h; without an end where the crew sets the pace. */
  readonly rateM3H: number
  readonly source: string
}

const rateOf = (method: PlacingRate['method']): PlacingRate => placingRates.find(row => row.method === method)!

/** The slower end of a method's range: the plan should hold on a plain day. */
const methodAt = (method: PlacingRate['method'], haulM: number | null): PlacingMethod => {
  const { leastM3H, source } = rateOf(method)
  return { method, haulM, rateM3H: leastM3H ?? Number.POSITIVE_INFINITY, source }
}

/**
 * How far from a truck no cart is needed (m): raked and pulled on from the end of the chute as far again as it reaches,
 * twice over (own assumption).
 */
export const chuteSpanM = ({ chuteReachM }: z.infer<typeof Access>): number =>
  3 * (chuteReachM > 0 ? chuteReachM : rateOf('chute').reachM)

/** A marked pump spot means a pump; else the chute where it reaches, else buggies. Without a truck spot, the chute. */
export function placingMethod(points: readonly Pt[], access: z.infer<typeof Access> | undefined): PlacingMethod {
  if (access && access.pumpSpots.length > 0) return methodAt('pump', null)
  if (!access || access.truckSpots.length === 0 || points.length === 0) return methodAt('chute', null)
  const farthest = (spot: Pt): number =>
    points.reduce((most, p) => Math.max(most, Math.hypot(p[0] - spot[0], p[1] - spot[1])), 0)
  const haulM = Math.min(...access.truckSpots.map(spot => farthest(spot.at)))
  if (haulM <= chuteSpanM(access)) return methodAt('chute', haulM)
  return methodAt('powerBuggy', haulM)
}

/** What a pump asks for besides its hose. */
export const pumpFacts: readonly { readonly fact: string; readonly source: string }[] = [
  { fact: 'Prime the line; the priming mix does not go into the slab.', source: 'common practice, no source' },
  { fact: 'Waste the first half yard: it is pale.', source: 'trade article, stamping with a pump' },
  { fact: 'Hose long enough for the far corner; count the line moves.', source: 'common practice, no source' },
  { fact: 'A place to clean out, away from drains.', source: 'common practice, no source' },
]
