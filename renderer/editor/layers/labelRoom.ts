/** Keeps labels off each other and off what stands over the plan: first come, first placed. */
import type { Pt } from '../../../shared/document/primitives'

export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export const around = ([x, y]: Pt, width: number, height: number): Rect => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
})

const meet = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height

export interface LabelRoom {
  /** Takes the first of the wished places that is free and in view; null where none is. */
  take(wishes: readonly Pt[], width: number, height: number): Pt | null
  /** Marks a place as taken without asking. */
  block(rect: Rect): void
}

export function labelRoom(view: Rect): LabelRoom {
  const taken: Rect[] = []
  const isInView = (r: Rect): boolean =>
    r.x >= view.x && r.y >= view.y && r.x + r.width <= view.x + view.width && r.y + r.height <= view.y + view.height
  return {
    take(wishes, width, height) {
      const at = wishes.find(wish => {
        const rect = around(wish, width, height)
        return isInView(rect) && !taken.some(other => meet(rect, other))
      })
      if (!at) return null
      taken.push(around(at, width, height))
      return at
    },
    block(rect) {
      taken.push(rect)
    },
  }
}
