/** One edit of the joints and pours of a part: seeds are set anew, and what changed beside its purpose is told. */
import type { AcceptedPours, Joint, Pour } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import type { Finding } from '../../../shared/problem'
import { type EditResult, missing } from '../../document/commands/editSite'
import { pourGround } from '../../document/commands/pourGround'
import { distanceToEdge, regionContains } from '../../geometry/contains'
import type { CurveRegion } from '../../geometry/curve'
import { interiorPoint } from '../../geometry/interiorPoint'
import { type PourFace, type PourFaces, pourFaces } from '../pourFaces'
import { matchPours } from './matchPours'
import { type PourCap, type PourCaps, typedCaps } from './pourCaps'

export interface PartOfSite {
  readonly accepted: AcceptedPours
  readonly slab: Slab
}

export const refuse = (...findings: readonly Finding[]): EditResult => ({ ok: false, error: findings })

export const findJoint = (site: Site, jointId: Id): (PartOfSite & { readonly joint: Joint }) | null => {
  for (const accepted of site.accepted) {
    const joint = accepted.joints.find(({ id }) => id === jointId)
    const slab = site.slabs.find(({ id }) => id === accepted.slabId)
    if (joint && slab) return { accepted, slab, joint }
  }
  return null
}

export const findPour = (site: Site, pourId: Id): (PartOfSite & { readonly pour: Pour }) | null => {
  for (const accepted of site.accepted) {
    const pour = accepted.pours.find(({ id }) => id === pourId)
    const slab = site.slabs.find(({ id }) => id === accepted.slabId)
    if (pour && slab) return { accepted, slab, pour }
  }
  return null
}

export const missingJoint = (id: Id): Finding => missing('joint', id)
export const missingPour = (id: Id): Finding => missing('pour', id)

/** Why the shape of a pour may not change; null when it may. */
export function whyFixed(pour: Pour): Finding | null {
  if (pour.poured)
    return { code: 'pourIsPoured', severity: 'stop', values: { number: pour.number }, at: { entityId: pour.id } }
  if (pour.lock.shape)
    return { code: 'pourLocked', severity: 'stop', values: { number: pour.number }, at: { entityId: pour.id } }
  return null
}

/** A drag asks for the faces it started from at every move; accepted pours are immutable. */
const known = new WeakMap<AcceptedPours, { readonly regions: readonly CurveRegion[]; readonly cut: PourFaces }>()

/** Faces over all regions of a part; a joint or pour that one region lacks may lie in another. */
export function cutPart(regions: readonly CurveRegion[], accepted: AcceptedPours): PourFaces {
  const last = known.get(accepted)
  if (last?.regions === regions) return last.cut
  const cut = cutAll(regions, accepted)
  known.set(accepted, { regions, cut })
  return cut
}

function cutAll(regions: readonly CurveRegion[], accepted: AcceptedPours): PourFaces {
  const cuts = regions.map(region => pourFaces(region, accepted))
  const faces = cuts.flatMap(cut => cut.faces)
  const joints = cuts.flatMap(cut => cut.joints)
  const there = new Set<string>([...faces.map(({ pourId }) => pourId ?? ''), ...joints.map(({ id }) => id)])
  const seen = new Set<string>()
  const findings = cuts
    .flatMap(cut => cut.findings)
    .filter(finding => {
      const { code, at } = finding
      if ((code === 'pourLost' || code === 'jointOutside') && there.has(at?.entityId ?? '')) return false
      const key = keyOf(finding)
      if (seen.has(key)) return false
      seen.add(key)
      return true
    })
  return { faces, joints, findings }
}

const keyOf = ({ code, at, values }: Finding): string => `${code} ${at?.entityId} ${JSON.stringify(values)}`

export const highestNumber = (site: Site): number =>
  site.accepted
    .flatMap(({ pours }) => pours)
    .reduce((most, { number }) => Math.max(most, Number.parseInt(number, 10) || 0), 0)

export interface PartEdit {
  readonly joints: readonly Joint[]
  readonly pours: readonly Pour[]
  readonly nextId: number
  /** Faces that no pour goes on as become pours of their own. */
  readonly newPours?: boolean
  readonly made?: readonly Id[]
  /** What pours are held against; what the site alone tells if left out. */
  readonly caps?: PourCaps | undefined
}

/**
 * What crew and weather allow is known for the usual start of one day. A pour with a first truck or day of its own is
 * held to common practice here: its day plan tells by its own hours what the crew takes.
 */
function capOfPour({ date, start }: Pour, cap: PourCap): PourCap {
  const { rule, ofDay } = cap
  if (rule !== 'crewAndWeather' || !ofDay) return cap
  const isOfDay = start === undefined && (date === undefined || date === ofDay.date)
  return isOfDay ? cap : { capM2: ofDay.practiceM2, rule: 'commonPractice' }
}

/** Pours of these faces that are more than can be stamped at one time. */
export function overCap(
  slabId: Id,
  pours: readonly Pour[],
  faces: readonly Pick<PourFace, 'pourId' | 'areaM2'>[],
  caps: PourCaps,
): Finding[] {
  const all = caps(slabId)
  return faces.flatMap(({ pourId, areaM2 }): Finding[] => {
    const pour = pours.find(({ id }) => id === pourId)
    if (!pour || pour.poured) return []
    const { capM2, rule, hands = 0 } = capOfPour(pour, all)
    if (areaM2 <= capM2 * (1 + 1e-9)) return []
    return [
      {
        code: 'pourOverCap',
        severity: 'check',
        values: { number: pour.number, areaM2, capM2, rule, hands },
        at: { entityId: pour.id, point: pour.seed },
      },
    ]
  })
}

/**
 * The site with a part's joints and pours replaced. Each pour goes on as the face it shares most area with; its seed is
 * set anew when it no longer lies there. Findings: what the edit merged, lost or left without a pour, and changed pours
 * over the largest area.
 */
export function putPart(site: Site, { accepted: was, slab }: PartOfSite, edit: PartEdit): EditResult {
  const regions = pourGround(slab, was.part)
  const before = cutPart(regions, was)
  const bare = { ...was, joints: [...edit.joints], pours: [...edit.pours] }
  const after = cutPart(regions, bare)
  const old = before.faces.flatMap(({ pourId, region, areaM2 }) =>
    pourId !== null && edit.pours.some(({ id }) => id === pourId) ? [{ id: pourId, region, areaM2 }] : [],
  )
  const matched = seedsFit(after) ? facesBySeed(after) : matchPours(old, after.faces, 0)
  const taken = new Set(matched.values())
  const made: Id[] = [...(edit.made ?? [])]
  let nextId = edit.nextId
  let number = highestNumber(site)
  const pours = edit.pours.map(pour => {
    const face = after.faces[matched.get(pour.id) ?? -1]
    return !face || liesWell(face.region, pour.seed) ? pour : { ...pour, seed: seedIn(face.region, pour.seed) }
  })
  if (edit.newPours)
    for (const [i, face] of after.faces.entries()) {
      if (taken.has(i) || pours.some(({ seed }) => regionContains(face.region, seed))) continue
      const id = `n${nextId++}`
      made.push(id)
      pours.push({
        id,
        number: String(++number),
        seed: seedIn(face.region, [0, 0]),
        lock: { shape: false, time: false },
      })
    }
  const part: AcceptedPours = { ...was, joints: [...edit.joints], pours }
  const told = new Set(before.findings.map(keyOf))
  // The same pours in the same places have the same faces.
  const now =
    pours.every((pour, k) => pour === edit.pours[k]) && pours.length === edit.pours.length
      ? after
      : cutPart(regions, part)
  const findings = [
    ...now.findings.filter(finding => !told.has(keyOf(finding))),
    ...overCap(
      was.slabId,
      pours,
      now.faces.filter(face => {
        const wasM2 = before.faces.find(({ pourId }) => pourId === face.pourId)?.areaM2 ?? 0
        return Math.abs(face.areaM2 - wasM2) >= 1e-9
      }),
      edit.caps ?? typedCaps(site),
    ),
  ]
  return {
    ok: true,
    value: {
      ...site,
      nextId,
      accepted: site.accepted.map(row => (row.slabId === was.slabId && row.part === was.part ? part : row)),
    },
    findings,
    made,
  }
}

/** A seed nearer than this to the edge of its face is set anew (m). */
const clearM = 0.1

const liesWell = (region: CurveRegion, seed: Pt): boolean =>
  regionContains(region, seed) &&
  ![region.outer, ...region.holes].flat().some(edge => distanceToEdge(edge, seed) < clearM)

/** True when every face holds one seed and every seed has its face. */
const seedsFit = ({ findings }: PourFaces): boolean =>
  !findings.some(({ code }) => code === 'poursMerged' || code === 'pourLost' || code === 'unplannedPart')

const facesBySeed = ({ faces }: PourFaces): ReadonlyMap<Id, number> =>
  new Map(faces.flatMap(({ pourId }, i) => (pourId === null ? [] : [[pourId, i] as const])))

const seedIn = (region: CurveRegion, otherwise: Pt): Pt => interiorPoint(region) ?? otherwise
