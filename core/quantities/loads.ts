/** Truckloads of a pour: the order over what a truck brings. */
import { defaults, type SettingOverrides, settingValue } from '../../shared/settings'
import { type Quantity, quantity } from './quantity'

/** An order within this of whole loads is whole loads (of a load). */
const roundOff = 1e-9

/** Loads as the plant sends them: full ones and, last, what is left. `orderM3` > 0. */
export function loadFigure(
  whose: { readonly slabId: string; readonly pourId: string },
  orderM3: number,
  settings: SettingOverrides | undefined,
): Quantity {
  const loadM3 = settingValue(settings, 'loadM3')
  return quantity({
    id: `${whose.pourId}-loads`,
    label: 'Loads',
    ...whose,
    value: Math.ceil(orderM3 / loadM3 - roundOff),
    unit: 'loads',
    formula: 'roundUp(concrete to order ÷ full load, one load)',
    inputs: { 'concrete to order': [orderM3, 'm³'], 'full load': [loadM3, 'm³'], 'one load': [1, 'loads'] },
    source: defaults.loadM3.source,
  })
}
