/** The pours of the site and the joints between them: the accepted ones, else the first proposal. */
import type { AcceptedPours, PourPart } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { settingValue } from '../../shared/settings'
import type { CurveRegion } from '../geometry/curve'
import { edgeLength } from '../geometry/edgeLength'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { type DaysPlan, planDays } from '../pours/order/planDays'
import { pourFaces } from '../pours/pourFaces'
import { pourShape } from '../pours/pourShape'
import { type Proposal, proposePours } from '../pours/proposePours'
import { isolationEdges } from '../quantities/edgeLengths'
import type { Memo } from './memo'
import type { SlabCapacity } from './planCapacity'
import type { PlannedJoint, PlannedPour } from './plan'
import { pourParts } from './pourParts'

type Unordered = Omit<PlannedPour, 'order' | 'day' | 'date'>

interface Drawn {
  readonly pours: readonly Unordered[]
  readonly joints: readonly PlannedJoint[]
  readonly findings: readonly Finding[]
}

export interface PlannedPours {
  readonly pours: readonly PlannedPour[]
  readonly joints: readonly PlannedJoint[]
  readonly days: DaysPlan['days']
  readonly order: DaysPlan['figures']
  readonly findings: readonly Finding[]
}

/** The accepted pours, and the parts of the region that no accepted pour claims. */
function drawAccepted(accepted: AcceptedPours, region: CurveRegion): Drawn & { readonly unplanned: CurveRegion[] } {
  const { faces, joints, findings } = pourFaces(region, accepted)
  const { slabId, part } = accepted
  return {
    pours: faces.flatMap(face => {
      const pour = accepted.pours.find(p => p.id === face.pourId)
      if (!pour) return []
      const { region: shape, areaM2 } = face
      return [
        { id: pour.id, slabId, part, number: pour.number, proposed: false, region: shape, areaM2, ...pourShape(shape) },
      ]
    }),
    joints: joints.map(joint => ({
      ...joint,
      slabId,
      kind: 'construction',
      locked: accepted.joints.find(j => j.id === joint.id)?.locked ?? false,
    })),
    findings,
    unplanned: faces.flatMap(face => (face.pourId === null ? [face.region] : [])),
  }
}

/** Numbers go on from `from` over all slabs. */
function drawProposed(
  slabId: string,
  part: PourPart,
  proposal: Proposal,
  from: { readonly pours: number; readonly joints: number },
): Drawn {
  const pourId = (index: number) => `proposed-${from.pours + index + 1}`
  return {
    pours: proposal.pours.map((pour, i) => ({
      id: pourId(i),
      slabId,
      part,
      number: '',
      proposed: true,
      ...pour,
    })),
    joints: proposal.joints.map((joint, i) => ({
      id: `proposed-joint-${from.joints + i + 1}`,
      slabId,
      kind: 'construction',
      pourIds: joint.pours.map(pourId),
      from: joint.from,
      to: joint.to,
      lengthM: joint.lengthM,
      locked: false,
    })),
    findings: proposal.findings,
  }
}

const isolationJoints = (slab: ResolvedSlab, site: Site): PlannedJoint[] => {
  const source = site.slabs.find(s => s.id === slab.id)
  if (!source) return []
  return isolationEdges(slab, source).map(edge => ({
    id: `isolation-${edge.edgeId}`,
    slabId: slab.id,
    kind: 'isolation',
    pourIds: [],
    from: edge.from,
    to: edge.to,
    lengthM: edgeLength(edge),
    locked: false,
  }))
}

/** How hard to look for a split: 'small' while something is dragged. */
export type PourBudget = 'small' | 'full'

/** Yields before each region that is split, and before the order. */
export function* planPours(
  memo: Memo,
  site: Site,
  slabs: readonly ResolvedSlab[],
  date: string,
  budget: PourBudget,
  capacities: readonly SlabCapacity[],
): Generator<void, PlannedPours> {
  const capM2 = site.capacity?.capM2 ?? settingValue(site.settings, 'capM2')
  const propose = (key: string, slabId: string, part: PourPart, region: CurveRegion): Proposal => {
    const capM2 = capacities.find(own => own.slabId === slabId)?.capM2 ?? settingValue(site.settings, 'capM2')
    const inputs = [region, capM2]
    const split = () => proposePours({ slabId, part, region, capM2, budget })
    if (budget === 'full') return memo.part('proposal', key, inputs, split)
    // A full answer that still holds is kept through a drag of something else.
    return memo.known<Proposal>('proposal', key, inputs) ?? memo.part('quickProposal', key, inputs, split)
  }
  const drawn: Drawn[] = []
  const from = { pours: 0, joints: 0 }
  const addProposed = (key: string, slabId: string, part: PourPart, region: CurveRegion) => {
    const piece = drawProposed(slabId, part, propose(key, slabId, part, region), from)
    drawn.push(piece)
    from.pours += piece.pours.length
    from.joints += piece.joints.length
  }
  for (const slab of slabs) {
    for (const { part, regions } of memo.part('pourParts', slab.id, [slab], () => pourParts(slab))) {
      const accepted = site.accepted.find(a => a.slabId === slab.id && a.part === part)
      for (const [i, region] of regions.entries()) {
        const key = `${slab.id} ${part} ${i}`
        yield
        if (!accepted) {
          addProposed(key, slab.id, part, region)
          continue
        }
        const faces = memo.part('pourFaces', key, [region, accepted], () => drawAccepted(accepted, region))
        drawn.push(faces)
        faces.unplanned.forEach((rest, r) => {
          addProposed(`${key} rest ${r}`, slab.id, part, rest)
        })
      }
    }
    const isolation = memo.part('isolation', slab.id, [slab], () => isolationJoints(slab, site))
    drawn.push({ pours: [], joints: isolation, findings: [] })
  }
  yield
  const joints = drawn.flatMap(d => d.joints)
  const unordered = drawn.flatMap(d => d.pours)
  const standing = site.casters.filter(({ kind }) => kind === 'building' || kind === 'wall')
  const ordered = memo.part(
    'order',
    'site',
    [
      site.accepted,
      site.access,
      site.crew,
      site.calendar,
      site.settings,
      // Of the log only the dates count: a tap at the slab moves no pour.
      (site.log ?? []).map(({ id, date }) => `${id} ${date}`).join(),
      // Nobody has to walk around a tree's or a cover's shade.
      ...standing,
      capM2,
      date,
      budget,
      ...slabs,
      ...unordered.map(p => p.region),
    ],
    () => putInOrder(site, slabs, unordered, date, capM2, budget),
  )
  return {
    ...ordered,
    joints,
    findings: [...drawn.flatMap(d => d.findings), ...ordered.findings],
  }
}

/** The computed order and days; what was accepted with an order or a date keeps it. */
function putInOrder(
  site: Site,
  slabs: readonly ResolvedSlab[],
  pours: readonly Unordered[],
  date: string,
  capM2: number,
  budget: PourBudget,
): Omit<PlannedPours, 'joints'> {
  const accepted = new Map(site.accepted.flatMap(a => a.pours.map(p => [p.id, p])))
  const plan = planDays({
    pours: pours.map(pour => {
      const wish = accepted.get(pour.id)
      const poured = wish?.poured
      const when = wish?.date ?? (poured && site.log?.find(entry => entry.id === poured.logId)?.date)
      return {
        ...pour,
        isPoured: poured !== undefined,
        ...(wish?.order === undefined ? {} : { order: wish.order }),
        ...(when === undefined ? {} : { date: when }),
      }
    }),
    slabs,
    casters: site.casters,
    noGo: site.access?.noGo ?? [],
    ways: site.access?.ways ?? [],
    truckSpots: (site.access?.truckSpots ?? []).map(spot => spot.at),
    ...(site.crew === undefined ? {} : { crew: site.crew }),
    ...(site.calendar === undefined ? {} : { calendar: site.calendar }),
    ...(site.settings === undefined ? {} : { settings: site.settings }),
    capM2,
    startDate: date,
    budget,
  })
  const byId = new Map(pours.map(pour => [pour.id, pour]))
  return {
    pours: numberInOrder(plan.pours.map(({ id, ...when }) => ({ ...byId.get(id)!, ...when }))),
    days: plan.days,
    order: plan.figures,
    findings: plan.findings,
  }
}

/** Proposed pours are numbered as they are poured, past the numbers that accepted ones carry. */
function numberInOrder(pours: readonly PlannedPour[]): PlannedPour[] {
  const taken = new Set(pours.flatMap(pour => (pour.proposed ? [] : [pour.number])))
  let next = 0
  return pours.map(pour => {
    if (!pour.proposed) return pour
    do next++
    while (taken.has(`${next}`))
    return { ...pour, number: `${next}` }
  })
}
