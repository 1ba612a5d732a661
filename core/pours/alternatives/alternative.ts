/** One way to split a part of a slab, with what it asks of crew, trucks and edges. */
import type { Finding } from '../../../shared/problem'
import type { Proposal } from '../proposal'

/** What the alternatives are judged by; in each a smaller figure is better, and an earlier date. */
export interface AlternativeFigures {
  /** Days of one crew. */
  readonly crewDays: number
  readonly trucks: number
  /** Loads small enough for the plant to charge a fee. */
  readonly shortLoads: number
  /** Construction joint, each formed once by a header (m). */
  readonly jointM: number
  /** Re-entrant corners left inside pours. */
  readonly reentrantLeft: number
  /** Corners of pours under 60°, the slab's own included. */
  readonly cornersUnder60: number
  /** Area nobody reaches from the edge of its pour (m²). */
  readonly outOfReachM2: number
  /** Area of the pours that no chute reaches to the far side from any truck spot: by buggy (m²). None with a pump. */
  readonly beyondChuteM2: number
  /** Pours partly in sun and partly in shade between placing and stamping; null where the shade was not looked at. */
  readonly mixedSunPours: number | null
  /** How long that lasts, all pours added up and on the worst of them (minutes); null where it was not looked at. */
  readonly mixedSunMin: number | null
  readonly mixedSunWorstMin: number | null
  readonly largestM2: number
  /** Last day that pours when this part alone is poured, `YYYY-MM-DD`; null where the calendar has no day left. */
  readonly lastPourDate: string | null
}

export interface AlternativePrice {
  readonly crewDays: number
  readonly trucks: number
  readonly shortLoads: number
  readonly joints: number
  readonly total: number
}

export interface Alternative {
  readonly kind: 'fewest' | 'oneMore' | 'twoMore' | 'lanes'
  readonly proposal: Proposal
  readonly figures: AlternativeFigures
  /** By the site's settings, in its own currency. */
  readonly price: AlternativePrice
  /** On the first: why none in lanes is offered, where one was looked for. */
  readonly noLanes?: Finding | undefined
}
