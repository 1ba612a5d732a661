import * as z from 'zod/mini'
import { Path } from './path'
import { Id, LocalDate, LocalTime, Pt, positive, share } from './primitives'

export const Anchor = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('edge'), edgeId: z.string(), t: share() }),
  z.strictObject({ on: z.literal('vertex'), vertexId: Id }),
  z.strictObject({ on: z.literal('joint'), jointId: Id, t: share() }),
  z.strictObject({ on: z.literal('free') }),
])
export type Anchor = z.infer<typeof Anchor>

export const End = z.strictObject({ anchor: Anchor, last: Pt })
export type End = z.infer<typeof End>

export const Joint = z.strictObject({
  id: Id,
  ends: z.tuple([End, End]),
  locked: z.boolean(),
  kind: z.literal('construction'),
})
export type Joint = z.infer<typeof Joint>

/** As built: frozen. Arcs are kept as chords here. */
export const PouredShape = z.strictObject({
  outline: Path,
  holes: z.array(Path),
  areaM2: positive(),
  logId: Id,
})

export const Pour = z.strictObject({
  id: Id,
  number: z.string(),
  seed: Pt,
  order: z.optional(z.number().check(z.int(), z.positive())),
  date: z.optional(LocalDate),
  start: z.optional(LocalTime),
  notes: z.optional(z.string()),
  lock: z.strictObject({ shape: z.boolean(), time: z.boolean() }),
  poured: z.optional(PouredShape),
})
export type Pour = z.infer<typeof Pour>

export const PourPart = z.enum(['whole', 'field', 'border'])
export type PourPart = z.infer<typeof PourPart>

export const AcceptedPours = z.strictObject({
  slabId: Id,
  part: PourPart,
  joints: z.array(Joint),
  pours: z.array(Pour),
})
export type AcceptedPours = z.infer<typeof AcceptedPours>

/** `deg` counter-clockwise from the pattern axis or from drawing-right; joints along it or square to it are preferred. */
export const JointWish = z.discriminatedUnion('kind', [
  z.strictObject({ id: Id, slabId: Id, kind: z.literal('required'), line: z.tuple([End, End]) }),
  z.strictObject({ id: Id, slabId: Id, kind: z.literal('forbiddenLine'), line: z.array(Pt).check(z.minLength(2)) }),
  z.strictObject({ id: Id, slabId: Id, kind: z.literal('forbiddenArea'), path: Path }),
  z.strictObject({
    id: Id,
    slabId: Id,
    kind: z.literal('direction'),
    deg: z.number(),
    relativeTo: z.enum(['pattern', 'drawing']),
  }),
])
export type JointWish = z.infer<typeof JointWish>
