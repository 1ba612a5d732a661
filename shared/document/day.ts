/** Crew, mix, calendar, weather and the log: what the day plan computes with. */
import * as z from 'zod/mini'
import { Hours, Id, LocalDate, LocalTime, nonNegative, positive, share } from './primitives'

export const Mix = z.strictObject({
  sacksPerYd3: z.optional(positive()),
  color: z.optional(z.enum(['light', 'medium', 'dark'])),
  placedTempC: z.optional(z.number()),
  minutesFromPlant: z.optional(nonNegative()),
  initialSetAt21CMin: z.optional(positive()),
  firstMatAt21CMin: z.optional(positive()),
  lastPrintAt21CMin: z.optional(positive()),
  setsLaterMin: z.optional(z.number()),
})
export type Mix = z.infer<typeof Mix>

export const Crew = z.strictObject({
  hands: z.number().check(z.int(), z.positive()),
  experience: z.enum(['new', 'steady', 'seasoned']),
  crews: z.number().check(z.int(), z.positive()),
  daysOff: z.array(LocalDate),
})
export type Crew = z.infer<typeof Crew>

export const Calendar = z.strictObject({
  plantHours: z.array(Hours),
  noiseHours: z.array(Hours),
  finishBy: z.optional(LocalDate),
  weatherDays: nonNegative(),
})
export type Calendar = z.infer<typeof Calendar>

export const WeatherHour = z.strictObject({
  /** Starts the hour this row is the mean of; UTC, ISO 8601. */
  startUtc: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?Z$/)),
  airC: z.number(),
  dewPointC: z.optional(z.number()),
  humidity: z.optional(share()),
  wind10mMs: z.optional(nonNegative()),
  cloud: z.optional(share()),
  rainChance: z.optional(share()),
  rainMm: z.optional(nonNegative()),
})
export type WeatherHour = z.infer<typeof WeatherHour>

export const Conditions = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hourly'), date: LocalDate, hours: z.array(WeatherHour), source: z.string() }),
  z.strictObject({
    kind: z.literal('day'),
    date: LocalDate,
    highC: z.number(),
    lowC: z.number(),
    dewPointC: z.number(),
    windMs: nonNegative(),
    sky: z.enum(['sunny', 'some', 'mostly', 'overcast']),
    rainChance: z.optional(share()),
  }),
])
export type Conditions = z.infer<typeof Conditions>

export const LogEntry = z.strictObject({
  id: Id,
  pourId: Id,
  date: LocalDate,
  /** The plan as it stood when the pour began, as printed then. */
  planned: z.optional(z.string()),
  loads: z.array(
    z.strictObject({
      no: z.number().check(z.int(), z.positive()),
      batched: z.optional(LocalTime),
      onSite: z.optional(LocalTime),
      volumeM3: z.optional(positive()),
      tempC: z.optional(z.number()),
      slumpMm: z.optional(nonNegative()),
      waterL: z.optional(nonNegative()),
      doseMin: z.optional(nonNegative()),
    }),
  ),
  strips: z.array(
    z.strictObject({
      name: z.string(),
      placed: z.optional(LocalTime),
      ready: z.optional(LocalTime),
      tooHard: z.optional(LocalTime),
      stamped: z.optional(LocalTime),
    }),
  ),
  used: z.array(z.strictObject({ materialId: Id, quantity: nonNegative() })),
  notes: z.string(),
})
export type LogEntry = z.infer<typeof LogEntry>

export const Way = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  at: z.readonly(z.tuple([z.number(), z.number()])),
  widthM: positive(),
  open: z.array(Hours),
})
export type Way = z.infer<typeof Way>
