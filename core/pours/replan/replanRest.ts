/** Planning anew what is not yet poured: poured and locked pours stay as they are. */
import type { AcceptedPours, Joint, PourPart } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../../shared/problem'
import { missing } from '../../document/commands/editSite'
import type { CurveRegion } from '../../geometry/curve'
import { subtractCurves } from '../../geometry/curveBoolean'
import { resolveSlab } from '../../geometry/resolveSlab'
import { builtRegion, isAsBuilt } from '../asBuiltFaces'
import type { PoursOffer } from '../editing/acceptPours'
import { cutPart } from '../editing/editPart'
import { type JointGround, jointGround, nearestOnLine, onM } from '../editing/jointGround'
import { typedCaps } from '../editing/pourCaps'
import type { Proposal, SplitInput } from '../proposal'
import { proposePours } from '../proposePours'
import { toCutRegion } from '../region/cutRegion'
import { fixedFaces } from '../wishes/fixedFaces'
import type { JointWishes, RequiredLine } from '../wishes/jointWishes'
import { resolveWishes } from '../wishes/resolveWishes'

/** A sliver between a drawn and a built edge is no pour (m²): 1 ft². */
const leastRestM2 = 0.1

export interface Replan {
  /** What acceptPours takes. */
  readonly offer: PoursOffer
  readonly proposals: readonly Proposal[]
  /** What was left to plan. */
  readonly rest: readonly CurveRegion[]
  readonly findings: readonly Finding[]
}

/** What of a part is neither poured nor locked, and what stays around it. */
export interface OpenGround {
  readonly regions: readonly CurveRegion[]
  /** Locked joints that still divide it: required lines of any split. */
  readonly lockedLines: readonly RequiredLine[]
  readonly keptJoints: readonly Joint[]
  readonly keptPourIds: readonly Id[]
  readonly findings: readonly Finding[]
}

type Search = Partial<Pick<SplitInput, 'capM2'>> &
  Pick<SplitInput, 'pourCount' | 'patternDeg' | 'directions' | 'weights' | 'budget' | 'grid'>

/**
 * A locked joint whole; any other only as far as it bounds a kept pour: the rest of it would cut what is planned anew.
 */
function keptPieces(accepted: AcceptedPours, ground: JointGround, kept: readonly CurveRegion[]): Joint[] {
  return accepted.joints.flatMap((joint): Joint[] => {
    if (joint.locked) return [joint]
    const line = ground.lines.find(({ id }) => id === joint.id)!
    const spans = kept
      .flatMap(({ outer, holes }) => [outer, ...holes].flat())
      .filter(edge => edge.edgeId === joint.id)
      .map(edge => [nearestOnLine(line, edge.from).t, nearestOnLine(line, edge.to).t])
      .map(([a, b]) => [Math.min(a!, b!), Math.max(a!, b!)] as const)
    if (spans.length === 0) return []
    const [from, to] = [Math.min(...spans.map(s => s[0])), Math.max(...spans.map(s => s[1]))]
    const at = (t: number): Pt => [
      line.from[0] + t * (line.to[0] - line.from[0]),
      line.from[1] + t * (line.to[1] - line.from[1]),
    ]
    const lengthM = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])
    const least = onM / lengthM
    const ends: Joint['ends'] = [
      from <= least ? joint.ends[0] : { anchor: { on: 'free' }, last: at(from) },
      to >= 1 - least ? joint.ends[1] : { anchor: { on: 'free' }, last: at(to) },
    ]
    return [{ ...joint, ends }]
  })
}

/** Ends on joints that are gone become free where they were. */
function withoutLostAnchors(joints: readonly Joint[], ground: JointGround): Joint[] {
  const ids = new Set(joints.map(({ id }) => id))
  return joints.map(joint => {
    const line = ground.lines.find(({ id }) => id === joint.id)
    const ends = joint.ends.map((end, i) =>
      end.anchor.on === 'joint' && !ids.has(end.anchor.jointId)
        ? { anchor: { on: 'free' as const }, last: (i === 0 ? line?.from : line?.to) ?? end.last }
        : end,
    )
    return { ...joint, ends: [ends[0]!, ends[1]!] }
  })
}

/** A locked joint as far as it divides what is planned anew: there its ends would else hang on joints that are gone. */
function carriedOn(joint: Joint, regions: readonly CurveRegion[], required: readonly RequiredLine[]): Joint {
  if (!joint.locked) return joint
  const [a, b] = [joint.ends[0].last, joint.ends[1].last]
  const l2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
  const place = (x: number, y: number) => ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / l2
  const least = onM / Math.sqrt(l2)
  let [first, last] = [joint.ends[0], joint.ends[1]]
  let [from, to] = [-least, 1 + least]
  for (const region of regions)
    for (const piece of fixedFaces(toCutRegion(region), required).joints) {
      if (piece.wishId !== joint.id) continue
      for (const p of [
        [piece.ax, piece.ay],
        [piece.bx, piece.by],
      ] as const) {
        const t = place(p[0], p[1])
        if (t < from) [from, first] = [t, { anchor: { on: 'free' }, last: p }]
        if (t > to) [to, last] = [t, { anchor: { on: 'free' }, last: p }]
      }
    }
  return first === joint.ends[0] && last === joint.ends[1] ? joint : { ...joint, ends: [first, last] }
}

/**
 * The part less its poured and locked pours: poured ones are subtracted as built, locked ones as drawn. Fails where the
 * slab is not there. Locked joints stay; `required` lines end what of them runs on into the open.
 */
export function openGround(
  site: Site,
  slabId: Id,
  part: PourPart,
  required: readonly RequiredLine[] = [],
): Result<OpenGround, readonly Finding[]> {
  const slab = site.slabs.find(({ id }) => id === slabId)
  if (!slab) return err([missing('slab', slabId)])
  const accepted: AcceptedPours = site.accepted.find(row => row.slabId === slabId && row.part === part) ?? {
    slabId,
    part,
    joints: [],
    pours: [],
  }
  const ground = jointGround(slab, accepted)
  const { faces, findings } = cutPart(ground.regions, accepted)
  const stays = accepted.pours.filter(({ poured, lock }) => poured !== undefined || lock.shape)
  const keptFaces = faces.filter(({ pourId }) => stays.some(({ id }) => id === pourId))
  const frozen = stays.flatMap(({ id, poured }): CurveRegion[] => {
    const face = keptFaces.find(({ pourId }) => pourId === id)
    if (!poured || (face && isAsBuilt(face, poured))) return face ? [face.region] : []
    return [builtRegion(poured, id)]
  })
  const keptRegions = keptFaces.map(({ region }) => region)
  const regions = frozen.length === 0 ? ground.regions : subtractCurves(ground.regions, frozen).regions
  const lockedLines = accepted.joints.flatMap(({ id, locked, ends: [a, b] }): RequiredLine[] =>
    locked ? [{ id, from: a.last, to: b.last }] : [],
  )
  const all = [...lockedLines, ...required]
  return ok({
    regions,
    lockedLines,
    keptJoints: withoutLostAnchors(keptPieces(accepted, ground, keptRegions), ground).map(joint =>
      carriedOn(joint, regions, all),
    ),
    keptPourIds: stays.map(({ id }) => id),
    findings: findings.filter(({ code }) => code === 'differsFromAsBuilt'),
  })
}

/** A sliver between a drawn and a built edge is no pour. */
export const isWorthPouring = (proposal: Proposal): boolean =>
  proposal.pours.reduce((sum, { areaM2 }) => sum + areaM2, 0) >= leastRestM2

/** The wishes with locked joints as required lines, before all others. */
export const withLocked = (
  wishes: JointWishes | undefined,
  locked: readonly RequiredLine[],
): JointWishes | undefined =>
  locked.length === 0 ? wishes : { ...wishes, required: [...locked, ...(wishes?.required ?? [])] }

/** Findings of all proposals, but for lines that miss one of several pieces or run where nothing is planned anew. */
const withoutPassed = (proposals: readonly Proposal[]): Finding[] =>
  proposals.flatMap(({ findings }) => findings).filter(({ code }) => code !== 'requiredMisses')

/** Splits anew what is neither poured nor locked. Fails where nothing is left to plan. */
export function replanRest(
  site: Site,
  slabId: Id,
  part: PourPart,
  search: Search = {},
): Result<Replan, readonly Finding[]> {
  const source = site.slabs.find(({ id }) => id === slabId)
  const accepted = site.accepted.find(row => row.slabId === slabId && row.part === part)
  const wishes = source && resolveWishes(site, source, resolveSlab(source), part, accepted)
  const open = openGround(site, slabId, part, wishes?.required)
  if (!open.ok) return open
  const asked = withLocked(wishes, open.value.lockedLines)
  const { capM2 } = typedCaps(site)(slabId)
  const split = open.value.regions
    .map(region => ({
      region,
      proposal: proposePours({ capM2, ...search, slabId, part, region, ...(asked ? { wishes: asked } : {}) }),
    }))
    .filter(({ proposal }) => isWorthPouring(proposal))
  if (split.length === 0)
    return err([{ code: 'nothingToPlan', severity: 'note', values: { slabId }, at: { entityId: slabId } }])
  const proposals = split.map(({ proposal }) => proposal)
  const { keptJoints, keptPourIds, findings } = open.value
  return ok({
    offer: {
      slabId,
      part,
      pours: proposals.flatMap(proposal => proposal.pours),
      joints: proposals.flatMap(proposal => proposal.joints),
      keptJoints,
      keptPourIds,
    },
    proposals,
    rest: split.map(({ region }) => region),
    findings: [...findings, ...withoutPassed(proposals)],
  })
}
