/** What every split of a slab is searched with besides its region and the largest pour. */
import type { Site } from '../../shared/document/site'
import { type SettingName, settingValue } from '../../shared/settings'
import { type LoadGround, loadGround } from '../pours/loadGround'
import type { Memo } from './memo'

export interface SplitGround {
  readonly loads: LoadGround
}

/** The settings that loads are reckoned from: others may change without a new search. */
const loadSettings = [
  'loadM3',
  'shortLoadM3',
  'overRunLimitM3',
  'overRunSmallShare',
  'overRunLargeShare',
  'pumpExtraM3',
  'orderStepYd3',
  'orderStepM3',
  'truckPrice',
  'shortLoadPrice',
  'jointPriceM',
] as const satisfies readonly SettingName[]

/** The same object as long as nothing in it changed. */
export function splitGround(memo: Memo, site: Site, slabId: string, capM2: number): SplitGround {
  const { settings, units, access } = site
  const thicknessM = site.slabs.find(({ id }) => id === slabId)?.thicknessM ?? 0
  const pumped = (access?.pumpSpots.length ?? 0) > 0
  const values = loadSettings.map(name => settingValue(settings, name))
  return memo.part('splitGround', slabId, [thicknessM, pumped, units, capM2, ...values], () => ({
    loads: loadGround({ thicknessM, pumped, units, settings }, capM2),
  }))
}
