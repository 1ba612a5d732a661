/** The one object that `plan --json` prints. Points are [x, y] in drawing-frame meters; rings open, outer
 * counter-clockwise, holes clockwise, arcs flattened at 1/16 in; `areaM2` is exact. */
import * as z from 'zod/mini'
import { Bid } from './document/bid'
import { ProblemSchema } from './problem'

const num = z.number()
const Pt = z.tuple([num, num])
const Ring = z.array(Pt)
const Shape = z.strictObject({ ring: Ring, holes: z.array(Ring) })

const SlabRow = z.strictObject({
  id: z.string(),
  grossAreaM2: num,
  openingAreaM2: num,
  netAreaM2: num,
  fieldAreaM2: num,
  perimeterM: num,
  openingPerimeterM: num,
  borders: z.array(
    z.strictObject({ id: z.string(), areaM2: num, outerLengthM: num, innerLengthM: num, centerLengthM: num }),
  ),
  bands: z.array(z.strictObject({ id: z.string(), areaM2: num, lengthM: num })),
  insets: z.array(z.strictObject({ id: z.string(), areaM2: num })),
})

const CostTerms = z.array(z.strictObject({ term: z.string(), value: num }))

const PourRow = z.strictObject({
  id: z.string(),
  slabId: z.string(),
  part: z.enum(['whole', 'field', 'border']),
  number: z.string(),
  proposed: z.boolean(),
  areaM2: num,
  ring: Ring,
  holes: z.array(Ring),
  aspect: num,
  minCornerDeg: z.nullable(num),
  order: num,
  day: num,
  date: z.nullable(z.string()),
  /** Feet of joint; a joint counts by half for each side. Empty for accepted pours. */
  cost: CostTerms,
  /** Pours it touches along a joint, and the length of its edges that no other pour shares. */
  neighbors: z.array(z.strictObject({ pourId: z.string(), lengthM: num })),
  openEdgeM: num,
  loads: z.nullable(z.strictObject({ orderM3: num, trucks: num, shortLoad: z.boolean() })),
})

const JointRow = z.strictObject({
  id: z.string(),
  slabId: z.string(),
  kind: z.enum(['construction', 'isolation']),
  pourIds: z.array(z.string()),
  from: Pt,
  to: Pt,
  lengthM: num,
  locked: z.boolean(),
})

/** A line of contraction joint, sawn or tooled in one pour. */
const ContractionRow = z.strictObject({ slabId: z.string(), pourId: z.string(), from: Pt, to: Pt, lengthM: num })

/** What follows the pours of one day, and not before when. */
const AfterTaskRow = z.strictObject({
  task: z.enum(['pullForms', 'sawJoints', 'washRelease', 'openToFeet', 'openToCars', 'seal']),
  pourIds: z.array(z.string()),
  date: z.string(),
  time: z.string(),
  /** Of sawing: contraction joint to saw, and how long that takes one saw. */
  work: z.optional(z.strictObject({ lengthM: num, hours: num })),
  blocks: z.enum(['neighbors', 'feet', 'cars', 'nothing']),
})

const DayRow = z.strictObject({
  day: num,
  date: z.nullable(z.string()),
  pourIds: z.array(z.string()),
  hours: z.nullable(z.strictObject({ from: z.string(), to: z.string() })),
  /** When the last print is done: by the day plans of its pours, else at the usual hour. Null outside the calendar. */
  done: z.nullable(z.strictObject({ time: z.string(), by: z.enum(['dayPlan', 'usual']) })),
  closedWayIds: z.array(z.string()),
  waysReopen: z.array(z.strictObject({ wayId: z.string(), date: z.string(), time: z.string() })),
  afterTasks: z.array(AfterTaskRow),
})

/** How good the order of the pours is: `gap` = how far it may be above the cheapest, as a share of its cost. */
const OrderRow = z.strictObject({
  proven: z.boolean(),
  gap: num,
  cost: num,
  terms: CostTerms,
})

const money = z.strictObject({ crewDays: num, trucks: num, shortLoads: num, joints: num, total: num })

/** One way to split a part of a slab, whether accepted or not. `cost` in feet of joint, `price` in the site's currency. */
const AlternativeRow = z.strictObject({
  id: z.string(),
  slabId: z.string(),
  part: z.enum(['whole', 'field', 'border']),
  kind: z.enum(['fewest', 'oneMore', 'twoMore', 'lanes']),
  pours: z.array(z.strictObject({ areaM2: num, ring: Ring, holes: z.array(Ring) })),
  joints: z.array(z.strictObject({ from: Pt, to: Pt, lengthM: num })),
  proven: z.boolean(),
  gap: num,
  cost: CostTerms,
  figures: z.strictObject({
    crewDays: num,
    trucks: num,
    shortLoads: num,
    jointM: num,
    reentrantLeft: num,
    cornersUnder60: num,
    outOfReachM2: num,
    beyondChuteM2: num,
    mixedSunPours: z.nullable(num),
    mixedSunMin: z.nullable(num),
    mixedSunWorstMin: z.nullable(num),
    largestM2: num,
    lastPourDate: z.nullable(z.string()),
  }),
  price: money,
  sentences: z.array(z.strictObject({ sign: z.enum(['+', '−']), words: z.string() })),
  /** What is not offered and why. */
  note: z.optional(z.string()),
})

const ShareRow = z.strictObject({ id: z.string(), sunShare: z.array(z.nullable(num)) })

export const QuantityInput = z.strictObject({ value: num, unit: z.string() })

/** One figure and how it came about. */
export const Quantity = z.strictObject({
  id: z.string(),
  label: z.string(),
  slabId: z.optional(z.string()),
  pourId: z.optional(z.string()),
  value: num,
  unit: z.string(),
  formula: z.string(),
  inputs: z.record(z.string(), QuantityInput),
  source: z.string(),
})
export type Quantity = z.infer<typeof Quantity>

const utc = z.string()

/** Instants are UTC, ISO 8601. `slackMin` < 0: a strip is lost. */
export const DayPlanRow = z.strictObject({
  pourId: z.string(),
  startUtc: utc,
  strips: z.array(
    z.strictObject({
      id: z.string(),
      areaM2: num,
      placeUtc: utc,
      readyUtc: utc,
      readyP10Utc: utc,
      readyP90Utc: utc,
      tooHardUtc: utc,
      stampFromUtc: utc,
      stampToUtc: utc,
      doseMin: num,
    }),
  ),
  tasks: z.array(z.strictObject({ stripId: z.string(), name: z.string(), fromUtc: utc, toUtc: utc, hands: num })),
  loads: z.array(
    z.strictObject({
      no: num,
      batchUtc: utc,
      onSiteUtc: utc,
      volumeM3: num,
      portions: z.array(z.strictObject({ stripIds: z.array(z.string()), doseMin: num })),
    }),
  ),
  slackMin: num,
  chanceOfMiss: num,
  capacityM2: num,
  capacityRule: z.string(),
  evaporationMaxKgM2H: num,
  crew: z.array(z.strictObject({ role: z.string(), why: z.string() })),
  whatIf: z.array(
    z.strictObject({
      case: z.string(),
      slackMin: num,
      firstLostStripId: z.nullable(z.string()),
      startUtc: utc,
      doNext: z.string(),
    }),
  ),
})

export const PlanJson = z.strictObject({
  format: z.literal('slabwright-plan'),
  version: z.literal(1),
  siteId: z.string(),
  date: z.string(),
  zone: z.string(),
  slabs: z.array(SlabRow),
  pours: z.array(PourRow),
  joints: z.array(JointRow),
  contractionJoints: z.array(ContractionRow),
  days: z.array(DayRow),
  order: OrderRow,
  shade: z.strictObject({
    stepMin: num,
    minSunAltitudeDeg: num,
    /** ISO 8601 with offset. */
    times: z.array(z.string()),
    sun: z.array(z.strictObject({ altitudeDeg: num, azimuthDeg: num })),
    slabs: z.array(ShareRow),
    pours: z.array(ShareRow),
  }),
  shadows: z.array(
    z.strictObject({
      time: z.string(),
      slabId: z.string(),
      areaM2: num,
      polygons: z.array(Shape),
      dapple: z.array(z.strictObject({ ring: Ring, holes: z.array(Ring), transmission: num })),
    }),
  ),
  points: z.array(
    z.strictObject({
      id: z.string(),
      directSunMin: num,
      firstSun: z.nullable(z.string()),
      lastSun: z.nullable(z.string()),
    }),
  ),
  quantities: z.array(Quantity),
  /** What the bid says beside its figures. */
  bid: z.optional(Bid),
  dayPlans: z.array(DayPlanRow),
  /** Only where they were asked for. */
  alternatives: z.optional(z.array(AlternativeRow)),
  problems: z.array(ProblemSchema),
})
export type PlanJson = z.infer<typeof PlanJson>
