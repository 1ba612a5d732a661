/** Every figure of the slabs and pours with its working, slab by slab. */
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import type { Quantity } from '../../shared/planJson'
import { defaults } from '../../shared/settings'
import type { Arc } from '../geometry/curve'
import { intersectCurves } from '../geometry/curveBoolean'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { curveArea } from '../geometry/ringArea'
import type { PourDayPlan } from '../pours/day/pourDay'
import { packagesFor } from '../pours/day/retarder'
import { baseFigures } from '../quantities/base'
import { concreteOrder, stepsOrder, stepsVolume } from '../quantities/concrete'
import { edgeLengths } from '../quantities/edgeLengths'
import { contractionLength, jointLengths } from '../quantities/jointLengths'
import { loadFigure } from '../quantities/loads'
import { materialFigures, retarderFigure } from '../quantities/materials'
import { pourFigures } from '../quantities/pourFigures'
import { claimFigures, finishAreas, slabAreas } from '../quantities/slabAreas'
import { type ThickenedShape, thickenedShapes } from '../quantities/thickenedShapes'
import type { Memo } from './memo'
import type { PlannedJoint, PlannedPour } from './plan'
import { planContraction } from './planContraction'

const isPumped = (site: Site): boolean => (site.access?.pumpSpots.length ?? 0) > 0

/** The arc a flight of steps stands on; undefined on a straight edge. */
const arcUnder = ({ outline }: ResolvedSlab, edgeId: string): Arc | undefined =>
  outline.find(edge => edge.edgeId === edgeId)?.arc

function slabFigures(site: Site, slab: ResolvedSlab, source: Slab, thickened: readonly ThickenedShape[]): Quantity[] {
  const order = { pumped: isPumped(site), units: site.units, settings: site.settings }
  const flightsM3 = source.steps.map(flight => stepsVolume(flight, arcUnder(slab, flight.edgeId)))
  return [
    ...slabAreas(slab),
    ...claimFigures(slab),
    ...finishAreas(slab, site.finishes),
    ...edgeLengths(slab, source),
    ...concreteOrder({
      idPrefix: slab.id,
      slabId: slab.id,
      areaM2: slab.netAreaM2,
      thicknessM: source.thicknessM,
      thickened: thickened.map(t => ({ areaM2: curveArea(t.shape), depthM: t.depthM })),
      stepsM3: flightsM3.reduce((sum, volume) => sum + volume, 0),
      ...order,
    }),
    ...stepsOrder(slab.id, flightsM3, order),
    ...baseFigures(slab, source, site.settings),
  ]
}

function pourConcrete(site: Site, pour: PlannedPour, source: Slab, thickened: readonly ThickenedShape[]): Quantity[] {
  const concrete = concreteOrder({
    idPrefix: pour.id,
    slabId: pour.slabId,
    pourId: pour.id,
    areaM2: pour.areaM2,
    thicknessM: source.thicknessM,
    thickened: thickened.map(t => ({
      areaM2: curveArea(intersectCurves(t.shape, [pour.region]).regions),
      depthM: t.depthM,
    })),
    stepsM3: 0,
    pumped: isPumped(site),
    units: site.units,
    settings: site.settings,
  })
  const order = concrete.find(({ id }) => id === `${pour.id}-concrete-order`)!
  return [...concrete, loadFigure({ slabId: pour.slabId, pourId: pour.id }, order.value, site.settings)]
}

export function planQuantities(
  memo: Memo,
  site: Site,
  slabs: readonly ResolvedSlab[],
  pours: readonly PlannedPour[],
  joints: readonly PlannedJoint[],
): Quantity[] {
  const { finishes, settings, access, units } = site
  return slabs.flatMap(slab => {
    const source = site.slabs.find(s => s.id === slab.id)!
    const thickened = memo.part('thickened', slab.id, [slab, source], () => thickenedShapes(slab, source))
    const own = memo.part('slabQuantities', slab.id, [slab, source, finishes, settings, access, units], () =>
      slabFigures(site, slab, source, thickened),
    )
    const construction = joints.filter(j => j.slabId === slab.id && j.kind === 'construction')
    const ofPours = pours
      .filter(p => p.slabId === slab.id)
      .flatMap(pour =>
        memo.part(
          'pourQuantities',
          pour.id,
          [pour.region, pour.number, slab, source, settings, access, units, site.materials],
          () => [
            ...pourFigures(pour, slab),
            ...pourConcrete(site, pour, source, thickened),
            ...materialFigures({ slabId: pour.slabId, pourId: pour.id }, pour.areaM2, site.materials ?? []),
          ],
        ),
      )
    const regions = pours.filter(p => p.slabId === slab.id).flatMap(({ region, number }) => [region, number])
    const contraction = memo.part('contraction', slab.id, [source.thicknessM, ...regions], () => {
      const { spacingM, lines } = planContraction(source, pours)
      return contractionLength(slab.id, spacingM, lines, id => pours.find(p => p.id === id)?.number ?? '?')
    })
    return [...own, ...jointLengths(slab.id, construction), ...contraction, ...ofPours]
  })
}

/** Packages of retarder, known once the days are planned. */
export function retarderFigures(pours: readonly PlannedPour[], dayPlans: readonly PourDayPlan[]): Quantity[] {
  return dayPlans.flatMap(({ pourId, doseMarks, input }) => {
    const pour = pours.find(({ id }) => id === pourId)
    const doses = doseMarks.map(({ beforeStripId, doseMin, inDrumMin, leftM3 }) => ({
      beforeStripId,
      packages: packagesFor(doseMin - inDrumMin, leftM3, input),
    }))
    const source = input.retarder?.label
      ? `${input.retarder.name}, by its label as entered`
      : defaults.retarderPackageM3Min.source
    const made = pour && retarderFigure({ slabId: pour.slabId, pourId }, doses, source)
    return made ? [made] : []
  })
}
