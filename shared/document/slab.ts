import * as z from 'zod/mini'
import { OpenPath, Path } from './path'
import { Id, nonNegative, Pt, positive } from './primitives'

/** `withField` poured with the field, `before` or `after` it on its own, `sawnLater` only sawn and colored. */
export const Placed = z.enum(['withField', 'before', 'after', 'sawnLater'])
export type Placed = z.infer<typeof Placed>

/** How the slab meets the pool. Only a cantilevered edge is formed in place. */
export const PoolEdge = z.enum(['cantilevered', 'setCoping', 'existing'])
export type PoolEdge = z.infer<typeof PoolEdge>

export const Opening = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  kind: z.enum(['pool', 'planter', 'drain', 'column', 'other']),
  path: Path,
  pool: z.optional(PoolEdge),
})
export type Opening = z.infer<typeof Opening>

/** A border along some or all edges of one ring; array order in the slab = outermost first. */
export const Border = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  pathId: Id,
  edges: z.union([z.literal('all'), z.array(Id)]),
  widthM: positive(),
  finishId: Id,
  placed: Placed,
})
export type Border = z.infer<typeof Border>

/** A ribbon anywhere in the slab, `widthM` wide about its line; the line may be open or closed. */
export const Band = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  line: OpenPath,
  widthM: positive(),
  finishId: Id,
  placed: Placed,
})
export type Band = z.infer<typeof Band>

export const Inset = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  path: Path,
  finishId: Id,
  placed: Placed,
})
export type Inset = z.infer<typeof Inset>

/** A flight along a slab edge, going down from the slab's top. */
export const Steps = z.strictObject({
  id: Id,
  name: z.optional(z.string()),
  edgeId: Id,
  fromT: nonNegative(),
  widthM: positive(),
  risers: z.number().check(z.int(), z.positive()),
  riserM: positive(),
  treadM: positive(),
  nosingM: z.optional(nonNegative()),
})
export type Steps = z.infer<typeof Steps>

export const Obstacle = z.strictObject({
  id: Id,
  kind: z.enum(['downspout', 'cleanout', 'post', 'hoseBib', 'sprinkler', 'valveBox', 'sleeve', 'other']),
  at: Pt,
  name: z.optional(z.string()),
})
export type Obstacle = z.infer<typeof Obstacle>

/** Fall in the direction `towardDeg`, clockwise from drawing-up; 0.02 = 2 %. */
export const Slope = z.strictObject({ towardDeg: z.number(), fall: nonNegative() })
export type Slope = z.infer<typeof Slope>

/** Depth of the base below the slab, read from a string line at points; the mean of the readings replaces `baseDepthM`. */
export const BaseDepths = z.strictObject({ points: z.array(z.strictObject({ at: Pt, depthM: positive() })) })
export type BaseDepths = z.infer<typeof BaseDepths>

export const Thickened = z.strictObject({ edges: z.array(Id), depthM: positive(), widthM: positive() })
export type Thickened = z.infer<typeof Thickened>

/** `levelM` is the elevation of the top above the one site datum. */
export const Slab = z.strictObject({
  id: Id,
  name: z.string(),
  levelM: z.number(),
  outline: Path,
  openings: z.array(Opening),
  thicknessM: positive(),
  thickened: z.array(Thickened),
  baseDepthM: nonNegative(),
  baseDepths: z.optional(BaseDepths),
  finishId: Id,
  borders: z.array(Border),
  bands: z.array(Band),
  insets: z.array(Inset),
  steps: z.array(Steps),
  obstacles: z.array(Obstacle),
  againstExisting: z.array(Id),
  slope: z.optional(Slope),
})
export type Slab = z.infer<typeof Slab>
