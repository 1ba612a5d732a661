/** What stands on a slab and what is asked of its joints: steps, obstacles, joint lines wished for, ways in and out. */
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { stepLines } from '../../../core/geometry/stepLines'
import type { Site } from '../../../shared/document/site'
import { obstacleKinds } from '../actions/actions'
import { toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { letter } from './lettering'
import { inPlan, type Pen, px, weight } from './pen'
import { ringPath } from './ringPath'

export function drawParts(pen: Pen, site: Site, slabs: readonly ResolvedSlab[]): void {
  const { ctx, inks, camera } = pen
  inPlan(pen, () => {
    ctx.strokeStyle = inks.outline
    ctx.lineWidth = weight(pen, 1.6)
    ctx.beginPath()
    for (const slab of slabs)
      for (const steps of site.slabs.find(({ id }) => id === slab.id)?.steps ?? [])
        for (const [from, to] of stepLines(slab.outline, steps)) {
          ctx.moveTo(...from)
          ctx.lineTo(...to)
        }
    ctx.stroke()
  })
  for (const { at, kind, name } of site.slabs.flatMap(({ obstacles }) => obstacles)) {
    const [x, y] = toScreen(camera, at)
    ctx.fillStyle = inks.paper
    ctx.strokeStyle = inks.outline
    ctx.lineWidth = 1.6 * inks.weight
    ctx.beginPath()
    ctx.arc(x, y, 5, 0, 2 * Math.PI)
    ctx.fill()
    ctx.stroke()
    letter(pen, name ?? obstacleKinds[kind], [x, y + 16], { sizePx: 13, weight: 500, halo: inks.paper })
  }
}

/** Chalk lines: solid where a joint is asked for, crossed where none may be. */
export function drawWishes(pen: Pen, { wishes, access }: Site): void {
  const { ctx, inks, camera } = pen
  ctx.strokeStyle = inks.chalk
  ctx.lineWidth = 2 * inks.weight
  for (const wish of wishes) {
    if (wish.kind === 'direction') continue
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
  for (const { at, widthM, name } of access?.ways ?? []) {
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
    letter(pen, name ?? 'Way in', [x, y + 18], { sizePx: 13, weight: 500, halo: inks.paper })
  }
}
