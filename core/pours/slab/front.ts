/** How far the concrete has come along the placing direction, and the area that is behind it. */
import type { CurveRegion } from '../../geometry/curve'
import { areaBehind, type Direction } from '../day/strips'
import { toCutRegion } from '../region/cutRegion'
import { extentOf } from '../region/minimumBox'

export interface SlabFront {
  /** Of the pour in the placing direction. */
  readonly lengthM: number
  /** Area covered when the concrete has come this far, m². */
  readonly areaTo: (comeM: number) => number
  /** How far it has come when this area is covered. */
  readonly comeFor: (areaM2: number) => number
}

export function slabFront(region: CurveRegion, direction: Direction): SlabFront {
  const cut = toCutRegion(region)
  const [from, to] = extentOf(cut.rings[0]!, direction[0], direction[1])
  const lengthM = to - from
  const areaTo = (comeM: number): number =>
    comeM <= 0 ? 0 : comeM >= lengthM ? cut.areaM2 : areaBehind(cut, direction, from + comeM)
  return {
    lengthM,
    areaTo,
    comeFor(areaM2) {
      let [low, high] = [0, lengthM]
      for (let turn = 0; turn < 50 && high - low > 1e-6; turn++) {
        const middle = (low + high) / 2
        if (areaTo(middle) < areaM2) low = middle
        else high = middle
      }
      return (low + high) / 2
    },
  }
}
