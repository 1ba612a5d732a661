/** After an edit of a slab: joints keep to their edges, seeds to their pours. */
import type { AcceptedPours, Anchor, End, Joint, Pour, PourPart } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import type { Finding } from '../../../shared/problem'
import type { CurveRegion } from '../../geometry/curve'
import { type EdgeSpan, edgeSpans, nearestSpan, pointOnSpan } from '../../geometry/edgeSpans'
import { type PourFaces, pourFaces } from '../../pours/pourFaces'
import type { Edit } from './editSite'
import { groundRings, pourGround } from './pourGround'
import { reseed } from './reseed'

type Spans = ReadonlyMap<string, EdgeSpan>

const slabPaths = (slab: Slab) => [slab.outline, ...slab.openings.map(({ path }) => path)]

/** Where an end of a joint lies on the given ground; its last place where the anchor is not found there. */
export class Ends {
  constructor(
    private readonly slab: Slab,
    private readonly spans: Spans,
    private readonly joints: readonly Joint[],
  ) {}

  at({ anchor, last }: End, depth = 0): Pt {
    if (anchor.on === 'edge') {
      const span = this.spans.get(anchor.edgeId)
      return span === undefined ? last : pointOnSpan(span, anchor.t)
    }
    if (anchor.on === 'vertex') {
      const rounding = this.spans.get(`${anchor.vertexId}~`)
      if (rounding !== undefined) return pointOnSpan(rounding, 0.5)
      const vertex = slabPaths(this.slab)
        .flatMap(({ vertices }) => vertices)
        .find(({ id }) => id === anchor.vertexId)
      return vertex?.at ?? last
    }
    if (anchor.on === 'free') return last
    const joint = this.joints.find(({ id }) => id === anchor.jointId)
    // Joints that hang on each other in a circle end at their last places.
    if (joint === undefined || depth > this.joints.length) return last
    const [a, b] = joint.locked
      ? [joint.ends[0].last, joint.ends[1].last]
      : [this.at(joint.ends[0], depth + 1), this.at(joint.ends[1], depth + 1)]
    return [a[0] + anchor.t * (b[0] - a[0]), a[1] + anchor.t * (b[1] - a[1])]
  }
}

const nearestAnchor = (at: Pt, edgeIds: readonly Id[], spans: Spans): Anchor | undefined => {
  const there = edgeIds.flatMap(edgeId => {
    const span = spans.get(edgeId)
    return span === undefined ? [] : [[edgeId, span] as const]
  })
  const near = nearestSpan(there, at)
  return near && { on: 'edge', edgeId: near.edgeId, t: near.t }
}

const samePt = (a: Pt, b: Pt): boolean => a[0] === b[0] && a[1] === b[1]

/** Nearer than a rounding: a place that is figured anew is no new place. */
const isBeside = (a: Pt, b: Pt): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9

const sameAnchor = (a: Anchor, b: Anchor): boolean => JSON.stringify(a) === JSON.stringify(b)

/** What became of the edges: through all the cuts and merges of one edit. */
const followEdge = (id: Id, edit: Edit): readonly Id[] => {
  const next = edit.successors.get(id)
  if (next === undefined) return [id]
  return [...new Set(next.flatMap(each => (each === id ? [each] : followEdge(each, edit))))]
}

interface Before {
  readonly slab: Slab
  readonly ends: Ends
}

/** Hands the ends of joints and of wished joints on to the edges that took the place of theirs. */
class Carrier {
  constructor(
    private readonly before: Before,
    private readonly after: Slab,
    private readonly spans: Spans,
    private readonly edit: Edit,
    /** True where all edges run otherwise now, as when a border is poured on its own. */
    private readonly recut = false,
  ) {}

  private move(at: Pt): Pt {
    return this.edit.carried.get(this.after.id)?.(at) ?? at
  }

  private anchor(ownerId: Id, end: End): Anchor {
    const { anchor } = end
    if (anchor.on !== 'edge' && anchor.on !== 'vertex') return anchor
    const id = anchor.on === 'edge' ? anchor.edgeId : anchor.vertexId
    const rounded = id.endsWith('~') ? id.slice(0, -1) : undefined
    const here = this.move(this.before.ends.at(end))
    const paths = slabPaths(this.after)
    const vertexId = anchor.on === 'vertex' ? id : rounded
    if (vertexId !== undefined && paths.some(({ vertices }) => vertices.some(vertex => vertex.id === vertexId))) {
      if (anchor.on === 'vertex') return anchor
      if (!this.spans.has(id)) return { on: 'vertex', vertexId }
      return this.edit.successors.has(vertexId) ? (nearestAnchor(here, [id], this.spans) ?? anchor) : anchor
    }
    const changed = this.recut || this.edit.successors.has(vertexId ?? id)
    const stands = paths.some(({ edges }) => edges.some(edge => edge.id === id))
    if (stands && !changed) return anchor
    const found = nearestAnchor(here, followEdge(vertexId ?? id, this.edit), this.spans)
    if (found !== undefined) return found
    // The edge stands, but its roundings have used it up: it may come back.
    if (stands) return anchor
    this.edit.tell('anchorLost', 'check', ownerId, { anchor: id })
    return { on: 'free' }
  }

  carry(ownerId: Id, end: End): End {
    const anchor = this.anchor(ownerId, end)
    const wasAt = anchor.on === 'free' && end.anchor.on !== 'free' ? this.before.ends.at(end) : end.last
    const last = this.move(wasAt)
    if (sameAnchor(anchor, end.anchor) && samePt(last, end.last)) return end
    return { anchor, last }
  }
}

const mapKept = <T>(rows: readonly T[], change: (row: T) => T): readonly T[] => {
  const changed = rows.map(change)
  return changed.some((row, i) => row !== rows[i]) ? changed : rows
}

const refreshEnds = (joint: Joint, carrier: Carrier): Joint => {
  const ends = mapKept(joint.ends, end => carrier.carry(joint.id, end)) as Joint['ends']
  return ends === joint.ends ? joint : { ...joint, ends }
}

/** Unlocked joints remember where they now end; a locked one keeps its line. */
const rememberPlaces = (joint: Joint, ends: Ends): Joint => {
  if (joint.locked) return joint
  const now = mapKept(joint.ends, end => {
    const last = ends.at(end)
    return isBeside(last, end.last) ? end : { ...end, last }
  }) as Joint['ends']
  return now === joint.ends ? joint : { ...joint, ends: now }
}

/** Both are immutable, and a drag asks for the faces it started from at every move. */
const knownCuts = new WeakMap<AcceptedPours, { regions: readonly CurveRegion[]; cuts: readonly PourFaces[] }>()

const cut = (regions: readonly CurveRegion[], accepted: AcceptedPours): readonly PourFaces[] => {
  const known = knownCuts.get(accepted)
  if (known?.regions === regions) return known.cuts
  const cuts = regions.map(region => pourFaces(region, accepted))
  knownCuts.set(accepted, { regions, cuts })
  return cuts
}

/** A pour is lost only where no region of its part has it. */
const tellFaces = (cuts: readonly PourFaces[], pours: readonly Pour[]): readonly Finding[] => {
  const found = new Set(cuts.flatMap(({ faces }) => faces.map(({ pourId }) => pourId)))
  if (cuts.length === 0)
    return pours.map(({ id, number, seed }) => ({
      code: 'pourLost',
      severity: 'check',
      values: { number },
      at: { entityId: id, point: seed },
    }))
  return cuts
    .flatMap(({ findings }) => findings)
    .filter(({ code, at }) => code !== 'pourLost' || !found.has(at?.entityId ?? ''))
}

const keyOf = ({ code, at, values }: Finding): string =>
  code === 'unplannedPart' ? code : `${code} ${at?.entityId} ${values.others ?? ''}`

/** A pour with a locked shape whose area changed all the same: its own outline or a free joint moved. */
const tellLocked = (pours: readonly Pour[], was: readonly PourFaces[], now: readonly PourFaces[], edit: Edit): void => {
  const areaOf = (cuts: readonly PourFaces[], id: Id) =>
    cuts.flatMap(({ faces }) => faces).find(({ pourId }) => pourId === id)?.areaM2
  for (const { id, number, lock, poured, seed } of pours) {
    if (!lock.shape || poured) continue
    const [wasM2, areaM2] = [areaOf(was, id), areaOf(now, id)]
    if (wasM2 === undefined || areaM2 === undefined || Math.abs(areaM2 - wasM2) < 1e-6) continue
    edit.findings.push({
      code: 'lockedPourChanged',
      severity: 'check',
      values: { number, wasM2, areaM2 },
      at: { entityId: id, point: seed },
    })
  }
}

const settlePart = (wasPart: AcceptedPours, part: AcceptedPours, was: Slab, now: Slab, edit: Edit): AcceptedPours => {
  const groundWas = pourGround(was, wasPart.part)
  const ground = pourGround(now, part.part)
  const spans = edgeSpans(groundRings(ground))
  const endsWas = new Ends(was, edgeSpans(groundRings(groundWas)), wasPart.joints)
  const carrier = new Carrier({ slab: was, ends: endsWas }, now, spans, edit, wasPart.part !== part.part)
  const handedOn = mapKept(part.joints, joint => refreshEnds(joint, carrier)) as Joint[]
  const ends = new Ends(now, spans, handedOn)
  const joints = mapKept(handedOn, joint => rememberPlaces(joint, ends)) as Joint[]
  const move = edit.carried.get(now.id)
  const moved = (
    move === undefined ? part.pours : part.pours.map(pour => ({ ...pour, seed: move(pour.seed) }))
  ) as Pour[]
  const carried = joints === part.joints && moved === part.pours ? part : { ...part, joints, pours: moved }
  const facesWas = cut(groundWas, wasPart)
  const pours = reseed(
    { faces: facesWas.flatMap(({ faces }) => faces), joints: facesWas.flatMap(row => row.joints) },
    cut(ground, carried),
    carried.pours,
    id => followEdge(id, edit),
  )
  const settled = pours === carried.pours ? carried : { ...carried, pours: pours as Pour[] }
  const told = new Set(tellFaces(facesWas, wasPart.pours).map(keyOf))
  const facesNow = cut(ground, settled)
  edit.findings.push(...tellFaces(facesNow, settled.pours).filter(finding => !told.has(keyOf(finding))))
  tellLocked(settled.pours, facesWas, facesNow, edit)
  return settled
}

/** The part that these pours go on as: the whole slab becomes its field when something is poured on its own, and back. */
const partNow = (part: AcceptedPours, slab: Slab, site: Site): PourPart => {
  const alone = [...slab.borders, ...slab.bands, ...slab.insets].some(
    ({ placed }) => placed === 'before' || placed === 'after',
  )
  const other = alone ? 'field' : 'whole'
  if (part.part === 'border' || part.part === other) return part.part
  return site.accepted.some(row => row.slabId === slab.id && row.part === other) ? part.part : other
}

/**
 * Joints and seeds of every slab that changed. An unlocked joint keeps its share of the edge it ends on, or goes on to
 * the edge that took its place; a locked one keeps its line. Each pour keeps the face that is bounded as its own was;
 * what merged, got lost or is left unplanned is told.
 */
export const settlePours = (before: Site, after: Site, edit: Edit): Site => {
  const slabOf = (site: Site, slabId: Id) => site.slabs.find(({ id }) => id === slabId)
  const accepted = mapKept(after.accepted, part => {
    const was = slabOf(before, part.slabId)
    const now = slabOf(after, part.slabId)
    const wasPart = before.accepted.find(row => row.slabId === part.slabId && row.part === part.part)
    if (was === undefined || now === undefined || wasPart === undefined) return part
    // Joints and seeds that were edited on their own are as the user wants them.
    if (was === now) return part
    const goesOnAs = partNow(part, now, after)
    return settlePart(wasPart, goesOnAs === part.part ? part : { ...part, part: goesOnAs }, was, now, edit)
  }) as AcceptedPours[]
  const wishes = mapKept(after.wishes, wish => {
    const was = slabOf(before, wish.slabId)
    const now = slabOf(after, wish.slabId)
    if (wish.kind !== 'required' || now === undefined || was === now) return wish
    const move = edit.carried.get(now.id)
    // A copy has no slab before; its lines go where the copy went.
    if (was === undefined)
      return move === undefined
        ? wish
        : { ...wish, line: wish.line.map(end => ({ ...end, last: move(end.last) })) as typeof wish.line }
    const joints = before.accepted.filter(row => row.slabId === was.id).flatMap(row => row.joints)
    const endsWas = new Ends(was, edgeSpans(groundRings(pourGround(was, 'whole'))), joints)
    const spans = edgeSpans(groundRings(pourGround(now, 'whole')))
    const carrier = new Carrier({ slab: was, ends: endsWas }, now, spans, edit)
    const jointsNow = accepted.filter(row => row.slabId === now.id).flatMap(row => row.joints)
    const handed = mapKept(wish.line, end => carrier.carry(wish.id, end))
    const ends = new Ends(now, spans, jointsNow)
    const line = mapKept(handed, end => {
      const last = ends.at(end)
      return isBeside(last, end.last) ? end : { ...end, last }
    }) as typeof wish.line
    return line === wish.line ? wish : { ...wish, line }
  }) as Site['wishes']
  return accepted === after.accepted && wishes === after.wishes ? after : { ...after, accepted, wishes }
}
