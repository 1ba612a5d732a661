import type { Id } from '../../shared/document/primitives'

/** A point of a line that keeps no corners of its own, a fence for one: `w3.0` is the first of `w3`. In no document. */
export const linePointId = (lineId: Id, index: number): Id => `${lineId}.${index}`
