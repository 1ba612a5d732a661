import { type CalmOf, createCalmStore, type Shown } from './calmStore'
import type { DerivedState } from './planStore'
import type { SiteStore } from './siteStore'

/**
 * The plan at a reader's pace while a hand moves; what was done at one stroke is read with the stroke. `plan` has to
 * follow the site already.
 */
export function createCalmPlan(
  plan: Shown<DerivedState>,
  site: Pick<SiteStore, 'subscribe'>,
  timing: CalmOf,
): Shown<DerivedState> {
  const calm = createCalmStore(plan, timing)
  site.subscribe(({ isMoving }) => {
    if (!isMoving) calm.catchUp()
  })
  return calm
}
