import * as z from 'zod/mini'
import { Id, Pt, positive } from './primitives'

/** `roundM` is the corner radius; it stays while neighbors move. */
export const Vertex = z.strictObject({ id: Id, at: Pt, roundM: z.optional(positive()) })
export type Vertex = z.infer<typeof Vertex>

/** `riseM` is the mid-ordinate of an arc, signed, + = to the right of travel; straight if absent. */
export const Edge = z.strictObject({ id: Id, riseM: z.optional(z.number()) })
export type Edge = z.infer<typeof Edge>

/**
 * A closed path: `edges[i]` joins `vertices[i]` and `vertices[i + 1]`, the last edge returns to the first vertex.
 * Outlines run counter-clockwise, openings clockwise.
 */
export const Path = z.strictObject({ id: Id, vertices: z.array(Vertex), edges: z.array(Edge) })
export type Path = z.infer<typeof Path>

/** A path with two ends: one edge fewer than vertices. */
export const OpenPath = z.strictObject({ id: Id, vertices: z.array(Vertex), edges: z.array(Edge) })
export type OpenPath = z.infer<typeof OpenPath>
