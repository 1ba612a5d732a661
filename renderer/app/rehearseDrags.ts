/** The engine compiles in earnest only what has run a few dozen times: a drag is rehearsed before the hand is there. */
import { moveSelection } from '../../core/document/commands/moveSelection'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import type { Site } from '../../shared/document/site'
import type { PlanStore } from '../store/planStore'
import { whenIdle } from './whenIdle'

/** After about so many frames of a first drag its cost stops falling. */
const mostRounds = 40
/** No more of the battery than this, however large the site. */
const mostMs = 600
const stepM = 0.0254

/** A corner of the slab with most edges moved and the slab worked out, for nobody to see. */
function rehearse(site: Site, byM: number): void {
  const busiest = site.slabs.reduce<Site['slabs'][number] | undefined>(
    (most, slab) => (slab.outline.edges.length > (most?.outline.edges.length ?? 0) ? slab : most),
    undefined,
  )
  const corner = busiest?.outline.vertices[0]
  if (!corner) return
  const moved = moveSelection([corner.id], [byM, 0])(site)
  const slab = moved.ok ? moved.value.slabs.find(({ id }) => id === busiest?.id) : undefined
  if (slab) resolveSlab(slab)
}

/** Once for each site that is opened, a round each time the page has nothing to do. */
export function rehearseDrags(plan: PlanStore): void {
  let known: string | null = null
  let drop = () => {}
  plan.subscribe(({ live, isRenewing }) => {
    if (!live || isRenewing || live.site.id === known) return
    const { site } = live
    known = site.id
    drop()
    const round = (n: number, spentMs: number) => {
      if (n > mostRounds || spentMs > mostMs) return
      drop = whenIdle(() => {
        const beginMs = performance.now()
        rehearse(site, n * stepM)
        round(n + 1, spentMs + performance.now() - beginMs)
      })
    }
    round(1, 0)
  })
}
