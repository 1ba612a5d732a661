/** Makes a proposal part of the document. */
import type { AcceptedPours, Joint, Pour, PourPart } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { type EditResult, missing } from '../../document/commands/editSite'
import type { CurveRegion } from '../../geometry/curve'
import { interiorPoint } from '../../geometry/interiorPoint'
import { cutPart, highestNumber, overCap, putPart, refuse } from './editPart'
import { anchorAt, jointGround } from './jointGround'
import { matchPours } from './matchPours'
import { type PourCaps, typedCaps } from './pourCaps'

export interface OfferedPour {
  readonly region: CurveRegion
  readonly areaM2: number
  /** The one it was shown with, kept where it is free. */
  readonly number?: string
  /** The pour of the document that goes on as this one, however much it covers of it. */
  readonly goesOnAs?: Id
}

export interface PoursOffer {
  readonly slabId: Id
  readonly part: PourPart
  readonly pours: readonly OfferedPour[]
  /** One that lies on a kept joint (its `wishId`) is left out. */
  readonly joints: readonly { readonly from: Pt; readonly to: Pt; readonly wishId?: string }[]
  /** Joints of the document that stay, as they are now: those around poured and locked pours. */
  readonly keptJoints?: readonly Joint[]
  readonly keptPourIds?: readonly Id[]
}

/** A pour goes on as a new one that covers this much of it. */
const leastShare = 0.5

/**
 * Ids are minted; a pour of the document goes on as the new one that covers at least half of it, with its number, date
 * and notes. Joints end on the corners, edges and joints they meet. Pours that find no successor are told as lost.
 */
export function acceptPours(site: Site, offer: PoursOffer, caps: PourCaps = typedCaps(site)): EditResult {
  const slab = site.slabs.find(({ id }) => id === offer.slabId)
  if (!slab) return refuse(missing('slab', offer.slabId))
  const was: AcceptedPours = site.accepted.find(row => row.slabId === offer.slabId && row.part === offer.part) ?? {
    slabId: offer.slabId,
    part: offer.part,
    joints: [],
    pours: [],
  }
  let nextId = site.nextId
  const made: Id[] = []
  const joints: Joint[] = [...(offer.keptJoints ?? [])]
  const keptJoints = new Set(joints.map(({ id }) => id))
  for (const { from, to, wishId } of offer.joints) {
    if (wishId !== undefined && keptJoints.has(wishId)) continue
    const ground = jointGround(slab, { ...was, joints })
    const id = `j${nextId++}`
    made.push(id)
    joints.push({
      id,
      ends: [anchorAt(ground, from, id), anchorAt(ground, to, id)],
      locked: false,
      kind: 'construction',
    })
  }
  const ground = jointGround(slab, was)
  const before = cutPart(ground.regions, was)
  const keptIds = new Set(offer.keptPourIds ?? [])
  const kept = was.pours.filter(({ id }) => keptIds.has(id))
  const old = before.faces.flatMap(({ pourId, region, areaM2 }) =>
    pourId !== null && !keptIds.has(pourId) ? [{ id: pourId, region, areaM2 }] : [],
  )
  const told = new Set(offer.pours.flatMap(({ goesOnAs }) => goesOnAs ?? []))
  const matched = matchPours(
    old.filter(({ id }) => !told.has(id)),
    offer.pours,
    leastShare,
  )
  const oldOf = new Map([...matched].map(([id, at]) => [at, id]))
  let number = highestNumber(site)
  const taken = new Set(site.accepted.flatMap(part => part.pours.map(pour => pour.number)))
  const numberFor = (shown: string | undefined): string => {
    let own = shown
    while (own === undefined || taken.has(own)) own = String(++number)
    taken.add(own)
    return own
  }
  const pours = offer.pours.map(({ region, number: shown, goesOnAs }, at): Pour => {
    const own = was.pours.find(({ id }) => id === (goesOnAs ?? oldOf.get(at)))
    const seed = interiorPoint(region) ?? region.outer[0]!.from
    if (own) return { ...own, seed }
    const id = `n${nextId++}`
    made.push(id)
    return { id, number: numberFor(shown), seed, lock: { shape: false, time: false } }
  })
  const lost = was.pours.filter(pour => !keptIds.has(pour.id) && !pours.some(({ id }) => id === pour.id))
  const empty: AcceptedPours = { ...was, joints, pours: [...kept, ...pours] }
  const accepted = site.accepted.includes(was)
    ? site.accepted.map(row => (row === was ? empty : row))
    : [...site.accepted, empty]
  const done = putPart(
    { ...site, accepted },
    { accepted: empty, slab },
    { joints, pours: empty.pours, nextId, made, caps },
  )
  if (!done.ok) return done
  const { faces, findings } = cutPart(ground.regions, empty)
  return {
    ...done,
    findings: [
      ...findings,
      ...overCap(offer.slabId, pours, faces, caps),
      ...done.findings,
      ...lost.map(pour => ({
        code: 'pourLost' as const,
        severity: 'note' as const,
        values: { number: pour.number, date: pour.date ?? '', notes: pour.notes ?? '' },
        at: { entityId: pour.id, point: pour.seed },
      })),
    ],
  }
}
