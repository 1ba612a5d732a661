/** What a split asks of crew, trucks and edges, and its price by the settings. */
import type { Access, UnitSystem } from '../../../shared/document/site'
import { type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'
import { flattenRing } from '../../geometry/flattenRing'
import { placingMethod } from '../day/placingMethod'
import { loadRules, loadsOfArea } from '../loadGround'
import { type DaysInput, planDays } from '../order/planDays'
import { isUnder, reentrantAboveDeg } from '../pourCost'
import type { Proposal } from '../proposal'
import { interiorDegs, toCutRegion } from '../region/cutRegion'
import { innerArea } from '../region/innerArea'
import { minimumBox } from '../region/minimumBox'
import type { SiteGround } from '../siteGround'
import type { Alternative, AlternativeFigures, AlternativePrice } from './alternative'

export interface PricingGround {
  readonly slabId: string
  readonly part: 'whole' | 'field' | 'border'
  readonly thicknessM: number
  readonly pumped: boolean
  readonly units: UnitSystem
  readonly settings: SettingOverrides | undefined
  /** Truck and pump spots, and how far the chute reaches. */
  readonly access?: Access | undefined
  /** Null where nothing on the site tells one split from another, left out where nobody looked. */
  readonly onSite?: SiteGround | null
  /** The site as the order of the pours sees it. */
  readonly site: Omit<DaysInput, 'pours'>
}

/** No corner between joint and edge under 60°: ACPA joint layout. */
const acuteBelowDeg = 60

export function figuresOf(proposal: Proposal, ground: PricingGround): AlternativeFigures {
  const setting = (name: SettingName) => settingValue(ground.settings, name)
  const reachM = setting('reachM')
  const rules = loadRules(ground)
  let trucks = 0
  let shortLoads = 0
  let reentrantLeft = 0
  let cornersUnder60 = 0
  let outOfReachM2 = 0
  let beyondChuteM2 = 0
  const mixedMin: number[] = []
  let largestM2 = 0
  for (const { region, areaM2 } of proposal.pours) {
    const loads = loadsOfArea(areaM2, rules)
    trucks += loads.trucks
    if (loads.isShort) shortLoads++
    const cut = toCutRegion(region)
    for (const ring of cut.rings)
      for (const deg of interiorDegs(ring)) {
        if (deg > reentrantAboveDeg) reentrantLeft++
        else if (isUnder(deg, acuteBelowDeg)) cornersUnder60++
      }
    outOfReachM2 += innerArea(cut, minimumBox(cut.rings[0]!), reachM)
    const method = placingMethod(flattenRing(region.outer), ground.access).method
    if (method !== 'pump' && method !== 'chute') beyondChuteM2 += areaM2
    mixedMin.push(ground.onSite?.mixedSunMin(cut) ?? 0)
    largestM2 = Math.max(largestM2, areaM2)
  }
  const { slabId, part } = ground
  const { pours } = planDays({
    ...ground.site,
    pours: proposal.pours.map(({ region, areaM2 }, i) => ({
      ...{ id: `pour-${i + 1}`, number: `${i + 1}`, slabId, part, region, areaM2 },
    })),
    budget: 'small',
  })
  const dates = pours.map(({ date }) => date)
  return {
    crewDays: proposal.pours.length / Math.max(1, Math.floor(setting('poursPerCrewDay'))),
    trucks,
    shortLoads,
    jointM: proposal.joints.reduce((sum, { lengthM }) => sum + lengthM, 0),
    reentrantLeft,
    cornersUnder60,
    outOfReachM2,
    beyondChuteM2,
    ...(ground.onSite === undefined
      ? { mixedSunPours: null, mixedSunMin: null, mixedSunWorstMin: null }
      : {
          mixedSunPours: mixedMin.filter(minutes => minutes > 0).length,
          mixedSunMin: mixedMin.reduce((sum, minutes) => sum + minutes, 0),
          mixedSunWorstMin: Math.max(0, ...mixedMin),
        }),
    largestM2,
    lastPourDate: dates.includes(null) ? null : (dates.toSorted().at(-1) ?? null),
  }
}

export function priceOf(figures: AlternativeFigures, settings: SettingOverrides | undefined): AlternativePrice {
  const crewDays = figures.crewDays * settingValue(settings, 'crewDayPrice')
  const trucks = figures.trucks * settingValue(settings, 'truckPrice')
  const shortLoads = figures.shortLoads * settingValue(settings, 'shortLoadPrice')
  const joints = figures.jointM * settingValue(settings, 'jointPriceM')
  return { crewDays, trucks, shortLoads, joints, total: crewDays + trucks + shortLoads + joints }
}

export function priceAlternative(kind: Alternative['kind'], proposal: Proposal, ground: PricingGround): Alternative {
  const figures = figuresOf(proposal, ground)
  return { kind, proposal, figures, price: priceOf(figures, ground.settings) }
}
