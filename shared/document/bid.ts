import * as z from 'zod/mini'

const percent = () => z.number().check(z.minimum(0), z.maximum(100))

/** A step of what the client pays, in percent of the bid with its tax. */
export const Payment = z.strictObject({ name: z.string().check(z.minLength(1), z.maxLength(200)), percent: percent() })
export type Payment = z.infer<typeof Payment>

/** What a bid says beside its price list. */
export const Bid = z.strictObject({
  /** Left out: no tax is added. */
  taxPercent: z.optional(percent()),
  /** As the client reads it; `Tax` if left out. */
  taxName: z.optional(z.string().check(z.minLength(1), z.maxLength(200))),
  /** From the day of the sheet. */
  holdsDays: z.optional(z.number().check(z.int(), z.minimum(1), z.maximum(3650))),
  /** What is not included, and other words for the client; a line of its own where they have one. */
  notes: z.optional(z.array(z.string().check(z.minLength(1), z.maxLength(4000)))),
  payments: z.optional(z.array(Payment)),
})
export type Bid = z.infer<typeof Bid>
