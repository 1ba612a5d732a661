/** Two opposite corners, or a corner with width and depth. Sides run along and up the drawing. */
import type { Drawing, Mark } from './drawing'
import { drawTwoPoints, type TwoPoints } from './drawTwoPoints'

const rectangle: TwoPoints = {
  firstWords: 'the first corner',
  secondPrompt: 'Click the opposite corner, or type width and depth.',
  fields: [
    { id: 'width', label: 'Width', reads: 'length' },
    { id: 'depth', label: 'Depth', reads: 'length' },
  ],
  measure: (corner, at) => ({ width: Math.abs(at[0] - corner[0]), depth: Math.abs(at[1] - corner[1]) }),
  drawn([x, y], [toX, toY]) {
    const [widthM, depthM] = [Math.abs(toX - x), Math.abs(toY - y)]
    if (widthM === 0 || depthM === 0) return null
    return { kind: 'shape', shape: { kind: 'rectangle', at: [Math.min(x, toX), Math.min(y, toY)], widthM, depthM } }
  },
  second(corner, values, at) {
    const toward = (i: 0 | 1) => (at !== null && at[i] < corner[i] ? -1 : 1)
    const widthM = values.width ?? (at === null ? 0 : Math.abs(at[0] - corner[0]))
    const depthM = values.depth ?? (at === null ? 0 : Math.abs(at[1] - corner[1]))
    if (widthM === 0 || depthM === 0) return widthM === 0 ? 'width' : 'depth'
    return [corner[0] + toward(0) * widthM, corner[1] + toward(1) * depthM]
  },
}

export const drawRectangle = (mark: Mark | null): Drawing => drawTwoPoints(rectangle, mark)
