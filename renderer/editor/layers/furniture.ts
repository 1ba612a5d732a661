import type { Stage } from '../../store/viewStore'
import type { Size } from '../camera/camera'
import type { Rect } from './labelRoom'

/** The drawing actions stand over the left of the plan. */
export const actionsPx = 82

/** In Numbers the scale bar stands over the buttons. */
const scaleTopPx = (stage: Stage): number => (stage === 'numbers' ? 104 : 56)

/** What stands over the plan in its corners: prompt and outline, north, scale bar, camera; in Sun the legend. */
export const furniture = ({ width, height }: Size, stage: Stage): readonly Rect[] => [
  { x: 0, y: 0, width: 214, height: 92 },
  { x: width - 96, y: 0, width: 96, height: 92 },
  { x: 0, y: height - scaleTopPx(stage), width: 290, height: scaleTopPx(stage) },
  { x: width - 350, y: height - 56, width: 350, height: 56 },
  ...(stage === 'sun' ? [{ x: width - 450, y: 0, width: 350, height: 92 }] : []),
]
