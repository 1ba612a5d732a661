/** The retarder in hand: what one package of it does, how many make a dose, and how many there are. */
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { type SettingOverrides, settingValue } from '../../../shared/settings'
import { mostOnSiteMin } from '../../concrete/tables/retarderDose'

export interface Retarder {
  readonly id: string
  readonly name: string
  readonly unit: string
  /** In `unit`. */
  readonly packageSize: number
  /** One package puts off one cubic meter by so much, m³·min; by the setting where the label's doses are not entered. */
  readonly packageM3Min: number
  /** Delays that the label's least and most dose make, min; undefined where they are not entered. */
  readonly label?: { readonly leastMin: number; readonly mostMin: number }
  /** Whole packages; undefined where no stock is entered. */
  readonly onHand?: number
}

/** What doses are counted with: the product where one is entered, else the setting. */
export interface RetarderOf {
  readonly retarder?: Retarder
  readonly settings?: SettingOverrides
}

/** The site's retarder: of several the first that is in stock; undefined where none is entered. */
export function siteRetarder({ materials, stock, settings }: Site): Retarder | undefined {
  const all = (materials ?? []).filter(({ kind }) => kind === 'retarder')
  const stocked = (id: string): number | undefined => stock?.find(({ materialId }) => materialId === id)?.onHand
  const product = all.find(({ id }) => (stocked(id) ?? 0) > 0) ?? all[0]
  if (!product) return undefined
  const { id, name, unit, packageSize, label } = product
  const onHand = stocked(id)
  return {
    ...{ id, name, unit, packageSize },
    packageM3Min: label
      ? (packageSize * label.leastBuysMin) / label.leastPerM3
      : settingValue(settings, 'retarderPackageM3Min'),
    ...(label
      ? {
          label: { leastMin: label.leastBuysMin, mostMin: (label.leastBuysMin * label.mostPerM3) / label.leastPerM3 },
        }
      : {}),
    // A package that was opened is none.
    ...(onHand === undefined ? {} : { onHand: Math.floor(onHand / packageSize + 1e-9) }),
  }
}

const packageM3Min = ({ retarder, settings }: RetarderOf): number =>
  retarder?.packageM3Min ?? settingValue(settings, 'retarderPackageM3Min')

/**
 * Whole packages for a further delay of the concrete left in a drum, at least one: the nearest count, not the next
 * larger, since too much retarder holds the slab up. The label and the producer rule.
 */
export const packagesFor = (moreMin: number, leftM3: number, of: RetarderOf = {}): number =>
  Math.max(1, Math.round((moreMin * leftM3) / packageM3Min(of)))

/**
 * Delay of the concrete left in a drum once so many packages more went in, minutes: with what it had before, held to
 * the most on-site retarder buys.
 */
export const delayInDrum = (inDrumMin: number, count: number, leftM3: number, of: RetarderOf = {}): number =>
  Math.min(mostOnSiteMin, inDrumMin + (leftM3 > 0 ? (count * packageM3Min(of)) / leftM3 : 0))

interface PlannedDose {
  readonly doseMin: number
  readonly inDrumMin: number
  readonly leftM3: number
}

/** Packages for all doses of a pour. */
export const packagesOfPour = (doses: readonly PlannedDose[], of: RetarderOf): number =>
  doses.reduce((sum, { doseMin, inDrumMin, leftM3 }) => sum + packagesFor(doseMin - inDrumMin, leftM3, of), 0)

/** Doses of a pour against the label and the stock. */
export function checkRetarder(pour: string, doses: readonly PlannedDose[], of: RetarderOf): Finding[] {
  const { retarder } = of
  if (!retarder || doses.length === 0) return []
  const found: Finding[] = []
  const { label, name, onHand } = retarder
  const off = label && doses.find(({ doseMin }) => doseMin > label.mostMin + 0.5 || doseMin < label.leastMin - 0.5)
  if (off)
    found.push({
      ...{ code: 'retarderOffLabel', severity: 'check' },
      values: { pour, name, doseMin: off.doseMin, leastMin: label.leastMin, mostMin: label.mostMin },
    })
  const wanted = packagesOfPour(doses, of)
  if (onHand !== undefined && wanted > onHand)
    found.push({ code: 'retarderShort', severity: 'check', values: { pour, name, wanted, onHand } })
  return found
}
