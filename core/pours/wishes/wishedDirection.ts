/** A direction wished for the joints of a slab: its angle in the drawing, and the line it is shown by. */
import type { Finish } from '../../../shared/document/materials'
import type { JointWish } from '../../../shared/document/pours'
import type { Pt } from '../../../shared/document/primitives'
import { interiorPoint } from '../../geometry/interiorPoint'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'

export type DirectionWish = Extract<JointWish, { kind: 'direction' }>

/** Degrees counter-clockwise from drawing-right. A pattern whose turn is not set lies along drawing-right. */
export const wishedDeg = (
  { deg, relativeTo }: Pick<DirectionWish, 'deg' | 'relativeTo'>,
  finish: Finish | undefined,
): number => (relativeTo === 'pattern' ? deg + (finish?.patternDeg ?? 0) : deg)

/** The same line with −90 < deg ≤ 90: a joint has no head and no tail. */
export const foldDeg = (deg: number): number => {
  const turned = ((deg % 180) + 180) % 180
  return turned > 90 ? turned - 180 : turned
}

/** Length of the line against the side of a square of the slab's area: longer than a pour's plate. Own choice. */
const shareOfSide = 0.4

/** Where the direction is drawn: a line through the slab's middle; null for a slab without area. */
export function directionLine(slab: ResolvedSlab, deg: number): readonly [Pt, Pt] | null {
  const middle = slab.net[0] && interiorPoint(slab.net[0])
  if (!middle) return null
  const half = (shareOfSide * Math.sqrt(slab.netAreaM2)) / 2
  const [dx, dy] = [half * Math.cos((deg * Math.PI) / 180), half * Math.sin((deg * Math.PI) / 180)]
  return [
    [middle[0] - dx, middle[1] - dy],
    [middle[0] + dx, middle[1] + dy],
  ]
}
