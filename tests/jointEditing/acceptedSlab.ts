import { pourGround } from '../../core/document/commands/pourGround'
import { derivePlan } from '../../core/plan/derivePlan'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import { cutPart } from '../../core/pours/editing/editPart'
import type { PourFaces } from '../../core/pours/pourFaces'
import { replanRest } from '../../core/pours/replan/replanRest'
import { noParts, noRows, startDraft } from '../../samples/draft'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

export const ftM = 0.3048
export const at = (xFt: number, yFt: number): Pt => [xFt * ftM, yFt * ftM]

/** One slab of these corners (feet), with square openings, not yet divided. */
export function bareSite(
  corners: readonly (readonly [number, number])[],
  openings: readonly (readonly [x: number, y: number, side: number])[] = [],
  capFt2 = 900,
): Site {
  const draft = startDraft()
  const finish = draft.id('f')
  const slab = {
    ...noParts,
    id: draft.id('s'),
    name: 'Slab',
    levelM: 0,
    outline: draft.path(corners.map(([x, y]) => ({ at: at(x, y) }))),
    openings: openings.map(([x, y, side]) => ({
      id: draft.id('o'),
      kind: 'planter' as const,
      path: draft.path([at(x, y), at(x, y + side), at(x + side, y + side), at(x + side, y)].map(p => ({ at: p }))),
    })),
    thicknessM: 0.1016,
    baseDepthM: 0.1016,
    finishId: finish,
  }
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'bare',
    name: 'Bare slab',
    units: 'ftin',
    place: { latDeg: 40, lonDeg: -105, elevationM: 1600, zone: 'America/Denver', northDeg: 0 },
    finishes: [{ id: finish, name: 'Ashlar', pattern: 'ashlar', color: '#aaaaaa' }],
    slabs: [slab],
    capacity: { capM2: capFt2 * ftM * ftM },
    nextId: draft.nextId(),
  }
}

/** The same with its first proposal accepted. */
export function acceptedSite(...drawn: Parameters<typeof bareSite>): Site {
  const site = bareSite(...drawn)
  const rest = replanRest(site, site.slabs[0]!.id, 'whole', { budget: 'small' })
  if (!rest.ok) throw new Error(JSON.stringify(rest.error))
  const accepted = acceptPours(site, rest.value.offer)
  if (!accepted.ok) throw new Error(JSON.stringify(accepted.error))
  return accepted.value
}

export const facesOf = (site: Site, index = 0): PourFaces => {
  const accepted = site.accepted[index]!
  const slab = site.slabs.find(({ id }) => id === accepted.slabId)!
  return cutPart(pourGround(slab, accepted.part), accepted)
}

export const plan = (site: Site) => {
  const derived = derivePlan(site, { date: '2026-07-21' })
  if (!derived.ok) throw new Error(JSON.stringify(derived.error))
  return derived.value
}
