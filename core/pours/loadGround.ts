/** What the loads of a pour cost by its area: trucks that go home part full, and loads the plant charges a fee for. */
import type { UnitSystem } from '../../shared/document/site'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { orderTerms, orderVolume, roundUp } from '../quantities/concrete'
import type { Weights } from './weights'

export interface PourLoads {
  readonly orderM3: number
  readonly trucks: number
  /** The last load is under the plant's least load without a fee. */
  readonly isShort: boolean
}

export interface LoadsOf {
  /** Of the slab (m), > 0. */
  readonly thicknessM: number
  readonly pumped: boolean
  readonly units: UnitSystem
  readonly settings: SettingOverrides | undefined
}

/** A volume this close to whole trucks is whole (m³). */
const roundOffM3 = 1e-9

/** Loads of an order (m³, > 0). */
export function loadsOfOrder(orderM3: number, settings: SettingOverrides | undefined): PourLoads {
  const loadM3 = settingValue(settings, 'loadM3')
  const trucks = Math.max(1, Math.ceil((orderM3 - roundOffM3) / loadM3))
  const lastM3 = orderM3 - (trucks - 1) * loadM3
  return { orderM3, trucks, isShort: lastM3 < settingValue(settings, 'shortLoadM3') - roundOffM3 }
}

/** Loads of a pour of even thickness; thickened edges and steps are left out. */
export const loadsOfArea = (areaM2: number, { thicknessM, settings, ...of }: LoadsOf): PourLoads =>
  loadsOfOrder(orderVolume({ ...of, settings, volumeM3: areaM2 * thicknessM }), settings)

export interface LoadTerms {
  unusedTruck: number
  shortLoad: number
}

/** A point of the cheapest mix of pours: loads cost no less than the line from point to point. */
interface EnvelopePoint {
  readonly areaM2: number
  readonly cost: number
}

/** The loads of pours of one slab, ready to be asked about many areas. */
export interface LoadGround extends LoadsOf {
  readonly loadM3: number
  /** Areas that whole trucks cover, m². */
  readonly fullTruckM2: readonly number[]
  /** By the site's prices. */
  readonly weights: LoadWeights
  readonly envelope: readonly EnvelopePoint[]
}

export type LoadWeights = Pick<Weights, 'unusedTruck' | 'shortLoad'>

/** Most trucks of one pour for which whole truckloads are looked at. */
const mostTrucks = 4

/** The most area that an order of `trucks` full trucks covers. */
function fullTruckArea(trucks: number, of: LoadsOf, loadM3: number): number {
  const whole = trucks * loadM3
  let low = 0
  let high = whole / of.thicknessM
  // The order grows with the area in steps.
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (loadsOfArea(middle, of).trucks <= trucks) low = middle
    else high = middle
  }
  return low * (1 - 1e-9)
}

function loadCost(areaM2: number, of: LoadsOf, loadM3: number, w: LoadWeights): LoadTerms {
  const { orderM3, trucks, isShort } = loadsOfArea(areaM2, of)
  return { unusedTruck: w.unusedTruck * (trucks - orderM3 / loadM3), shortLoad: isShort ? w.shortLoad : 0 }
}

/** Areas at which the order goes up a step, either side of each: between them the loads cost the same. */
function stepAreas(of: LoadsOf, capM2: number): number[] {
  const { thicknessM, pumped, units, settings } = of
  const areas = [0, capM2]
  const limitM2 = settingValue(settings, 'overRunLimitM3') / thicknessM
  for (const volumeM3 of [0, capM2 * thicknessM]) {
    const { overRun, pumpM3, stepM3 } = orderTerms({ volumeM3, pumped, units, settings })
    const most = roundUp(capM2 * thicknessM * (1 + overRun) + pumpM3, stepM3)
    for (let order = stepM3; order <= most; order += stepM3) {
      const at = (order - pumpM3) / (1 + overRun) / thicknessM
      areas.push(at * (1 - 1e-8), at * (1 + 1e-8))
    }
  }
  areas.push(limitM2 * (1 - 1e-8), limitM2 * (1 + 1e-8))
  return areas.filter(a => a >= 0 && a <= capM2).sort((a, b) => a - b)
}

/** Convex hull from below of what loads cost by area (monotone chain). */
function envelopeOf(of: LoadsOf, capM2: number, loadM3: number, w: LoadWeights): EnvelopePoint[] {
  const hull: EnvelopePoint[] = []
  for (const areaM2 of stepAreas(of, capM2)) {
    const terms = loadCost(areaM2, of, loadM3, w)
    const point = { areaM2, cost: terms.unusedTruck + terms.shortLoad }
    while (hull.length > 1) {
      const [a, b] = [hull.at(-2)!, hull.at(-1)!]
      if ((b.cost - a.cost) * (point.areaM2 - a.areaM2) < (point.cost - a.cost) * (b.areaM2 - a.areaM2)) break
      hull.pop()
    }
    if (hull.length > 0 && point.areaM2 - hull.at(-1)!.areaM2 < 1e-12) {
      if (point.cost < hull.at(-1)!.cost) hull[hull.length - 1] = point
    } else hull.push(point)
  }
  return hull
}

/** The weights of loads by the site's prices: price ÷ price of a foot of joint. */
function loadWeights(settings: SettingOverrides | undefined): LoadWeights {
  const footPrice = settingValue(settings, 'jointPriceM') * 0.3048
  return {
    unusedTruck: settingValue(settings, 'truckPrice') / footPrice,
    shortLoad: settingValue(settings, 'shortLoadPrice') / footPrice,
  }
}

/** Whole truckloads and the cost of loads for pours of at most `capM2`. */
export function loadGround(of: LoadsOf, capM2: number): LoadGround {
  const loadM3 = settingValue(of.settings, 'loadM3')
  const weights = loadWeights(of.settings)
  const fullTruckM2 = Array.from({ length: mostTrucks }, (_, i) => fullTruckArea(i + 1, of, loadM3))
  return { ...of, loadM3, fullTruckM2, weights, envelope: envelopeOf(of, capM2, loadM3, weights) }
}

/** Adds what the loads of a pour cost, feet of joint. */
export function addLoadCost(areaM2: number, ground: LoadGround, terms: LoadTerms): void {
  const own = loadCost(areaM2, ground, ground.loadM3, ground.weights)
  terms.unusedTruck += own.unusedTruck
  terms.shortLoad += own.shortLoad
}

/** No k pours of this area together cost less for their loads (Jensen on the convex hull from below). */
export function leastLoadCost(areaM2: number, k: number, { envelope }: LoadGround): number {
  const mean = areaM2 / k
  for (let i = 1; i < envelope.length; i++) {
    const a = envelope[i - 1]!
    const b = envelope[i]!
    if (mean > b.areaM2) continue
    return k * (a.cost + ((b.cost - a.cost) * (mean - a.areaM2)) / (b.areaM2 - a.areaM2))
  }
  return k * (envelope.at(-1)?.cost ?? 0)
}
