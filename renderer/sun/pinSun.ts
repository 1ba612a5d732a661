/** Sun and shade of the point asked about, on the document on screen. */
import { type PointSun, pointSun } from '../../core/sun/pointSun'
import type { LivePlan } from '../store/livePlan'
import type { ViewState } from '../store/viewStore'

const known = new WeakMap<LivePlan, { readonly pin: ViewState['pin']; readonly sun: PointSun }>()

export function pinSun(live: LivePlan, pin: ViewState['pin']): PointSun | null {
  const slab = live.slabs.find(each => each.id === pin?.slabId)
  if (!pin || !slab || !live.day) return null
  const last = known.get(live)
  if (last?.pin === pin) return last.sun
  const { place, settings } = live.site
  const sun = pointSun(pin.at, slab.levelM, live.casters, place, live.day, settings)
  known.set(live, { pin, sun })
  return sun
}
