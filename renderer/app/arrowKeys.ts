import type { Pt } from '../../shared/document/primitives'

/** Which way on the plan an arrow key points, by the name of the key. */
export const arrowKeys: Readonly<Record<string, Pt>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}
