/** What throws shade. Every …M that names a top, eave, underside or base is an elevation above the one site datum. */
import * as z from 'zod/mini'
import { Path } from './path'
import { Id, MonthDay, nonNegative, Pt, positive, share } from './primitives'

export const Roof = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('flat') }),
  z.strictObject({ form: z.literal('gable'), risePer12: positive(), ridgeAlongEdge: Id }),
  z.strictObject({ form: z.literal('hip'), risePer12: positive(), ridgeAlongEdge: z.optional(Id) }),
])
export type Roof = z.infer<typeof Roof>

/** `courtyards` are clockwise rings inside the footprint. */
export const Building = z.strictObject({
  id: Id,
  name: z.string(),
  kind: z.literal('building'),
  footprint: Path,
  courtyards: z.optional(z.array(Path)),
  baseM: z.number(),
  eaveM: z.number(),
  overhangM: nonNegative(),
  roof: Roof,
})
export type Building = z.infer<typeof Building>

/** `solidity` 1 = nothing shines through. */
export const Wall = z.strictObject({
  id: Id,
  name: z.string(),
  kind: z.literal('wall'),
  line: z.array(Pt).check(z.minLength(2)),
  baseM: z.number(),
  topM: z.number(),
  solidity: share(),
})
export type Wall = z.infer<typeof Wall>

/** `trunkM` = elevation of the lowest leaves; `leaves` = the days in leaf, inclusive. */
export const Tree = z.strictObject({
  id: Id,
  name: z.string(),
  kind: z.literal('tree'),
  at: Pt,
  baseM: z.number(),
  trunkM: z.number(),
  topM: z.number(),
  crownRadiusM: positive(),
  density: z.enum(['open', 'medium', 'dense']),
  leaves: z.union([z.literal('evergreen'), z.strictObject({ from: MonthDay, to: MonthDay })]),
})
export type Tree = z.infer<typeof Tree>

/** A roof without walls; `light` = how much direct sun comes through. */
export const Cover = z.strictObject({
  id: Id,
  name: z.string(),
  kind: z.literal('cover'),
  outline: Path,
  undersideM: z.number(),
  topM: z.number(),
  light: z.union([z.enum(['none', 'half', 'most']), share()]),
})
export type Cover = z.infer<typeof Cover>

export const Caster = z.discriminatedUnion('kind', [Building, Wall, Tree, Cover])
export type Caster = z.infer<typeof Caster>
