/** Planning anew what is not yet poured: poured and locked pours stay as they are. */
import type { AcceptedPours, Joint, PourPart } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import { missing } from '../../document/commands/editSite'
import type { CurveRegion } from '../../geometry/curve'
import { subtractCurves } from '../../geometry/curveBoolean'
import { resolvePath } from '../../geometry/resolvePath'
import type { PoursOffer } from '../editing/acceptPours'
import { cutPart } from '../editing/editPart'
import { type JointGround, jointGround, nearestOnLine, onM } from '../editing/jointGround'
import { type Proposal, proposePours, type SplitInput } from '../proposePours'

/** As-built and drawn areas that differ by less are one (m²): about 1 ft². */
const asBuiltM2 = 0.1
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
  readonly keptJoints: readonly Joint[]
  readonly keptPourIds: readonly Id[]
  readonly findings: readonly Finding[]
}

type Search = Pick<SplitInput, 'pourCount' | 'patternDeg' | 'directions' | 'weights' | 'budget' | 'grid'>

/** A kept joint only as far as it bounds a kept pour: the rest of it would cut what is planned anew. */
function keptPieces(accepted: AcceptedPours, ground: JointGround, kept: readonly CurveRegion[]): Joint[] {
  return accepted.joints.flatMap((joint): Joint[] => {
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

/**
 * The part less its poured and locked pours: poured ones are subtracted as built, locked ones as drawn. Fails where the
 * slab is not there.
 */
export function openGround(site: Site, slabId: Id, part: PourPart): Result<OpenGround, readonly Finding[]> {
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
    if (!poured || (face && Math.abs(face.areaM2 - poured.areaM2) <= asBuiltM2)) return face ? [face.region] : []
    const outer = resolvePath(poured.outline, id).ring
    return [{ outer, holes: poured.holes.map(hole => resolvePath(hole, id).ring) }]
  })
  const keptRegions = keptFaces.map(({ region }) => region)
  return ok({
    regions: frozen.length === 0 ? ground.regions : subtractCurves(ground.regions, frozen).regions,
    keptJoints: withoutLostAnchors(keptPieces(accepted, ground, keptRegions), ground),
    keptPourIds: stays.map(({ id }) => id),
    findings: findings.filter(({ code }) => code === 'differsFromAsBuilt'),
  })
}

/** A sliver between a drawn and a built edge is no pour. */
export const isWorthPouring = (proposal: Proposal): boolean =>
  proposal.pours.reduce((sum, { areaM2 }) => sum + areaM2, 0) >= leastRestM2

/** Splits anew what is neither poured nor locked. Fails where nothing is left to plan. */
export function replanRest(
  site: Site,
  slabId: Id,
  part: PourPart,
  search: Search = {},
): Result<Replan, readonly Finding[]> {
  const open = openGround(site, slabId, part)
  if (!open.ok) return open
  const capM2 = site.capacity?.capM2 ?? settingValue(site.settings, 'capM2')
  const split = open.value.regions
    .map(region => ({ region, proposal: proposePours({ ...search, slabId, part, region, capM2 }) }))
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
    findings: [...findings, ...proposals.flatMap(proposal => proposal.findings)],
  })
}
