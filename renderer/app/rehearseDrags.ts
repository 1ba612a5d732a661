/** The engine compiles in earnest only what has run often: a drag is rehearsed before the hand is there. */
import { moveSelection } from '../../core/document/commands/moveSelection'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import type { PlanStore } from '../store/planStore'
import { whenIdle } from './whenIdle'

/** After about so many frames of a first drag its cost stops falling. */
const mostRounds = 100
/** No more of the battery than this, however large the site. */
const mostMs = 1500
const stepM = 0.0254

const partsOf = ({ outline, openings, borders, bands }: Slab): number =>
  outline.edges.length + openings.length + borders.length + bands.length

/** A corner of the slab with most parts moved and the slab worked out, for nobody to see. */
function rehearse(site: Site, byM: number): void {
  const slab = site.slabs.reduce<Slab | undefined>(
    (most, each) => (most && partsOf(most) >= partsOf(each) ? most : each),
    undefined,
  )
  const corner = slab?.outline.vertices[0]
  if (!corner) return
  const moved = moveSelection([corner.id], [byM, 0])(site)
  const made = moved.ok ? moved.value.slabs.find(({ id }) => id === slab?.id) : undefined
  if (made) resolveSlab(made)
}

/** Once for each site that is opened, when its plan is worked out: a round each time the page has nothing to do. */
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
