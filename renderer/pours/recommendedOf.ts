import type { Alternative } from '../../core/pours/alternatives/alternative'

/** The least price; of equal prices, what the search weighs least. */
export const recommendedOf = <T extends Pick<Alternative, 'price' | 'proposal'>>(ways: readonly T[]): T | undefined =>
  ways.toSorted((a, b) => a.price.total - b.price.total || a.proposal.totalCost - b.proposal.totalCost)[0]
