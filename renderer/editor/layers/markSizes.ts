/** What is drawn of trucks, pumps and the washout, half of it in pixels across and up. */
import type { Pt } from '../../../shared/document/primitives'

export type MarkKind = 'truck' | 'pump' | 'washout'

const halfPx: Readonly<Record<MarkKind, Pt>> = { truck: [12, 24], pump: [12, 12], washout: [16, 12] }

/** No mark reaches farther from its middle. */
export const mostMarkPx = 27

/** About as wide as a truck stands on a street, mirrors and all; from memory. */
const truckWideM = 2.6
/** Never smaller than is told apart. */
const leastShare = 0.5

/** On a plan seen from far off a truck is drawn no wider than it is, so that two beside each other stay two. */
const markShare = (zoom: number): number =>
  Math.max(leastShare, Math.min(1, (truckWideM * zoom) / (2 * halfPx.truck[0])))

export function markHalf(kind: MarkKind, zoom: number): Pt {
  const [across, up] = halfPx[kind]
  const share = markShare(zoom)
  return [across * share, up * share]
}
