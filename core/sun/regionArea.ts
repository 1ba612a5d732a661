import type { Region } from '../geometry/curve'
import { signedDoubleArea } from './flatRing'

/** Area of a flat region, holes taken off, whichever way its rings run. */
export const regionArea = ({ ring, holes }: Region): number =>
  holes.reduce((sum, hole) => sum - Math.abs(signedDoubleArea(hole)) / 2, Math.abs(signedDoubleArea(ring)) / 2)
