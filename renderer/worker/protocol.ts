/** What page and worker say to each other; checked at both doors. */
import type { Patch } from 'immer'
import * as z from 'zod/mini'
import type { ScreenParts } from '../../core/plan/deriveScreen'
import { screenExtras } from '../../core/plan/screenExtras'
import { Site } from '../../shared/document/site'

export const partNames = [
  'day',
  'pours',
  'joints',
  'days',
  'order',
  'shade',
  'points',
  'quantities',
  'dayPlans',
  'capacities',
  'problems',
  'shadeLines',
  'sunMaps',
  'offers',
  'compared',
  'capacityMap',
  'setMaps',
  'comparedPour',
] as const
export type PartName = (typeof partNames)[number]
export type PartValue<N extends PartName> = Exclude<ScreenParts[N], undefined>

const rev = z.number().check(z.int(), z.nonnegative())
const PartNameSchema = z.enum(partNames)

const PatchSchema = z.strictObject({
  op: z.enum(['add', 'remove', 'replace']),
  path: z.array(z.union([z.string(), z.number()])),
  value: z.optional(z.unknown()),
})

/**
 * `sync` brings the worker's copy of the document to `rev`: by patches on `baseRev`, or whole. With `preview` the
 * patches branch off the committed revision `baseRev` and are thrown away with the next sync. `want` asks for parts of
 * the plan of that revision; the newest want replaces the one before.
 */
export const ToWorker = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sync'),
    rev,
    baseRev: z.nullable(rev),
    preview: z.boolean(),
    patches: z.optional(z.array(PatchSchema)),
    whole: z.optional(Site),
  }),
  z.strictObject({
    kind: z.literal('want'),
    rev,
    parts: z.array(PartNameSchema),
    /** The entity worked on: its parts come first. */
    focus: z.nullable(z.string()),
    /** How hard to look for splits: little while something is dragged. */
    budget: z.enum(['small', 'full']),
    extras: z.array(z.enum(screenExtras)),
    /** Another day to lay beside this one. */
    other: z.optional(z.strictObject({ date: z.string(), leaves: z.enum(['asDated', 'on', 'off']) })),
    /** A pour to plan otherwise beside its plan. */
    otherPour: z.optional(
      z.strictObject({ pourId: z.string(), date: z.string(), time: z.string(), hands: z.number().check(z.int()) }),
    ),
    /** Where the hand holds the start of a pour that is only proposed. */
    triedStart: z.optional(z.strictObject({ pourId: z.string(), time: z.string() })),
    date: z.string(),
    stepMin: z.optional(z.number().check(z.positive())),
  }),
  z.strictObject({ kind: z.literal('cancel') }),
])
export type ToWorker =
  | {
      kind: 'sync'
      rev: number
      baseRev: number | null
      preview: boolean
      patches?: Patch[]
      whole?: Site
    }
  | Extract<z.infer<typeof ToWorker>, { kind: 'want' | 'cancel' }>

/** `settled`: every part asked for is as of `rev`, sent now or the same as last sent. */
export const FromWorker = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('part'), rev, name: PartNameSchema, entityId: z.string(), value: z.unknown() }),
  z.strictObject({
    kind: z.literal('settled'),
    rev,
    names: z.array(PartNameSchema),
    budget: z.enum(['small', 'full']),
  }),
  z.strictObject({ kind: z.literal('progress'), rev, doing: z.string(), share: z.nullable(z.number()) }),
  z.strictObject({ kind: z.literal('failed'), rev, message: z.string() }),
  z.strictObject({ kind: z.literal('needWhole'), rev }),
])
export type FromWorker = z.infer<typeof FromWorker>
