import * as z from 'zod/mini'

/** A kind letter and a counter of the document (`v12`, `e7`): never reused. */
export const Id = z.string().check(z.regex(/^[a-z]+[1-9][0-9]*$/))
export type Id = z.infer<typeof Id>

/** Drawing frame, meters, x right, y up. */
export const Pt = z.readonly(z.tuple([z.number(), z.number()]))
export type Pt = z.infer<typeof Pt>

export const positive = () => z.number().check(z.positive())
export const nonNegative = () => z.number().check(z.nonnegative())
export const share = () => z.number().check(z.minimum(0), z.maximum(1))

export const LocalDate = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))
export const HourMinute = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/))
export const MonthDay = z.string().check(z.regex(/^\d{2}-\d{2}$/))

/** A wall time; `fold: 1` is the second pass of a repeated hour. */
export const LocalTime = z.strictObject({ time: HourMinute, fold: z.optional(z.union([z.literal(0), z.literal(1)])) })
export type LocalTime = z.infer<typeof LocalTime>

/** Open hours of one weekday set, 1 = Monday … 7 = Sunday. */
export const Hours = z.strictObject({
  weekdays: z.array(z.number().check(z.int(), z.minimum(1), z.maximum(7))),
  from: HourMinute,
  to: HourMinute,
})
export type Hours = z.infer<typeof Hours>
