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

/** What carries the concrete beyond the chute, and how far (m). */
const cartOf = (access: z.infer<typeof Access>): PlacingRate => rateOf(access.carts ?? 'powerBuggy')

/** How far a method takes the concrete from the truck (m). */
export const methodReachM = (method: PlacingRate['method'], access: z.infer<typeof Access> | undefined): number =>
  method === 'chute' ? (access ? chuteSpanM(access) : Number.POSITIVE_INFINITY) : rateOf(method).reachM

/**
 * Distances from a truck at which the way of placing changes (m), rising: the end of the chute, then as far as carts go.
 * None with a pump or without a truck spot: then it is one way everywhere.
 */
export const placingZonesM = (access: z.infer<typeof Access> | undefined): readonly number[] =>
  !access || access.pumpSpots.length > 0 || access.truckSpots.length === 0
    ? []
    : [chuteSpanM(access), cartOf(access).reachM]

/**
 * A marked pump spot means a pump; else the chute where it reaches, else the carts of the site: power buggies, or hand
 * carts (wheelbarrows). Without a truck spot, the chute.
 */
export function placingMethod(points: readonly Pt[], access: z.infer<typeof Access> | undefined): PlacingMethod {
  if (access && access.pumpSpots.length > 0) return methodAt('pump', null)
  if (!access || access.truckSpots.length === 0 || points.length === 0) return methodAt('chute', null)
  const farthest = (spot: Pt): number =>
    points.reduce((most, p) => Math.max(most, Math.hypot(p[0] - spot[0], p[1] - spot[1])), 0)
  const haulM = Math.min(...access.truckSpots.map(spot => farthest(spot.at)))
  if (haulM <= chuteSpanM(access)) return methodAt('chute', haulM)
  return methodAt(cartOf(access).method, haulM)
}

/** What a pump asks for besides its hose. */
export const pumpFacts: readonly { readonly fact: string; readonly source: string }[] = [
  { fact: 'Prime the line; the priming mix does not go into the slab.', source: 'common practice, no source' },
  { fact: 'Waste the first half yard: it is pale.', source: 'trade article, stamping with a pump' },
  { fact: 'Hose long enough for the far corner; count the line moves.', source: 'common practice, no source' },
  { fact: 'A place to clean out, away from drains.', source: 'common practice, no source' },
]
