/** What the loads of a pour cost by its area: trucks that go home part full, and loads the plant charges a fee for. */
import type { UnitSystem } from '../../shared/document/site'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { type OrderRules, orderRules, orderVolume, overRunOf, roundUp } from '../quantities/concrete'
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

export interface LoadSizes {
  /** Of a full truck. */
  readonly loadM3: number
  /** Below it a load has its fee. */
  readonly shortLoadM3: number
}

export const loadSizes = (settings: SettingOverrides | undefined): LoadSizes => ({
  loadM3: settingValue(settings, 'loadM3'),
  shortLoadM3: settingValue(settings, 'shortLoadM3'),
})

/** What loads are reckoned from, the settings read once: a search asks about thousands of areas. */
export interface LoadRules extends LoadSizes {
  readonly thicknessM: number
  readonly order: OrderRules
}

export const loadRules = (of: LoadsOf): LoadRules => ({
  ...loadSizes(of.settings),
  thicknessM: of.thicknessM,
  order: orderRules(of),
})

/** Loads of an order (m³, > 0). */
export function loadsOfOrder(orderM3: number, { loadM3, shortLoadM3 }: LoadSizes): PourLoads {
  const trucks = Math.max(1, Math.ceil((orderM3 - roundOffM3) / loadM3))
  const lastM3 = orderM3 - (trucks - 1) * loadM3
  return { orderM3, trucks, isShort: lastM3 < shortLoadM3 - roundOffM3 }
}

/** Loads of a pour of even thickness; thickened edges and steps are left out. */
export const loadsOfArea = (areaM2: number, rules: LoadRules): PourLoads =>
  loadsOfOrder(orderVolume(areaM2 * rules.thicknessM, rules.order), rules)

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
export interface LoadGround {
  readonly rules: LoadRules
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
function fullTruckArea(trucks: number, rules: LoadRules): number {
  const whole = trucks * rules.loadM3
  let low = 0
  let high = whole / rules.thicknessM
  // The order grows with the area in steps.
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (loadsOfArea(middle, rules).trucks <= trucks) low = middle
    else high = middle
  }
  return low * (1 - 1e-9)
}

function loadCost(areaM2: number, rules: LoadRules, w: LoadWeights): LoadTerms {
  const { orderM3, trucks, isShort } = loadsOfArea(areaM2, rules)
  return { unusedTruck: w.unusedTruck * (trucks - orderM3 / rules.loadM3), shortLoad: isShort ? w.shortLoad : 0 }
}

/** Areas at which the order goes up a step, either side of each: between them the loads cost the same. */
function stepAreas({ thicknessM, order: rules }: LoadRules, capM2: number): number[] {
  const areas = [0, capM2]
  const { pumpM3, stepM3 } = rules
  const limitM2 = rules.limitM3 / thicknessM
  for (const volumeM3 of [0, capM2 * thicknessM]) {
    const overRun = overRunOf(volumeM3, rules)
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
function envelopeOf(rules: LoadRules, capM2: number, w: LoadWeights): EnvelopePoint[] {
  const hull: EnvelopePoint[] = []
  for (const areaM2 of stepAreas(rules, capM2)) {
    const terms = loadCost(areaM2, rules, w)
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
  const rules = loadRules(of)
  const weights = loadWeights(of.settings)
  const fullTruckM2 = Array.from({ length: mostTrucks }, (_, i) => fullTruckArea(i + 1, rules))
  return { rules, fullTruckM2, weights, envelope: envelopeOf(rules, capM2, weights) }
}

/** Adds what the loads of a pour cost, feet of joint. */
export function addLoadCost(areaM2: number, { rules, weights }: LoadGround, terms: LoadTerms): void {
  const own = loadCost(areaM2, rules, weights)
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
