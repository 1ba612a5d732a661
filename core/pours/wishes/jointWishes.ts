/** What the joints of one part of a slab should keep to, worked out into lines and shapes in drawing-frame meters. */
import type { Pt } from '../../../shared/document/primitives'
import type { CurveRing } from '../../geometry/curve'

/** A joint has to lie here; an end inside the slab goes on to the next edge or required joint. */
export interface RequiredLine {
  readonly id: string
  readonly from: Pt
  readonly to: Pt
}

/** No joint may cross it, meet it or run close beside it. */
export interface ForbiddenLine {
  readonly id: string
  readonly line: readonly Pt[]
}

/** No joint may run inside; along its edge one may. */
export interface ForbiddenArea {
  readonly id: string
  readonly ring: CurveRing
}

/** The border's own joint at a corner, from the slab's corner to the border's inner one. */
export interface Miter {
  readonly from: Pt
  readonly to: Pt
}

/** A band, or (width 0) a line between two finishes: a joint along it is out of sight. */
export interface HidingStrip {
  readonly from: Pt
  readonly to: Pt
  readonly widthM: number
}

/** Straight courses of a pattern: a joint along the line between two of them is out of sight. */
export interface Courses {
  /** Counter-clockwise from drawing-right. */
  readonly deg: number
  /** Where the lines lie; without it the pattern starts at the joint, wherever that is. */
  readonly lines?: { readonly at: Pt; readonly stepM: number }
}

export interface JointWishes {
  readonly required?: readonly RequiredLine[]
  readonly forbiddenLines?: readonly ForbiddenLine[]
  readonly forbiddenAreas?: readonly ForbiddenArea[]
  /** Joints along or square to one of these are preferred, degrees counter-clockwise from drawing-right. */
  readonly directionsDeg?: readonly number[]
  readonly courses?: readonly Courses[]
  readonly miters?: readonly Miter[]
  readonly hiding?: readonly HidingStrip[]
  /** No pour may be narrower, m. */
  readonly leastWidthM?: number
}

/** True where some joint has to lie, or may not lie: a split that does not look at the wishes will not do. */
export const isBinding = ({
  required = [],
  forbiddenLines = [],
  forbiddenAreas = [],
  leastWidthM = 0,
}: JointWishes): boolean => required.length + forbiddenLines.length + forbiddenAreas.length > 0 || leastWidthM > 0
