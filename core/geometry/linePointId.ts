import type { Id } from '../../shared/document/primitives'

/** A point of a line that keeps no corners of its own, a fence for one: `w3.0` is the first of `w3`. In no document. */
export const linePointId = (lineId: Id, index: number): Id => `${lineId}.${index}`

/** The other way; null where the id is that of something else. */
export function readLinePointId(pointId: Id): { readonly lineId: Id; readonly index: number } | null {
  const { lineId, index } = /^(?<lineId>[a-z]+\d+)\.(?<index>\d+)$/.exec(pointId)?.groups ?? {}
  return lineId === undefined ? null : { lineId, index: Number(index) }
}
