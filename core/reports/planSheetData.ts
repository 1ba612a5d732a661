/** From a plan to what the sheets and exports are drawn from. */
import type { Caster } from '../../shared/document/caster'
import type { Slab } from '../../shared/document/slab'
import type { Ring } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { resolvePath } from '../geometry/resolvePath'
import { stepLines } from '../geometry/stepLines'
import type { Plan, PlannedPour } from '../plan/plan'
import type { PlannedAlternative } from '../plan/planAlternatives'
import { planContraction } from '../plan/planContraction'
import { directionLine, wishedDeg } from '../pours/wishes/wishedDirection'
import { thickenedShapes } from '../quantities/thickenedShapes'
import type { ResolvedCaster } from '../sun/resolveCaster'
import { isoWithOffset } from '../sun/siteDay'
import { sunPosition } from '../sun/sunPosition'
import { hourLabel } from './hourLabel'
import { entityNames } from './nameEntities'
import type {
  CasterShape,
  SheetAlternative,
  SheetCaster,
  SheetData,
  SheetDay,
  SheetFinishPart,
  SheetPour,
  SheetSlab,
  SheetSunShares,
  SheetWish,
} from './sheetData'

export function sheetSlab(slab: ResolvedSlab, drawn: Slab | undefined, finishName: (id: string) => string): SheetSlab {
  const named = <T extends { readonly id: string; readonly name?: string | undefined }>(
    list: readonly T[] | undefined,
    id: string,
  ) => {
    const name = list?.find(item => item.id === id)?.name
    return name === undefined ? {} : { name }
  }
  const parts: SheetFinishPart[] = [
    ...slab.borders.map(b => ({
      id: b.id,
      kind: 'border' as const,
      ...named(drawn?.borders, b.id),
      finishName: finishName(b.finishId),
      widthM: b.widthM,
      areaM2: b.areaM2,
      lengthM: b.outerLengthM,
      innerLengthM: b.innerLengthM,
      centerLengthM: b.centerLengthM,
      shape: b.shape,
    })),
    ...slab.bands.map(b => ({
      id: b.id,
      kind: 'band' as const,
      ...named(drawn?.bands, b.id),
      finishName: finishName(b.finishId),
      widthM: b.widthM,
      areaM2: b.areaM2,
      lengthM: b.lengthM,
      shape: b.shape,
    })),
    ...slab.insets.map(i => ({
      id: i.id,
      kind: 'inset' as const,
      ...named(drawn?.insets, i.id),
      finishName: finishName(i.finishId),
      areaM2: i.areaM2,
      shape: i.shape,
    })),
  ]
  return {
    id: slab.id,
    name: slab.name,
    finishName: finishName(slab.finishId),
    levelM: slab.levelM,
    thicknessM: drawn?.thicknessM ?? 0,
    outline: slab.outline,
    openings: slab.openings.map(o => ({
      id: o.id,
      kind: o.kind,
      ...named(drawn?.openings, o.id),
      ring: o.ring,
      areaM2: o.areaM2,
    })),
    net: slab.net,
    finishParts: parts,
    field: slab.field,
    thickened: drawn ? thickenedShapes(slab, drawn) : [],
    steps: (drawn?.steps ?? []).map(each => stepLines(slab.outline, each)),
    grossAreaM2: slab.grossAreaM2,
    openingAreaM2: slab.openingAreaM2,
    netAreaM2: slab.netAreaM2,
    fieldAreaM2: slab.fieldAreaM2,
    perimeterM: slab.perimeterM,
  }
}

const flatPath = (path: Parameters<typeof resolvePath>[0], id: string): Ring => flattenRing(resolvePath(path, id).ring)

export function casterShape(caster: Caster): CasterShape {
  switch (caster.kind) {
    case 'building':
      return {
        form: 'rings',
        rings: [caster.footprint, ...(caster.courtyards ?? [])].map(path => flatPath(path, caster.id)),
      }
    case 'cover':
      return { form: 'rings', rings: [flatPath(caster.outline, caster.id)] }
    case 'wall':
      return { form: 'line', points: caster.line }
    case 'tree':
      return { form: 'circle', center: caster.at, radiusM: caster.crownRadiusM }
  }
}

/** The top is the ridge where there is one. */
function sheetCaster({ caster, solids }: ResolvedCaster): SheetCaster {
  const drawnTopM = caster.kind === 'building' ? caster.eaveM : caster.topM
  return {
    id: caster.id,
    kind: caster.kind,
    name: caster.name,
    shape: casterShape(caster),
    topM: solids.reduce((top, solid) => Math.max(top, solid.topM), drawnTopM),
    baseM: caster.kind === 'cover' ? caster.undersideM : caster.baseM,
  }
}

export function sheetPour(pour: PlannedPour, quantities: Plan['quantities']): SheetPour {
  const concrete = quantities.find(q => q.pourId === pour.id && q.id.endsWith('concrete-order'))
  return {
    id: pour.id,
    number: pour.number,
    slabId: pour.slabId,
    region: pour.region,
    areaM2: pour.areaM2,
    order: pour.order,
    day: pour.day,
    date: pour.date,
    proposed: pour.proposed,
    ...(concrete === undefined ? {} : { concreteM3: concrete.value }),
  }
}

/** Shares at the hours shown, out of the steps of the day; an hour between two steps takes the nearer one. */
function sharesAt(hoursMs: readonly number[], plan: Plan, shares: Plan['shade']['slabShares']): SheetSunShares[] {
  const { instants } = plan.shade
  const steps = hoursMs.map(ms =>
    instants.reduce((best, at, i) => (Math.abs(at - ms) < Math.abs(instants[best]! - ms) ? i : best), 0),
  )
  return [...shares].map(([id, all]) => ({ id, sunShare: steps.map(step => all[step] ?? null) }))
}

function sheetDays({ days }: Plan): SheetDay[] {
  return days.map((day, i) => {
    const earlier = days.slice(0, i)
    const isFresh = ({ afterTasks }: (typeof days)[number]): boolean =>
      day.date !== null && afterTasks.some(({ task, date }) => task === 'openToFeet' && date >= day.date!)
    const { day: number, date, pourIds, closedWayIds, waysReopen } = day
    return {
      day: number,
      date,
      pourIds,
      closedWayIds,
      waysReopen,
      freshPourIds: earlier.filter(isFresh).flatMap(d => d.pourIds),
      hardPourIds: earlier.filter(d => !isFresh(d)).flatMap(d => d.pourIds),
    }
  })
}

const sheetAlternative = ({ id, kind, proposal, ...each }: PlannedAlternative): SheetAlternative => ({
  place: id.slice(0, id.length - kind.length),
  slabId: each.slabId,
  kind,
  pours: proposal.pours,
  joints: proposal.joints,
  figures: each.figures,
  price: each.price,
  shadeLineFt: kind === 'lanes' ? null : (proposal.cost.find(({ term }) => term === 'shadeLine')?.value ?? null),
  sentences: each.sentences,
})

function sheetWishes({ site, slabs }: Plan): SheetWish[] {
  return site.wishes.flatMap((wish): SheetWish[] => {
    const { id } = wish
    if (wish.kind === 'required') return [{ id, kind: wish.kind, line: wish.line.map(({ last }) => last) }]
    if (wish.kind === 'forbiddenLine') return [{ id, kind: wish.kind, line: wish.line }]
    if (wish.kind === 'forbiddenArea') return [{ id, kind: wish.kind, ring: resolvePath(wish.path, id).ring }]
    const slab = slabs.find(each => each.id === wish.slabId)
    const finish = site.finishes.find(each => each.id === slab?.finishId)
    const line = slab && directionLine(slab, wishedDeg(wish, finish))
    return line ? [{ id, kind: wish.kind, line }] : []
  })
}

/** @param alternatives of the same plan, for the sheet that shows them side by side */
export function planSheetData(plan: Plan, alternatives: readonly PlannedAlternative[] = []): SheetData {
  const { site, shade } = plan
  const { place, units } = site
  const finishName = (id: string): string => site.finishes.find(f => f.id === id)?.name ?? 'finish not named'
  const hoursMs = [...new Set(shade.shadows.map(s => s.ms))].sort((a, b) => a - b)
  return {
    siteName: site.name,
    siteId: site.id,
    date: plan.date,
    zone: place.zone,
    units,
    place: {
      latDeg: place.latDeg,
      lonDeg: place.lonDeg,
      northDeg: place.northDeg,
      ...(place.name === undefined ? {} : { name: place.name }),
    },
    slabs: plan.slabs.map(slab =>
      sheetSlab(
        slab,
        site.slabs.find(s => s.id === slab.id),
        finishName,
      ),
    ),
    casters: plan.casters.map(sheetCaster),
    points: plan.points.map(({ id, name, at }) => ({ id, name, at })),
    pours: plan.pours.map(pour => sheetPour(pour, plan.quantities)),
    joints: plan.joints,
    alternatives: alternatives.map(sheetAlternative),
    contraction: plan.slabs.flatMap(({ id }) => {
      const source = site.slabs.find(s => s.id === id)
      return source ? planContraction(source, plan.pours).lines : []
    }),
    days: sheetDays(plan),
    ways: (site.access?.ways ?? []).map(({ id, name, at, widthM }) => ({
      id,
      name: name ?? 'way in and out',
      at,
      widthM,
    })),
    ...(site.wishes.length > 0 ? { wishes: sheetWishes(plan) } : {}),
    ...(site.furnishings ? { furnishings: site.furnishings } : {}),
    ...(site.notes ? { notes: site.notes } : {}),
    ...(site.tapes ? { tapes: site.tapes } : {}),
    hours: hoursMs.map(ms => {
      const { altitudeDeg, azimuthDeg } = sunPosition(ms, place.latDeg, place.lonDeg)
      return { time: isoWithOffset(ms, place.zone), ...hourLabel(ms, place.zone, units), altitudeDeg, azimuthDeg }
    }),
    shadows: shade.shadows.map(s => ({
      time: isoWithOffset(s.ms, place.zone),
      slabId: s.slabId,
      polygons: s.polygons,
      dapple: s.dapple.map(d => d.region),
    })),
    slabShares: sharesAt(hoursMs, plan, shade.slabShares),
    pourShares: sharesAt(hoursMs, plan, shade.pourShares),
    quantities: plan.quantities,
    ...(site.prices || site.bid ? { bid: { prices: site.prices ?? [], bid: site.bid ?? {} } } : {}),
    names: entityNames(site),
    problems: plan.problems,
  }
}
