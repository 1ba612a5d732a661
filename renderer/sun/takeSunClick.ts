/** A click in the sun stage: a mark on the edge of the shade, or a point of a slab whose sun is asked about. */
import { regionContains } from '../../core/geometry/contains'
import type { Pt } from '../../shared/document/primitives'
import type { LivePlan } from '../store/livePlan'
import type { ViewStore } from '../store/viewStore'

/** False where the click means something else. */
export function takeSunClick(view: ViewStore, live: LivePlan, at: Pt, nearM: number): boolean {
  const slab = live.slabs.find(each => each.net.some(region => regionContains(region, at)))
  const { marking } = view.getState()
  if (marking !== null) {
    if (marking.length < 2) view.setState({ marking: [...marking, at], markedSlabId: slab?.id ?? null })
    return true
  }
  const isOnPoint = live.site.points.some(point => Math.hypot(point.at[0] - at[0], point.at[1] - at[1]) <= 1.5 * nearM)
  if (!slab || isOnPoint) return false
  view.setState({ pin: { at, slabId: slab.id } })
  return true
}
