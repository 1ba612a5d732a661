/** Keeps labels off each other and off what stands over the plan: first come, first placed. */
import { pointBounds } from '../../../core/geometry/bounds'
import type { Pt } from '../../../shared/document/primitives'

export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export const around = (at: Pt, width: number, height: number): Rect => ({
  x: at[0] - width / 2,
  y: at[1] - height / 2,
  width,
  height,
})

export const meet = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height

/** True when a straight line from `a` to `b` runs through a box. */
export function runsThrough({ x, y, width, height }: Rect, a: Pt, b: Pt): boolean {
  if (Math.max(a[0], b[0]) <= x || Math.min(a[0], b[0]) >= x + width) return false
  if (Math.max(a[1], b[1]) <= y || Math.min(a[1], b[1]) >= y + height) return false
  const sideOf = (px: number, py: number) => Math.sign((b[0] - a[0]) * (py - a[1]) - (b[1] - a[1]) * (px - a[0]))
  const side = sideOf(x, y)
  return side !== sideOf(x + width, y) || side !== sideOf(x, y + height) || side !== sideOf(x + width, y + height)
}

/** Of a level or upright line a little wider than nothing. */
function boxAbout(points: readonly Pt[]): Rect {
  const { minX, minY, maxX, maxY } = pointBounds(points)
  return { x: minX - 1, y: minY - 1, width: maxX - minX + 2, height: maxY - minY + 2 }
}

export interface LabelRoom {
  /**
   * Takes the first of the wished places that is free and in view, rather one that hides no line or place to spare;
   * null where none is free, or `mayHide` is false and each hides something.
   */
  take(wishes: readonly Pt[], width: number, height: number, mayHide?: boolean): Pt | null
  /** Marks a place as taken without asking. */
  block(rect: Rect): void
  /** A line of points which a label stands beside rather than on. */
  spareLine(points: readonly Pt[]): void
  /** A place which a label lies on only where there is no other. */
  spare(rect: Rect): void
}

export function labelRoom(view: Rect): LabelRoom {
  const taken: Rect[] = []
  const spared: Rect[] = []
  const lines: { readonly points: readonly Pt[]; readonly box: Rect }[] = []
  const isInView = (r: Rect): boolean =>
    r.x >= view.x && r.y >= view.y && r.x + r.width <= view.x + view.width && r.y + r.height <= view.y + view.height
  const hidesNothing = (r: Rect): boolean =>
    !spared.some(other => meet(r, other)) &&
    !lines.some(
      ({ points, box }) => meet(r, box) && points.some((to, i) => i > 0 && runsThrough(r, points[i - 1]!, to)),
    )
  return {
    take(wishes, width, height, mayHide = true) {
      let hiding: Pt | null = null
      for (const at of wishes) {
        const rect = around(at, width, height)
        if (!isInView(rect) || taken.some(other => meet(rect, other))) continue
        if (hidesNothing(rect)) {
          taken.push(rect)
          return at
        }
        hiding ??= at
      }
      if (!mayHide || hiding === null) return null
      taken.push(around(hiding, width, height))
      return hiding
    },
    block: rect => void taken.push(rect),
    spare: rect => void spared.push(rect),
    spareLine: points => void lines.push({ points, box: boxAbout(points) }),
  }
}
