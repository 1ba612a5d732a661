/** A middle and a radius, or how far across. */
import type { Pt } from '../../../shared/document/primitives'
import type { Drawing, Mark } from './drawing'
import { drawTwoPoints, type TwoPoints } from './drawTwoPoints'

const reach = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

const circle: TwoPoints = {
  firstWords: 'the middle',
  secondPrompt: 'Click how far it reaches, or type its radius or how far across.',
  fields: [
    { id: 'radius', label: 'Radius', reads: 'length' },
    { id: 'across', label: 'Across', reads: 'length' },
  ],
  measure: (middle, at) => ({ radius: reach(middle, at), across: 2 * reach(middle, at) }),
  drawn(middle, at) {
    const radiusM = reach(middle, at)
    return radiusM === 0 ? null : { kind: 'shape', shape: { kind: 'circle', center: middle, radiusM } }
  },
  second(middle, { radius, across }, at) {
    const radiusM = radius ?? (across !== undefined ? across / 2 : at ? reach(middle, at) : 0)
    return radiusM > 0 ? [middle[0] + radiusM, middle[1]] : 'radius'
  },
}

export const drawCircle = (mark: Mark | null): Drawing => drawTwoPoints(circle, mark)
