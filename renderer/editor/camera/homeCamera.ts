import type { Box } from '../../../core/geometry/bounds'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { outlineOf } from '../layers/drawCasters'
import { around, meet, type Rect } from '../layers/labelRoom'
import { type Camera, fitBox, panBy, type Size, toScreen, zoomAt } from './camera'

/** Half of what is drawn of a truck spot or a washout, with its name. */
const markPx = 26
/** What is drawn keeps this far from the edges of the window. */
const edgePx = 44

/** Room around the plan for its dimensions, in pixels: less on a narrow or a low window, so that the plan stays large. */
const marginOf = ({ width, height }: Size): number => Math.min(110, height * 0.16, width * 0.17)

export interface SeenPlan {
  readonly site: Pick<Site, 'access'>
  readonly slabs: readonly Pick<ResolvedSlab, 'outline'>[]
}

export interface PlanWindow {
  readonly size: Size
  /** What stands over the left of it. */
  readonly asidePx: number
  /** What stands over it in its corners. */
  readonly corners: readonly Rect[]
}

/** The whole of a box in view, and as far as a small step aside can have it no slab or mark under what stands over it. */
export function homeCamera(whole: Box, plan: SeenPlan, { size, asidePx, corners }: PlanWindow): Camera {
  const seen = { width: size.width - asidePx, height: size.height }
  const fitted = panBy(fitBox(whole, seen, marginOf(seen)), asidePx, 0)
  const { access } = plan.site
  const noGo = (access?.noGo ?? []).flatMap(path => outlineOf(path).map(({ from }) => from))
  const spots = access ? [...access.truckSpots, ...access.pumpSpots, ...access.washouts, ...access.ways] : []
  const isOver = (at: Pt, halfPx: number) => corners.some(corner => meet(around(at, 2 * halfPx, 2 * halfPx), corner))
  const isSeen = ([x, y]: Pt, within: number) =>
    x >= asidePx + within && x <= size.width - within && y >= within && y <= size.height - within
  const marks = spots.map(({ at }) => at).filter(at => isSeen(toScreen(fitted, at), 0))
  const vertices = [
    ...plan.slabs.flatMap(({ outline }) => outline.map(({ from }) => from)),
    ...noGo.filter(at => isSeen(toScreen(fitted, at), edgePx)),
  ]
  const covered = (camera: Camera): number =>
    marks.filter(at => isOver(toScreen(camera, at), markPx)).length +
    vertices.filter(at => isOver(toScreen(camera, at), 0)).length
  const keepsAll = (camera: Camera): boolean =>
    marks.every(at => isSeen(toScreen(camera, at), 0)) && vertices.every(at => isSeen(toScreen(camera, at), edgePx))
  if (covered(fitted) === 0) return fitted
  const middle: Pt = [(size.width + asidePx) / 2, size.height / 2]
  for (const step of stepsAside) {
    const camera = panBy(zoomAt(fitted, middle, step.factor), step.dx, step.dy)
    if (keepsAll(camera) && covered(camera) === 0) return camera
  }
  return fitted
}

interface StepAside {
  readonly factor: number
  readonly dx: number
  readonly dy: number
}

/** The smallest first: a plan a twentieth smaller weighs as much as one moved 20 px. */
const stepsAside: readonly StepAside[] = [1, 0.95, 0.9, 0.85, 0.8]
  .flatMap(factor =>
    [0, 12, -12, 24, -24, 36, -36, 48, -48, 64, -64].flatMap(dx =>
      [0, 12, -12, 24, -24, 36, -36, 48, -48, 64, -64].map((dy): StepAside => ({ factor, dx, dy })),
    ),
  )
  .sort((a, b) => weightOf(a) - weightOf(b))

function weightOf({ factor, dx, dy }: StepAside): number {
  return 400 * (1 - factor) + Math.hypot(dx, dy)
}
