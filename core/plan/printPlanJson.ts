/** The plan as the object that `plan --json` prints. */
import type { PlanJson } from '../../shared/planJson'
import type { CurveRegion, Region, Ring } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import type { PourDayPlan } from '../pours/day/pourDay'
import { loadSizes, loadsOfOrder } from '../pours/loadGround'
import { pourAdjacency } from '../pours/pourAdjacency'
import { isoWithOffset } from '../sun/siteDay'
import type { Plan, SunShares } from './plan'
import type { PlannedAlternative } from './planAlternatives'
import { planContraction } from './planContraction'

type PrintedRing = [number, number][]

const printRing = (ring: Ring): PrintedRing => ring.map(([x, y]) => [x, y])

const printRegion = (region: Region) => ({ ring: printRing(region.ring), holes: region.holes.map(printRing) })

const printCurves = (region: CurveRegion) => ({
  ring: printRing(flattenRing(region.outer)),
  holes: region.holes.map(hole => printRing(flattenRing(hole))),
})

const printShares = (shares: ReadonlyMap<string, SunShares>) =>
  [...shares].map(([id, sunShare]) => ({ id, sunShare: [...sunShare] }))

const utcOf = (ms: number): string => `${new Date(Math.round(ms / 1000) * 1000).toISOString().slice(0, 19)}Z`

const printDayPlan = ({ pourId, plan, capacity }: PourDayPlan): PlanJson['dayPlans'][number] => ({
  pourId,
  startUtc: utcOf(plan.startMs),
  strips: plan.strips.map(strip => ({
    id: strip.id,
    areaM2: strip.areaM2,
    placeUtc: utcOf(strip.placeMs),
    readyUtc: utcOf(strip.readyMs),
    readyP10Utc: utcOf(strip.readyP10Ms),
    readyP90Utc: utcOf(strip.readyP90Ms),
    tooHardUtc: utcOf(strip.tooHardMs),
    stampFromUtc: utcOf(strip.stampFromMs),
    stampToUtc: utcOf(strip.stampToMs),
    doseMin: strip.doseMin,
  })),
  tasks: plan.tasks.map(({ stripId, name, fromMs, toMs, hands }) => ({
    stripId,
    name,
    fromUtc: utcOf(fromMs),
    toUtc: utcOf(toMs),
    hands,
  })),
  loads: plan.loads.map(({ no, batchMs, onSiteMs, volumeM3, portions }) => ({
    no,
    batchUtc: utcOf(batchMs),
    onSiteUtc: utcOf(onSiteMs),
    volumeM3,
    portions: portions.map(({ stripIds, doseMin }) => ({ stripIds: [...stripIds], doseMin })),
  })),
  slackMin: plan.slackMin,
  chanceOfMiss: plan.chanceOfMiss,
  capacityM2: capacity.capacityM2,
  capacityRule: capacity.rule,
  evaporationMaxKgM2H: plan.evaporationMaxKgM2H,
  crew: plan.crew.map(({ role, why }) => ({ role, why })),
  whatIf: plan.whatIf.map(row => ({
    case: row.case,
    slackMin: row.slackMin,
    firstLostStripId: row.firstLostStripId,
    startUtc: utcOf(row.startMs),
    doNext: row.doNext,
  })),
})

const printAlternative = ({ proposal, ...of }: PlannedAlternative): NonNullable<PlanJson['alternatives']>[number] => ({
  id: of.id,
  slabId: of.slabId,
  part: of.part,
  kind: of.kind,
  pours: proposal.pours.map(({ region, areaM2 }) => ({ areaM2, ...printCurves(region) })),
  joints: proposal.joints.map(({ from, to, lengthM }) => ({
    from: [from[0], from[1]],
    to: [to[0], to[1]],
    lengthM,
  })),
  proven: proposal.proven,
  gap: proposal.gap,
  cost: proposal.cost.map(term => ({ ...term })),
  figures: { ...of.figures },
  price: { ...of.price },
  sentences: of.sentences.map(sentence => ({ ...sentence })),
  ...(of.note === undefined ? {} : { note: of.note }),
})

function loadsOf(plan: Plan, pourId: string): PlanJson['pours'][number]['loads'] {
  const order = plan.quantities.find(({ id }) => id === `${pourId}-concrete-order`)
  if (!order) return null
  const { orderM3, trucks, isShort } = loadsOfOrder(order.value, loadSizes(plan.site.settings))
  return { orderM3, trucks, shortLoad: isShort }
}

export function printPlanJson(plan: Plan, alternatives?: readonly PlannedAlternative[]): PlanJson {
  const zone = plan.site.place.zone
  const iso = (ms: number) => isoWithOffset(ms, zone)
  const { shade } = plan
  const adjacency = pourAdjacency(plan.pours)
  const neighborsOf = (id: string) =>
    adjacency.pairs.flatMap(({ a, b, lengthM }) =>
      a === id || b === id ? [{ pourId: a === id ? b : a, lengthM }] : [],
    )
  return {
    format: 'slabwright-plan',
    version: 1,
    siteId: plan.site.id,
    date: plan.date,
    zone,
    slabs: plan.slabs.map(slab => ({
      id: slab.id,
      grossAreaM2: slab.grossAreaM2,
      openingAreaM2: slab.openingAreaM2,
      netAreaM2: slab.netAreaM2,
      fieldAreaM2: slab.fieldAreaM2,
      perimeterM: slab.perimeterM,
      openingPerimeterM: slab.openingPerimeterM,
      borders: slab.borders.map(({ id, areaM2, outerLengthM, innerLengthM, centerLengthM }) => ({
        id,
        areaM2,
        outerLengthM,
        innerLengthM,
        centerLengthM,
      })),
      bands: slab.bands.map(({ id, areaM2, lengthM }) => ({ id, areaM2, lengthM })),
      insets: slab.insets.map(({ id, areaM2 }) => ({ id, areaM2 })),
    })),
    pours: plan.pours.map(pour => ({
      id: pour.id,
      slabId: pour.slabId,
      part: pour.part,
      number: pour.number,
      proposed: pour.proposed,
      areaM2: pour.areaM2,
      ...printCurves(pour.region),
      aspect: pour.aspect,
      minCornerDeg: pour.minCornerDeg,
      order: pour.order,
      day: pour.day,
      date: pour.date,
      cost: (pour.cost ?? []).map(term => ({ ...term })),
      neighbors: neighborsOf(pour.id),
      openEdgeM: adjacency.openM.get(pour.id) ?? 0,
      loads: loadsOf(plan, pour.id),
    })),
    joints: plan.joints.map(joint => ({
      id: joint.id,
      slabId: joint.slabId,
      kind: joint.kind,
      pourIds: [...joint.pourIds],
      from: [joint.from[0], joint.from[1]],
      to: [joint.to[0], joint.to[1]],
      lengthM: joint.lengthM,
      locked: joint.locked,
    })),
    contractionJoints: plan.site.slabs
      .filter(({ id }) => plan.slabs.some(slab => slab.id === id))
      .flatMap(slab =>
        planContraction(slab, plan.pours).lines.map(({ pourId, from, to, lengthM }) => ({
          ...{ slabId: slab.id, pourId, lengthM },
          from: [from[0], from[1]] as [number, number],
          to: [to[0], to[1]] as [number, number],
        })),
      ),
    days: plan.days.map(day => ({
      ...day,
      pourIds: [...day.pourIds],
      closedWayIds: [...day.closedWayIds],
      waysReopen: day.waysReopen.map(way => ({ ...way })),
      afterTasks: day.afterTasks.map(task => ({ ...task, pourIds: [...task.pourIds] })),
    })),
    order: { ...plan.order, terms: plan.order.terms.map(term => ({ ...term })) },
    shade: {
      stepMin: shade.stepMin,
      minSunAltitudeDeg: shade.minSunAltitudeDeg,
      times: shade.instants.map(iso),
      sun: shade.sun.map(({ altitudeDeg, azimuthDeg }) => ({ altitudeDeg, azimuthDeg })),
      slabs: printShares(shade.slabShares),
      pours: printShares(shade.pourShares),
    },
    shadows: shade.shadows.map(shadow => ({
      time: iso(shadow.ms),
      slabId: shadow.slabId,
      areaM2: shadow.areaM2,
      polygons: shadow.polygons.map(printRegion),
      dapple: shadow.dapple.map(({ region, transmission }) => ({ ...printRegion(region), transmission })),
    })),
    points: plan.points.map(point => ({
      id: point.id,
      directSunMin: point.directSunMin,
      firstSun: point.firstSunMs === null ? null : iso(point.firstSunMs),
      lastSun: point.lastSunMs === null ? null : iso(point.lastSunMs),
    })),
    quantities: [...plan.quantities],
    ...(plan.site.bid === undefined ? {} : { bid: plan.site.bid }),
    dayPlans: plan.dayPlans.map(printDayPlan),
    ...(alternatives === undefined ? {} : { alternatives: alternatives.map(printAlternative) }),
    problems: [...plan.problems],
  }
}
