import * as z from 'zod/mini'
import { Id, nonNegative, Pt, positive, share } from './primitives'

/**
 * A pattern and color on the plan; `patternDeg` = the pattern axis, counter-clockwise from drawing-right, `patternAt` =
 * where its first stone starts, else at the drawing's origin.
 */
export const Finish = z.strictObject({
  id: Id,
  name: z.string(),
  pattern: z.enum(['ashlar', 'runningBond', 'flagstone', 'cobble', 'plank', 'seamless', 'plain', 'broom']),
  color: z.string(),
  patternDeg: z.optional(z.number()),
  patternAt: z.optional(Pt),
})
export type Finish = z.infer<typeof Finish>

export const Material = z.strictObject({
  id: Id,
  name: z.string(),
  kind: z.enum([
    'hardener',
    'release',
    'sealer',
    'retarder',
    'integralColor',
    'reinforcement',
    'base',
    'concrete',
    'other',
  ]),
  unit: z.string(),
  packageSize: positive(),
  ratePerM2: z.optional(nonNegative()),
  /** Taken beyond the rate, for spills and what stays in the package: 0.05 = 5 % more. */
  wasteShare: z.optional(share()),
  /** `currency` by its letters of ISO 4217. */
  packagePrice: z.optional(
    z.strictObject({ amount: nonNegative(), currency: z.string().check(z.regex(/^[A-Z]{3}$/)) }),
  ),
  /** Doses of a retarder by its label: amount for a cubic meter, and the delay that the least of it makes. */
  label: z.optional(z.strictObject({ leastPerM3: positive(), mostPerM3: positive(), leastBuysMin: positive() })),
  lot: z.optional(z.string()),
})
export type Material = z.infer<typeof Material>

/** What of the drawing a price goes by; `own` = a quantity of one's own, as loads hauled off, or the job. */
export const pricedBy = [
  'slab',
  'field',
  'border',
  'band',
  'inset',
  'steps',
  'opening',
  'form',
  'constructionJoint',
  'contractionJoint',
  'pour',
  'own',
] as const
export type PricedBy = (typeof pricedBy)[number]

/** A line of the price list, what the client pays. */
export const Price = z.strictObject({
  id: Id,
  name: z.string(),
  /** `ft²`, `m²`, `ft`, `m`, `each`, `riser`, `job`; any word with a quantity of one's own. */
  per: z.string(),
  /** Left out: not priced yet. */
  amount: z.optional(nonNegative()),
  currency: z.string(),
  /** Left out: the slabs by area, the borders by length, else a quantity of one's own. */
  by: z.optional(z.enum(pricedBy)),
  /** Only what carries this finish. */
  finishId: z.optional(Id),
  /** Of a price by a quantity of one's own; once for a job. */
  quantity: z.optional(nonNegative()),
  /** Left out: taxed where the bid has a tax. */
  taxFree: z.optional(z.literal(true)),
})
export type Price = z.infer<typeof Price>

export const StockItem = z.strictObject({ materialId: Id, onHand: nonNegative(), lot: z.optional(z.string()) })
export type StockItem = z.infer<typeof StockItem>
