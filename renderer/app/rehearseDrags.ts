/** The engine compiles in earnest only what has run a few dozen times: a drag is rehearsed before the hand is there. */
import { moveSelection } from '../../core/document/commands/moveSelection'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import type { Site } from '../../shared/document/site'
import type { PlanStore } from '../store/planStore'
import { whenIdle } from './whenIdle'

/** After about so many frames of a first drag its cost stops falling. */
const rounds = 40
const byM = 0.0254

/** A corner of the largest slab moved an inch and the slab worked out, for nobody to see. */
function rehearse(site: Site, to: number): void {
  const largest = site.slabs.reduce<Site['slabs'][number] | undefined>(
    (most, slab) => (slab.outline.edges.length > (most?.outline.edges.length ?? 0) ? slab : most),
    undefined,
  )
  const corner = largest?.outline.vertices[0]
  if (!corner) return
  const moved = moveSelection([corner.id], [to, 0])(site)
  const slab = moved.ok ? moved.value.slabs.find(({ id }) => id === largest?.id) : undefined
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
    const round = (left: number) => {
      if (left === 0) return
      drop = whenIdle(() => {
        rehearse(site, left * byM)
        round(left - 1)
      })
    }
    round(rounds)
  })
}
