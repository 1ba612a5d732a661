/** The document: the only thing that is saved. SI units throughout; see the parts for their frames. */
import * as z from 'zod/mini'
import { defaults, type SettingName } from '../settings'
import { Bid } from './bid'
import { Caster } from './caster'
import { Calendar, Conditions, Crew, LogEntry, Mix, Way } from './day'
import { Finish, Material, Price, StockItem } from './materials'
import { Path } from './path'
import { AcceptedPours, JointWish } from './pours'
import { Id, nonNegative, Pt, positive } from './primitives'
import { Furnishing, Note, TapeDimension } from './shown'
import { Slab } from './slab'

export const siteFormat = 'slabwright-site'
export const siteVersion = 1

/** A picture under the plan: image pixel (0, 0) lies at `originAt`. */
export const Picture = z.strictObject({
  assetId: z.string(),
  originAt: Pt,
  metersPerPixel: positive(),
  turnDeg: z.number(),
  fade: z.number().check(z.minimum(0), z.maximum(1)),
})

/** `northDeg` = clockwise angle from drawing-up to true north. `zone` is an IANA name. */
export const Place = z.strictObject({
  name: z.optional(z.string()),
  latDeg: z.number().check(z.minimum(-90), z.maximum(90)),
  lonDeg: z.number().check(z.minimum(-180), z.maximum(180)),
  elevationM: z.number(),
  zone: z.string(),
  northDeg: z.number(),
  picture: z.optional(Picture),
})
export type Place = z.infer<typeof Place>

export const MarkedPoint = z.strictObject({ id: Id, name: z.string(), at: Pt, slabId: Id })
export type MarkedPoint = z.infer<typeof MarkedPoint>

export const Access = z.strictObject({
  truckSpots: z.array(z.strictObject({ id: Id, at: Pt })),
  pumpSpots: z.array(z.strictObject({ id: Id, at: Pt })),
  washouts: z.array(z.strictObject({ id: Id, at: Pt })),
  noGo: z.array(Path),
  chuteReachM: nonNegative(),
  /** What carries the concrete beyond the chute; power buggies if left out. */
  carts: z.optional(z.enum(['powerBuggy', 'handCart'])),
  ways: z.array(Way),
})
export type Access = z.infer<typeof Access>

export const Capacity = z.strictObject({ capM2: positive() })

export const Asset = z.strictObject({ kind: z.enum(['image/png', 'image/jpeg']), base64: z.string() })

const settingNames = Object.keys(defaults) as [SettingName, ...SettingName[]]

export const Site = z.strictObject({
  format: z.literal(siteFormat),
  version: z.literal(siteVersion),
  /** Made once by the host. */
  id: z.string().check(z.minLength(1)),
  name: z.string(),
  nextId: z.number().check(z.int(), z.positive()),
  units: z.enum(['ftin', 'metric']),
  place: Place,
  finishes: z.array(Finish),
  slabs: z.array(Slab),
  casters: z.array(Caster),
  points: z.array(MarkedPoint),
  access: z.optional(Access),
  wishes: z.array(JointWish),
  furnishings: z.optional(z.array(Furnishing)),
  notes: z.optional(z.array(Note)),
  tapes: z.optional(z.array(TapeDimension)),
  capacity: z.optional(Capacity),
  mix: z.optional(Mix),
  crew: z.optional(Crew),
  calendar: z.optional(Calendar),
  conditions: z.optional(Conditions),
  accepted: z.array(AcceptedPours),
  materials: z.optional(z.array(Material)),
  prices: z.optional(z.array(Price)),
  bid: z.optional(Bid),
  stock: z.optional(z.array(StockItem)),
  log: z.optional(z.array(LogEntry)),
  settings: z.optional(z.partialRecord(z.enum(settingNames), z.number())),
  assets: z.optional(z.record(z.string(), Asset)),
})
export type Site = z.infer<typeof Site>
export type UnitSystem = Site['units']
