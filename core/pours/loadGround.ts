/** What the loads of a pour cost by its area: trucks that go home part full, and loads the plant charges a fee for. */
import type { UnitSystem } from '../../shared/document/site'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { orderVolume } from '../quantities/concrete'
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

/** The loads of pours of one slab, ready to be asked about many areas. */
export interface LoadGround extends LoadsOf {
  readonly loadM3: number
  /** Areas that whole trucks cover, m². */
  readonly fullTruckM2: readonly number[]
}

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

export function loadGround(of: LoadsOf): LoadGround {
  const loadM3 = settingValue(of.settings, 'loadM3')
  const fullTruckM2 = Array.from({ length: mostTrucks }, (_, i) => fullTruckArea(i + 1, of, loadM3))
  return { ...of, loadM3, fullTruckM2 }
}

/** Adds what the loads of a pour cost, feet of joint. */
export function addLoadCost(areaM2: number, ground: LoadGround, w: Weights, terms: LoadTerms): void {
  const { orderM3, trucks, isShort } = loadsOfArea(areaM2, ground)
  terms.unusedTruck += w.unusedTruck * (trucks - orderM3 / ground.loadM3)
  if (isShort) terms.shortLoad += w.shortLoad
}

/** The weights of loads by the site's prices: price ÷ price of a foot of joint. */
export function loadWeights(settings: SettingOverrides | undefined): Pick<Weights, 'unusedTruck' | 'shortLoad'> {
  const footPrice = settingValue(settings, 'jointPriceM') * 0.3048
  return {
    unusedTruck: settingValue(settings, 'truckPrice') / footPrice,
    shortLoad: settingValue(settings, 'shortLoadPrice') / footPrice,
  }
}
