/** How fast concrete gets from the truck to the forms. Rates of one crew and one machine, m³/h. */

/** 1 yd³ and 1 ft, exact. */
const yd3 = 0.764554857984
const ft = 0.3048

export interface PlacingRate {
  readonly method: 'chute' | 'handCart' | 'powerBuggy' | 'pump'
  /** null where the crew sets the pace. */
  readonly leastM3H: number | null
  readonly mostM3H: number | null
  readonly reachM: number
  readonly source: string
}

export const placingRates: readonly PlacingRate[] = [
  {
    method: 'chute',
    leastM3H: null,
    mostM3H: null,
    reachM: 12 * ft,
    source:
      'trade article, Concrete placement for small pours: 20 ft; a ready-mix trade page: 12 ft, the safe side here',
  },
  {
    method: 'handCart',
    leastM3H: 3 * yd3,
    mostM3H: 5 * yd3,
    reachM: 200 * ft,
    source: 'trade article, Buggy power',
  },
  {
    method: 'powerBuggy',
    leastM3H: 15 * yd3,
    mostM3H: 20 * yd3,
    reachM: 600 * ft,
    source: 'trade article, Buggy power; useful to 1,000 ft',
  },
  {
    method: 'pump',
    leastM3H: 12 * yd3,
    mostM3H: 65 * yd3,
    reachM: Number.POSITIVE_INFINITY,
    source: 'trade article, Pumping concrete on the job',
  },
]
