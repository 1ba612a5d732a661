/**
 * Mends accepted pours that an edit of the slab left without a place, without a joint, or over the largest area, and
 * those that do not keep a wish made after them.
 */
import type { AcceptedPours, Joint, Pour, PourPart } from '../../../shared/document/pours'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { err, type Finding, ok, type ProblemCode, type Result } from '../../../shared/problem'
import { missing } from '../../document/commands/editSite'
import { resolveSlab } from '../../geometry/resolveSlab'
import { acceptPours, type PoursOffer } from '../editing/acceptPours'
import { cutPart, overCap, putPart } from '../editing/editPart'
import { anchorAt, jointGround, settleLine } from '../editing/jointGround'
import { type PourCaps, typedCaps } from '../editing/pourCaps'
import { splitForDay } from '../editing/splitForDay'
import { brokenWishes } from '../wishes/brokenWishes'
import { isBinding } from '../wishes/jointWishes'
import { resolveWishes } from '../wishes/resolveWishes'

/** What a repair does, in the order it is done. Areas in m². */
export type RepairDeed =
  | { readonly does: 'jointMended' | 'jointRemoved'; readonly jointId: Id }
  | { readonly does: 'poursMerged'; readonly number: string; readonly gone: readonly string[]; readonly areaM2: number }
  | { readonly does: 'pourRemoved' | 'pourAdded'; readonly number: string }
  | {
      readonly does: 'restSplit'
      readonly pours: number
      readonly over: readonly string[]
      /** Wishes that are kept by it and were not. */
      readonly wishes: number
      readonly kept: readonly string[]
    }
  /** `dayM2` = what the crew takes on the pour's own day. */
  | {
      readonly does: 'pourSplit'
      readonly number: string
      readonly areaM2: number
      readonly dayM2: number
      readonly others: readonly string[]
    }

export interface Repair {
  readonly slabId: Id
  readonly part: PourPart
  readonly deeds: readonly RepairDeed[]
  readonly site: Site
  /** What is still to be seen to afterwards. */
  readonly findings: readonly Finding[]
}

/** The problems of accepted pours that `repairPours` takes up. */
export const repairableCodes: ReadonlySet<ProblemCode> = new Set<ProblemCode>([
  'jointOpen',
  'jointOutside',
  'anchorLost',
  'poursMerged',
  'unplannedPart',
  'pourLost',
  'pourOverCap',
  'jointOnForbidden',
  'requiredNotKept',
  'pourUnderWidth',
  'overCrewCapacity',
])

/** What the crew takes of each pour on its own day and from its first truck on, m²: of those that are more. */
export type DayHolds = ReadonlyMap<Id, number>

const isFixed = ({ lock, poured }: Pour): boolean => lock.shape || poured !== undefined

const inTurn = (pours: readonly Pour[]): string[] =>
  pours.map(({ number }) => number).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))

/** A face smaller than this is no pour of its own (m²): 1 ft². */
const leastM2 = 0.1

/** Joints that end nowhere go on to what they meet; those off the slab are taken away. */
function mendJoints(site: Site, accepted: AcceptedPours, deeds: RepairDeed[]): readonly Joint[] {
  const slab = site.slabs.find(({ id }) => id === accepted.slabId)!
  const ground = jointGround(slab, accepted)
  const { findings } = cutPart(ground.regions, accepted)
  const has = (code: ProblemCode, jointId: Id) =>
    findings.some(finding => finding.code === code && finding.at?.entityId === jointId)
  return accepted.joints.flatMap((joint): Joint[] => {
    const isOutside = has('jointOutside', joint.id)
    if (!isOutside && !has('jointOpen', joint.id) && !has('anchorLost', joint.id)) return [joint]
    const line = ground.lines.find(({ id }) => id === joint.id)!
    const settled = isOutside ? null : settleLine(ground, line.from, line.to, joint.id)
    deeds.push({ does: settled ? 'jointMended' : 'jointRemoved', jointId: joint.id })
    if (!settled) return []
    return [{ ...joint, ends: [anchorAt(ground, settled[0], joint.id), anchorAt(ground, settled[1], joint.id)] }]
  })
}

/** Of pours that share a face the fixed one stays, else the first; a pour without a face goes. Built ones always stay. */
function mendPours(
  accepted: AcceptedPours,
  regions: Parameters<typeof cutPart>[0],
  deeds: RepairDeed[],
): readonly Pour[] {
  const { findings } = cutPart(regions, accepted)
  const gone = new Set<Id>()
  for (const { code, at, values } of findings) {
    if (code === 'poursMerged') {
      const ids = [at!.entityId, ...String(values.others).split(', ')]
      const sharing = accepted.pours.filter(({ id }) => ids.includes(id))
      const stays = sharing.find(isFixed) ?? sharing[0]!
      const going = sharing.filter(pour => pour !== stays && !isFixed(pour))
      if (going.length === 0) continue
      for (const { id } of going) gone.add(id)
      deeds.push({
        does: 'poursMerged',
        number: stays.number,
        gone: going.map(({ number }) => number),
        areaM2: Number(values.areaM2),
      })
    } else if (code === 'pourLost') {
      const lost = accepted.pours.find(({ id }) => id === at?.entityId)
      if (!lost || lost.poured) continue
      gone.add(lost.id)
      deeds.push({ does: 'pourRemoved', number: lost.number })
    }
  }
  return accepted.pours.filter(({ id }) => !gone.has(id))
}

/** Pours over what their own day holds, each split by that; one that can't be is left to be seen to. */
function splitForDays(
  site: Site,
  partOf: (of: Site) => AcceptedPours,
  dayHolds: DayHolds,
  caps: PourCaps,
  deeds: RepairDeed[],
): Site {
  let split = site
  for (const { id, number } of partOf(site).pours) {
    const dayM2 = dayHolds.get(id)
    if (dayM2 === undefined) continue
    const was = partOf(split)
    const slab = split.slabs.find(own => own.id === was.slabId)!
    const areaM2 = cutPart(jointGround(slab, was).regions, was).faces.find(({ pourId }) => pourId === id)?.areaM2
    if (areaM2 === undefined || areaM2 <= dayM2) continue
    const done = splitForDay(split, id, dayM2, caps)
    if (!done.ok) continue
    split = done.value
    const others = partOf(split).pours.filter(pour => !was.pours.some(own => own.id === pour.id))
    deeds.push({ does: 'pourSplit', number, areaM2, dayM2, others: inTurn(others) })
  }
  return split
}

/**
 * The part mended: joints carried on to what they meet or taken away, pours merged, removed or added so that every piece
 * of the slab is one pour. Where a pour is then over the largest area, or a wish is not kept that `rest` keeps, what is
 * neither poured nor locked is split as `rest` has it; without `rest` that is left to be seen to. Where nothing is split
 * so, pours over what their own day holds are split by that. Poured and locked pours and their joints stay. Pure; fails
 * where slab or pours are not there, and where there is nothing to mend.
 */
export function repairPours(
  site: Site,
  slabId: Id,
  part: PourPart,
  rest: PoursOffer | null,
  caps: PourCaps = typedCaps(site),
  dayHolds: DayHolds = new Map(),
): Result<Repair, readonly Finding[]> {
  const was = site.accepted.find(row => row.slabId === slabId && row.part === part)
  const slab = site.slabs.find(({ id }) => id === slabId)
  if (!slab || !was) return err([missing(slab ? 'pours of slab' : 'slab', slabId)])
  const deeds: RepairDeed[] = []
  const joints = mendJoints(site, was, deeds)
  const { regions } = jointGround(slab, was)
  const mended = { ...was, joints: [...joints] }
  const pours = mendPours(mended, regions, deeds)
  const { faces } = cutPart(regions, { ...mended, pours: [...pours] })
  const done = putPart(
    site,
    { accepted: was, slab },
    {
      joints,
      pours,
      nextId: site.nextId,
      newPours: faces.some(({ pourId, areaM2 }) => pourId === null && areaM2 >= leastM2),
      caps,
    },
  )
  if (!done.ok) return done
  const partOf = (of: Site) => of.accepted.find(row => row.slabId === slabId && row.part === part)!
  const own = partOf(done.value)
  for (const { id, number } of own.pours)
    if (!was.pours.some(pour => pour.id === id)) deeds.push({ does: 'pourAdded', number })
  const over = overCap(slabId, own.pours, cutPart(regions, own).faces, caps)
  const free = own.pours.filter(pour => !isFixed(pour) && over.some(({ at }) => at?.entityId === pour.id))
  const brokenIn = (of: Site): Finding[] => {
    const accepted = partOf(of)
    const wishes = resolveWishes(of, slab, resolveSlab(slab), part, accepted)
    return wishes && isBinding(wishes) ? brokenWishes(accepted, regions, cutPart(regions, accepted), wishes) : []
  }
  const broken = brokenIn(done.value)
  const tried = rest !== null && (free.length > 0 || broken.length > 0) ? acceptPours(done.value, rest, caps) : done
  if (!tried.ok) return tried
  const kept = broken.length - (tried === done ? broken : brokenIn(tried.value)).length
  // A split that serves no wish better is left alone.
  const isSplit = tried !== done && (free.length > 0 || kept > 0)
  if (isSplit)
    deeds.push({
      does: 'restSplit',
      pours: rest!.pours.length,
      over: inTurn(free),
      wishes: Math.max(0, kept),
      kept: inTurn(own.pours.filter(isFixed)),
    })
  // A split of the rest gives its pours other days.
  const mendedSite = isSplit ? tried.value : splitForDays(done.value, partOf, dayHolds, caps, deeds)
  if (deeds.length === 0)
    return err([{ code: 'nothingToPlan', severity: 'note', values: { slabId }, at: { entityId: slabId } }])
  const last = partOf(mendedSite)
  const cut = cutPart(regions, last)
  return ok({
    slabId,
    part,
    deeds,
    site: mendedSite,
    findings: [...cut.findings, ...brokenIn(mendedSite), ...overCap(slabId, last.pours, cut.faces, caps)],
  })
}
