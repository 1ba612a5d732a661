/** Drawn beside the work, for the client and the crew: no part of the slab, and no shade is thrown by it. */
import * as z from 'zod/mini'
import { Id, Pt, positive } from './primitives'

/** A thing of daily use at scale. `at` is its middle; `turnDeg` counter-clockwise from drawing-right. */
export const Furnishing = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  kind: z.enum(['chair', 'lounge', 'table', 'roundTable', 'grill', 'car']),
  at: Pt,
  turnDeg: z.number(),
  widthM: positive(),
  depthM: positive(),
})
export type Furnishing = z.infer<typeof Furnishing>

export const Note = z.strictObject({ id: Id, at: Pt, text: z.string().check(z.minLength(1)) })
export type Note = z.infer<typeof Note>

/** An end of a tape: on a corner, along an edge (`t` of its length), or in the open; `last` is where it lies. */
export const TapeEnd = z.strictObject({
  on: z.discriminatedUnion('on', [
    z.strictObject({ on: z.literal('vertex'), vertexId: Id }),
    z.strictObject({
      on: z.literal('edge'),
      edgeId: z.string(),
      t: z.number().check(z.minimum(0), z.maximum(1)),
    }),
    z.strictObject({ on: z.literal('free') }),
  ]),
  last: Pt,
})
export type TapeEnd = z.infer<typeof TapeEnd>

/** A length shown between two places; `measuredM` is what the tape said in the field. */
export const TapeDimension = z.strictObject({
  id: Id,
  ends: z.tuple([TapeEnd, TapeEnd]),
  measuredM: z.optional(positive()),
})
export type TapeDimension = z.infer<typeof TapeDimension>
