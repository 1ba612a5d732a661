/** What stands on a slab and what is asked of its joints: steps, obstacles, joint lines wished for, ways in and out. */
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { stepLines } from '../../../core/geometry/stepLines'
import { type DirectionWish, directionLine, wishedDeg } from '../../../core/pours/wishes/wishedDirection'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { inPlan, type Pen, px, weight } from './pen'
import { addEdges, ringPath } from './ringPath'

export function drawParts(pen: Pen, site: Site, slabs: readonly ResolvedSlab[]): void {
  const { ctx, inks, camera } = pen
  inPlan(pen, () => {
    ctx.strokeStyle = inks.outline
    ctx.lineWidth = weight(pen, 1.6)
    const flights = new Path2D()
    for (const slab of slabs)
      for (const steps of site.slabs.find(({ id }) => id === slab.id)?.steps ?? [])
        addEdges(flights, stepLines(slab.outline, steps))
    ctx.stroke(flights)
  })
  for (const { at } of site.slabs.flatMap(({ obstacles }) => obstacles)) {
    const [x, y] = toScreen(camera, at)
    ctx.fillStyle = inks.paper
    ctx.strokeStyle = inks.outline
    ctx.lineWidth = 1.6 * inks.weight
    ctx.beginPath()
    ctx.arc(x, y, 5, 0, 2 * Math.PI)
    ctx.fill()
    ctx.stroke()
  }
}

/** The line a wished direction is shown by; null where its slab is not there. */
export function shownDirection(
  { slabs: sources, finishes }: Pick<Site, 'slabs' | 'finishes'>,
  slabs: readonly ResolvedSlab[],
  wish: DirectionWish,
): readonly [Pt, Pt] | null {
  const slab = slabs.find(({ id }) => id === wish.slabId)
  const source = sources.find(({ id }) => id === wish.slabId)
  if (!slab || !source) return null
  const finish = finishes.find(({ id }) => id === source.finishId)
  return directionLine(slab, wishedDeg(wish, finish))
}

function drawDirection({ ctx, inks }: Pen, [ax, ay]: Pt, [bx, by]: Pt): void {
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length]
  const head = (x: number, y: number, way: 1 | -1) => {
    for (const side of [1, -1]) {
      ctx.moveTo(x, y)
      ctx.lineTo(x - way * (11 * ux - side * 5 * uy), y - way * (11 * uy + side * 5 * ux))
    }
  }
  ctx.beginPath()
  ctx.moveTo(ax, ay)
  ctx.lineTo(bx, by)
  head(bx, by, 1)
  head(ax, ay, -1)
  ctx.lineWidth = 2 * inks.weight
  ctx.stroke()
}

/** Chalk lines: solid where a joint is asked for, crossed where none may be, with two heads where joints should run along. */
export function drawWishes(pen: Pen, site: Site, slabs: readonly ResolvedSlab[]): void {
  const { wishes, access } = site
  const { ctx, inks, camera } = pen
  ctx.strokeStyle = inks.chalk
  ctx.lineWidth = 2 * inks.weight
  for (const wish of wishes) {
    if (wish.kind === 'direction') {
      const line = shownDirection(site, slabs, wish)
      if (line) drawDirection(pen, toScreen(camera, line[0]), toScreen(camera, line[1]))
      continue
    }
    if (wish.kind === 'forbiddenArea') {
      inPlan(pen, () => {
        ctx.lineWidth = weight(pen, 2)
        ctx.setLineDash([px(pen, 2), px(pen, 5)])
        ctx.stroke(ringPath(outlineOf(wish.path)))
        ctx.setLineDash([])
      })
      continue
    }
    const points = wish.kind === 'required' ? wish.line.map(({ last }) => last) : wish.line
    const onScreen = points.map(at => toScreen(camera, at))
    ctx.beginPath()
    for (const [x, y] of onScreen) ctx.lineTo(x, y)
    if (wish.kind === 'forbiddenLine')
      for (const [i, [x, y]] of onScreen.slice(1).entries()) {
        const [fx, fy] = onScreen[i]!
        const count = Math.max(1, Math.floor(Math.hypot(x - fx, y - fy) / 24))
        for (let k = 0; k < count; k++) {
          const [mx, my] = [fx + ((x - fx) * (k + 0.5)) / count, fy + ((y - fy) * (k + 0.5)) / count]
          ctx.moveTo(mx - 4, my - 4)
          ctx.lineTo(mx + 4, my + 4)
          ctx.moveTo(mx - 4, my + 4)
          ctx.lineTo(mx + 4, my - 4)
        }
      }
    ctx.stroke()
  }
  for (const { at, widthM } of access?.ways ?? []) {
    const [x, y] = toScreen(camera, at)
    const half = Math.max(8, (widthM * camera.zoom) / 2)
    ctx.strokeStyle = inks.truck
    ctx.lineWidth = 2 * inks.weight
    ctx.beginPath()
    ctx.moveTo(x - half, y - 6)
    ctx.lineTo(x - half, y + 6)
    ctx.moveTo(x + half, y - 6)
    ctx.lineTo(x + half, y + 6)
    ctx.stroke()
  }
}
