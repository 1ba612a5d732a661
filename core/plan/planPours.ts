/** The pours of the site and the joints between them: the accepted ones, else the first proposal. */
import type { AcceptedPours, PourPart } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import type { Finding, ProblemValue } from '../../shared/problem'
import { type SettingName, settingValue } from '../../shared/settings'
import type { CurveRegion } from '../geometry/curve'
import { edgeLength } from '../geometry/edgeLength'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { asBuiltFaces, isColdJoint } from '../pours/asBuiltFaces'
import { overCap } from '../pours/editing/editPart'
import { narrowPours } from '../pours/narrowPours'
import { calendarRules, type DaysPlan, planDays, type SunByHour } from '../pours/order/planDays'
import { isSunWelcome, mayStartApart, type PourSun, sunByHour } from '../pours/order/sunByHour'
import { type PourFace, type PourFaces, pourFaces } from '../pours/pourFaces'
import { pourShape } from '../pours/pourShape'
import type { Proposal } from '../pours/proposal'
import { openHours, provisionalDay } from '../pours/provisionalDay'
import { brokenWishes } from '../pours/wishes/brokenWishes'
import { isBinding } from '../pours/wishes/jointWishes'
import { isolationEdges } from '../quantities/edgeLengths'
import type { Exposure } from '../sun/exposure'
import { clockMin, type SiteDay } from '../sun/siteDay'
import { capsOf } from './capsOf'
import type { Memo } from './memo'
import type { PlannedJoint, PlannedPour } from './plan'
import type { SlabCapacity } from './planCapacity'
import { pouredIds } from './pouredIds'
import { pourParts, type SlabPart } from './pourParts'
import { pourShares } from './pourShares'
import { pourWishes } from './pourWishes'
import { type PourBudget, splitRegion } from './splitRegion'

type Unordered = Omit<PlannedPour, 'order' | 'day' | 'date' | 'firstTruck'>

interface Drawn {
  readonly pours: readonly Unordered[]
  readonly joints: readonly PlannedJoint[]
  readonly findings: readonly Finding[]
}

export interface PlannedPours {
  readonly pours: readonly PlannedPour[]
  readonly joints: readonly PlannedJoint[]
  /** Of the days: their hours are settled once the pours' day plans tell when each is done. */
  readonly ground: DaysPlan['ground']
  readonly order: DaysPlan['figures']
  readonly findings: readonly Finding[]
  /** The same pours in the order that suits pours done by this minute of the day, instead of the usual one. */
  readonly again: (doneMin: number) => Omit<PlannedPours, 'again'>
}

/** Where a corner of the slab is now: a joint that ends on it follows it. */
const cornerOf = (source: Slab | undefined, vertexId: string): Pt | undefined =>
  [source?.outline, ...(source?.openings ?? []).map(({ path }) => path)]
    .flatMap(path => path?.vertices ?? [])
    .find(({ id }) => id === vertexId)?.at

type DrawnPart = Drawn & { readonly unplanned: CurveRegion[]; readonly faces: readonly PourFace[] }

/** The accepted pours, poured ones as they were poured, and the parts of each region that no accepted pour claims. */
function drawAccepted(
  accepted: AcceptedPours,
  regions: readonly CurveRegion[],
  source: Slab | undefined,
): readonly DrawnPart[] {
  const cuts = regions.map(region => pourFaces(region, accepted, id => cornerOf(source, id)))
  return asBuiltFaces(cuts, accepted).map(cut => drawFaces(accepted, cut))
}

function drawFaces(accepted: AcceptedPours, { faces, joints, findings }: PourFaces): DrawnPart {
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
      locked: accepted.joints.find(j => j.id === joint.id)?.locked ?? isColdJoint(joint.id),
    })),
    findings,
    faces,
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

/** A part in several pieces: what one piece lacks may lie in another. */
function withoutFound(drawn: readonly Drawn[]): Finding[] {
  const there = new Set(drawn.flatMap(({ pours, joints }) => [...pours, ...joints].map(({ id }) => id)))
  return drawn
    .flatMap(({ findings }) => findings)
    .filter(({ code, at }) => !((code === 'pourLost' || code === 'jointOutside') && there.has(at?.entityId ?? '')))
}

/** Yields before each region that is split, and before the order. */
export function* planPours(
  memo: Memo,
  site: Site,
  slabs: readonly ResolvedSlab[],
  day: SiteDay,
  budget: PourBudget,
  capacities: readonly SlabCapacity[],
  exposures: ReadonlyMap<string, Exposure>,
): Generator<void, PlannedPours> {
  const capM2 = site.capacity?.capM2 ?? settingValue(site.settings, 'capM2')
  const { date } = day
  const caps = capsOf(site, capacities)
  const propose = (key: string, slab: ResolvedSlab, part: PourPart, region: CurveRegion): Proposal => {
    const capacity = capacities.find(own => own.slabId === slab.id)
    return splitRegion(memo, {
      ...{ site, slab, part, region, key, day, budget },
      capM2: capacity?.capM2 ?? settingValue(site.settings, 'capM2'),
      clock: capacity?.clock ?? null,
      wishes: pourWishes(memo, site, slab, part),
      exposed: exposures.get(slab.id),
    })
  }
  const drawn: Drawn[] = []
  const over: Finding[] = []
  const poured = pouredIds(site)
  const tellNarrow = (key: string, slab: ResolvedSlab, part: PourPart, region: CurveRegion, from: number) => {
    // A border is as narrow as it is drawn; a width of one's own is held elsewhere.
    if (part === 'border' || settingValue(site.settings, 'leastPourWidthM') > 0) return
    const pours = drawn.slice(from).flatMap(own => own.pours.filter(({ id }) => !poured.has(id)))
    const leastM = settingValue(site.settings, 'workWidthM')
    const inputs = [region, slab.name, leastM, ...pours.flatMap(own => [own.id, own.region])]
    over.push(...memo.part('narrowPours', key, inputs, () => narrowPours(slab.name, region, pours, leastM)))
  }
  const from = { pours: 0, joints: 0 }
  // Wishes that accepted pours went by are not looked for in what is left.
  const crossed = new Set(
    site.wishes.flatMap(({ id, slabId }) => (site.accepted.some(row => row.slabId === slabId) ? [id] : [])),
  )
  const addProposed = (key: string, slab: ResolvedSlab, part: PourPart, region: CurveRegion) => {
    const proposal = propose(key, slab, part, region)
    const piece = drawProposed(slab.id, part, proposal, from)
    drawn.push(piece)
    for (const { wishId } of proposal.joints) if (wishId !== undefined) crossed.add(wishId)
    from.pours += piece.pours.length
    from.joints += piece.joints.length
  }
  for (const slab of slabs) {
    const source = site.slabs.find(({ id }) => id === slab.id)
    for (const { part, regions } of memo.part('pourParts', slab.id, [slab], () => pourParts(slab))) {
      const accepted = site.accepted.find(a => a.slabId === slab.id && a.part === part)
      const cuts =
        accepted &&
        memo.part('pourFaces', `${slab.id} ${part}`, [accepted, ...regions], () =>
          drawAccepted(accepted, regions, source),
        )
      if (accepted && cuts) over.push(...tellBroken(memo, site, slab, { part, regions, accepted, cuts }))
      for (const [i, region] of regions.entries()) {
        const key = `${slab.id} ${part} ${i}`
        yield
        const before = drawn.length
        const faces = cuts?.[i]
        if (accepted && faces) {
          drawn.push(faces)
          over.push(...overCap(slab.id, accepted.pours, faces.faces, caps))
          faces.unplanned.forEach((rest, r) => {
            addProposed(`${key} rest ${r}`, slab, part, rest)
          })
        } else addProposed(key, slab, part, region)
        tellNarrow(key, slab, part, region, before)
      }
    }
    const isolation = memo.part('isolation', slab.id, [slab], () => isolationJoints(slab, site))
    drawn.push({ pours: [], joints: isolation, findings: [] })
  }
  yield
  const joints = drawn.flatMap(d => d.joints)
  const unordered = drawn.flatMap(d => d.pours)
  const usualDoneMin = typicalDone(day, capacities)
  const sun = orderSun(memo, site, unordered, day, capacities, exposures)
  const standing = site.casters.filter(({ kind }) => kind === 'building' || kind === 'wall')
  const inOrder = (slot: string, doneMin: number | undefined): Omit<PlannedPours, 'again'> => {
    const ordered = memo.part(
      'order',
      slot,
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
        doneMin,
        ...(sun?.inputs ?? []),
        ...slabs,
        ...unordered.map(p => p.region),
      ],
      () => putInOrder(site, slabs, unordered, { date, capM2, budget, usualDoneMin: doneMin, sun: sun?.by }),
    )
    return {
      ...ordered,
      joints,
      findings: [
        ...slabs.flatMap(tellPieces),
        ...tellMissesOnce(withoutFound(drawn), crossed),
        ...over,
        ...ordered.findings,
      ],
    }
  }
  const first = inOrder('site', usualDoneMin)
  const { usualDoneMin: usual } = first.ground
  return {
    ...first,
    again(doneMin) {
      const other = inOrder(`site, done at ${doneMin}`, doneMin)
      return { ...other, ground: { ...other.ground, usualDoneMin: usual } }
    },
  }
}

interface AcceptedPart extends SlabPart {
  readonly accepted: AcceptedPours
  readonly cuts: readonly DrawnPart[]
}

/** Wishes that accepted pours do not keep. */
function tellBroken(
  memo: Memo,
  site: Site,
  slab: ResolvedSlab,
  { part, regions, accepted, cuts }: AcceptedPart,
): readonly Finding[] {
  const wishes = pourWishes(memo, site, slab, part)
  if (!wishes || !isBinding(wishes)) return []
  return memo.part('brokenWishes', `${slab.id} ${part}`, [wishes, cuts], () => {
    const faces = cuts.flatMap(cut => cut.faces)
    return brokenWishes(accepted, regions, { faces, joints: cuts.flatMap(cut => cut.joints) }, wishes)
  })
}

const tellPieces = ({ id, net }: ResolvedSlab): Finding[] =>
  net.length < 2
    ? []
    : [{ code: 'slabInPieces', severity: 'note', values: { pieces: net.length }, at: { entityId: id } }]

/** A required line misses the slab only where it misses every part of it; then it is told once. */
function tellMissesOnce(findings: readonly Finding[], crossed: ReadonlySet<string>): Finding[] {
  const told = new Set(crossed)
  return findings.filter(({ code, at }) => {
    if (code !== 'requiredMisses' || !at) return true
    if (told.has(at.entityId)) return false
    told.add(at.entityId)
    return true
  })
}

/** The order is not asked for again for minutes of weather. */
export const doneStepMin = 30

/** When a typical pour's last print is done, minute of the day; undefined where crew and weather do not tell. */
function typicalDone(day: SiteDay, capacities: readonly SlabCapacity[]): number | undefined {
  const done = capacities.flatMap(({ clock, capM2 }) =>
    clock ? [clockMin(day, clock.startMs) + 60 * openHours(capM2, clock)] : [],
  )
  return done.length === 0 ? undefined : doneStepMin * Math.ceil(Math.max(...done) / doneStepMin)
}

interface OrderOf {
  readonly date: string
  readonly capM2: number
  readonly budget: PourBudget
  readonly usualDoneMin: number | undefined
  readonly sun: SunByHour | undefined
}

/** A crew's next pour starts on a quarter of an hour. */
const turnStepMin = 15

/** Sun by the hour of each pour, and all it was told from; null where every pour starts at the same hour. */
function orderSun(
  memo: Memo,
  site: Site,
  pours: readonly Unordered[],
  day: SiteDay,
  capacities: readonly SlabCapacity[],
  exposures: ReadonlyMap<string, Exposure>,
): { readonly by: SunByHour; readonly inputs: readonly unknown[] } | null {
  const { calendar, crew, conditions, settings } = site
  const setting = (name: SettingName): number => settingValue(settings, name)
  if (!mayStartApart(calendarRules(calendar, crew, setting), setting('poursPerCrewDay'))) return null
  const usual = provisionalDay(day, calendar, settings)
  const openH = (slabId: string, areaM2: number): number =>
    openHours(areaM2, capacities.find(own => own.slabId === slabId)?.clock ?? usual)
  const turnMin = Math.max(0, ...capacities.map(own => 60 * openH(own.slabId, own.capM2)))
  const suns = pours.map(({ id, slabId, region, areaM2 }): PourSun | null => {
    const exposed = exposures.get(slabId)
    if (!exposed || isSunWelcome(conditions)) return null
    const shares = pourShares(memo, id, exposed, region)
    return { exposed, shares, openH: openH(slabId, areaM2) }
  })
  const by = sunByHour(suns, turnStepMin * Math.ceil(turnMin / turnStepMin))
  return { by, inputs: [by.turnMin, ...suns.flatMap(sun => (sun ? [sun.shares, sun.openH] : [null]))] }
}

/** The computed order and days; what was accepted with an order or a date keeps it. */
function putInOrder(
  site: Site,
  slabs: readonly ResolvedSlab[],
  pours: readonly Unordered[],
  { date, capM2, budget, usualDoneMin, sun }: OrderOf,
): Omit<PlannedPours, 'joints' | 'again'> {
  const accepted = new Map(site.accepted.flatMap(a => a.pours.map(p => [p.id, p])))
  const plan = planDays({
    pours: pours.map(pour => {
      const wish = accepted.get(pour.id)
      const poured = wish?.poured
      const when = wish?.date ?? (poured && site.log?.find(entry => entry.id === poured.logId)?.date)
      return {
        ...pour,
        // Proposed pours get their numbers from the order: until then findings name them by id.
        number: pour.number === '' ? pour.id : pour.number,
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
    ...(usualDoneMin === undefined ? {} : { usualDoneMin }),
    ...(sun === undefined ? {} : { sun }),
    capM2,
    startDate: date,
    budget,
  })
  const byId = new Map(pours.map(pour => [pour.id, pour]))
  const numbered = numberInOrder(plan.pours.map(({ id, ...when }) => ({ ...byId.get(id)!, ...when })))
  const numbers = new Map(numbered.map(({ id, number }) => [id, number]))
  const ground = {
    ...plan.ground,
    pours: plan.ground.pours.map(pour => ({ ...pour, number: numbers.get(pour.id) ?? pour.number })),
  }
  return { pours: numbered, ground, order: plan.figures, findings: namePours(plan.findings, numbered) }
}

/** Ids of proposed pours in the values of findings, as the numbers they have now. */
function namePours(findings: readonly Finding[], pours: readonly PlannedPour[]): Finding[] {
  const numbers = new Map(pours.map(({ id, number }) => [id, number]))
  const named = (value: ProblemValue): ProblemValue =>
    typeof value === 'string' ? value.replace(/\bproposed-\d+\b/g, id => numbers.get(id) ?? id) : value
  return findings.map(finding => ({
    ...finding,
    values: Object.fromEntries(Object.entries(finding.values).map(([name, value]) => [name, named(value)])),
  }))
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
