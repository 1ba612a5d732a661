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

export const tapKinds = [
  'batched',
  'onSite',
  'dosed',
  'placed',
  'come',
  'ready',
  'stamped',
  'late',
  'handShort',
  'handBack',
  'rain',
  'done',
] as const

/** One thing that happened at the slab, to the minute. Which of the optional fields it has follows from `what`. */
export const LogTap = z.strictObject({
  id: Id,
  atUtc: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z$/)),
  what: z.enum(tapKinds),
  /** Load, from 1: batched, onSite, dosed, late, and of come the load that is being emptied. */
  load: z.optional(z.number().check(z.int(), z.positive())),
  /** Strip by its letter: placed, ready, stamped. */
  strip: z.optional(z.string().check(z.minLength(1))),
  /** Of dosed the delay now in the drum; of late how much later; of rain how far away. */
  minutes: z.optional(nonNegative()),
  /** Whole packages of retarder put in. */
  count: z.optional(z.number().check(z.int(), z.nonnegative())),
  /** How far the concrete has come in the placing direction. */
  comeM: z.optional(nonNegative()),
  /** Concrete discharged until then, all loads. */
  outM3: z.optional(nonNegative()),
  note: z.optional(z.string()),
  /** Tapped at the slab, or typed in or over afterwards. */
  source: z.enum(['tap', 'typed']),
})
export type LogTap = z.infer<typeof LogTap>

/** What the plan of a pour stood on when it began: without it a logged time teaches nothing later. */
export const PourBegun = z.strictObject({
  conditions: Conditions,
  mix: Mix,
  thicknessM: positive(),
  /** Shade of the shadier part of each strip, share of the direct sun. */
  strips: z.array(
    z.strictObject({
      name: z.string(),
      /** Retarder as planned. */
      doseMin: nonNegative(),
      sun: z.strictObject({
        startUtc: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?Z$/)),
        stepMin: positive(),
        share: z.array(share()).check(z.minLength(1)),
      }),
    }),
  ),
})
export type PourBegun = z.infer<typeof PourBegun>

/** What was read off one load: its ticket, and what was measured of it. */
export const LogLoad = z.strictObject({
  no: z.number().check(z.int(), z.positive()),
  ticket: z.optional(z.string()),
  batched: z.optional(LocalTime),
  onSite: z.optional(LocalTime),
  volumeM3: z.optional(positive()),
  tempC: z.optional(z.number()),
  slumpMm: z.optional(nonNegative()),
  /** Air beside the load. */
  airC: z.optional(z.number()),
  waterL: z.optional(nonNegative()),
  doseMin: z.optional(nonNegative()),
})
export type LogLoad = z.infer<typeof LogLoad>

export const LogEntry = z.strictObject({
  id: Id,
  pourId: Id,
  date: LocalDate,
  /** The plan as it stood when the pour began, as printed then. */
  planned: z.optional(z.string()),
  begun: z.optional(PourBegun),
  taps: z.optional(z.array(LogTap)),
  /** True where the set of later pours is not to be learned from this one. */
  leftOut: z.optional(z.boolean()),
  loads: z.array(LogLoad),
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
