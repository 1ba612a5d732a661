/** Retarder comes in whole packages: how many make a dose, and what a count of them makes. */
import { type SettingOverrides, settingValue } from '../../../shared/settings'
import { mostOnSiteMin } from '../../concrete/tables/retarderDose'

/**
 * Whole packages for a further delay of the concrete left in a drum, at least one: the nearest count, not the next
 * larger, since too much retarder holds the slab up. The label and the producer rule.
 */
export const packagesFor = (moreMin: number, leftM3: number, settings?: SettingOverrides): number =>
  Math.max(1, Math.round((moreMin * leftM3) / settingValue(settings, 'retarderPackageM3Min')))

/** Delay that so many packages make in the concrete left, minutes, held to the most on-site retarder buys. */
export const delayOfPackages = (count: number, leftM3: number, settings?: SettingOverrides): number =>
  leftM3 > 0 ? Math.min(mostOnSiteMin, (count * settingValue(settings, 'retarderPackageM3Min')) / leftM3) : 0
