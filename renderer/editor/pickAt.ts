/** What lies under a point of the plan: the smallest thing first. */
import { distanceToEdge, regionContains, ringContains } from '../../core/geometry/contains'
import { stepsRing } from '../../core/geometry/stepLines'
import type { Plan } from '../../core/plan/plan'
import { furnishingShape } from '../../core/reports/furnishingShape'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import type { Furnishing } from '../../shared/document/shown'
import type { Steps } from '../../shared/document/slab'
import type { LivePlan } from '../store/livePlan'
import { outlineOf } from './layers/drawCasters'
import { shownDirection } from './layers/drawParts'

export interface PickOf {
  readonly live: LivePlan
  /** Only where pours are on screen. */
  readonly pours?: Plan['pours']
  readonly joints?: Plan['joints']
  /** How near a line or a point must be, in plan meters. */
  readonly nearM: number
}

const isNear = (a: Pt, b: Pt, nearM: number): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= nearM

function isOnCaster(caster: Caster, at: Pt, nearM: number): boolean {
  switch (caster.kind) {
    case 'building':
      return ringContains(outlineOf(caster.footprint), at)
    case 'cover':
      return outlineOf(caster.outline).some(edge => distanceToEdge(edge, at) <= nearM)
    case 'tree':
      return isNear(caster.at, at, caster.crownRadiusM)
    case 'wall':
      return caster.line
        .slice(1)
        .some((to, i) => distanceToEdge({ edgeId: '', from: caster.line[i]!, to }, at) <= nearM)
  }
}

export const isOnFurnishing = (furnishing: Furnishing, at: Pt): boolean => {
  const { body } = furnishingShape(furnishing)
  return ringContains(
    body.map((from, i) => ({ edgeId: '', from, to: body[(i + 1) % body.length]! })),
    at,
  )
}

/** On the treads of a flight, beside the concrete it goes up to. */
const isOnSteps = ({ outline, net }: LivePlan['slabs'][number], steps: Steps, at: Pt): boolean =>
  ringContains(stepsRing(outline, steps), at) && !net.some(region => regionContains(region, at))

/** The id of what is picked; null on open ground. */
export function pickAt(at: Pt, { live, pours, joints, nearM }: PickOf): string | null {
  const point = live.site.points.find(each => isNear(each.at, at, 1.5 * nearM))
  if (point) return point.id
  const joint = joints?.find(
    each => each.kind === 'construction' && distanceToEdge({ edgeId: '', from: each.from, to: each.to }, at) <= nearM,
  )
  if (joint) return joint.id
  const pour = pours?.find(each => regionContains(each.region, at))
  if (pour) return pour.id
  const { access, wishes, furnishings = [], notes = [], tapes = [] } = live.site
  const spots = [
    ...notes,
    ...live.site.slabs.flatMap(({ obstacles }) => obstacles),
    ...(access ? [...access.truckSpots, ...access.pumpSpots, ...access.washouts, ...access.ways] : []),
  ]
  const spot = spots.find(each => isNear(each.at, at, 1.5 * nearM))
  if (spot) return spot.id
  const tape = tapes.find(({ ends: [a, b] }) => distanceToEdge({ edgeId: '', from: a.last, to: b.last }, at) <= nearM)
  if (tape) return tape.id
  const furnishing = furnishings.findLast(each => isOnFurnishing(each, at))
  if (furnishing) return furnishing.id
  const wish = wishes.find(each => {
    if (each.kind === 'direction') {
      const shown = shownDirection(live.site, live.slabs, each)
      return shown !== null && distanceToEdge({ edgeId: '', from: shown[0], to: shown[1] }, at) <= nearM
    }
    if (each.kind === 'forbiddenArea') return outlineOf(each.path).some(edge => distanceToEdge(edge, at) <= nearM)
    const line = each.kind === 'required' ? each.line.map(({ last }) => last) : each.line
    return line.slice(1).some((to, i) => distanceToEdge({ edgeId: '', from: line[i]!, to }, at) <= nearM)
  })
  if (wish) return wish.id
  const keptOff = access?.noGo.find(path => outlineOf(path).some(edge => distanceToEdge(edge, at) <= nearM))
  if (keptOff) return keptOff.id
  for (const slab of live.slabs) {
    const own = live.site.slabs.find(({ id }) => id === slab.id)
    const flight = own?.steps.find(each => isOnSteps(slab, each, at))
    if (flight) return flight.id
  }
  for (const slab of live.slabs) {
    const opening = slab.openings.find(each => ringContains(each.ring, at))
    if (opening) return opening.id
    const claim = [...slab.borders, ...slab.bands, ...slab.insets].find(each =>
      each.shape.some(region => regionContains(region, at)),
    )
    if (claim) return claim.id
    if (slab.net.some(region => regionContains(region, at))) return slab.id
  }
  return live.site.casters.find(each => isOnCaster(each, at, nearM))?.id ?? null
}
