import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { LevelShade } from '../../store/livePlan'
import { inPlan, type Pen, px, weight } from './pen'
import { cyclesPath, regionsPath } from './ringPath'

/**
 * Shade of the hour: each level one path of all cycles, filled by the non-zero rule. The lowest level's lies on the
 * ground too; slabs that stand higher get their own inside their edges only.
 */
export function drawShade(pen: Pen, shade: readonly LevelShade[], slabs: readonly ResolvedSlab[]): void {
  inPlan(pen, () => {
    const [ground, ...higher] = shade
    if (!ground) return
    const raised = slabs.filter(slab => slab.levelM !== ground.levelM)
    clipTo(pen, raised, true, () => fillLevel(pen, ground))
    for (const level of higher) {
      clipTo(
        pen,
        slabs.filter(slab => slab.levelM === level.levelM),
        false,
        () => fillLevel(pen, level),
      )
    }
  })
}

/** Draws inside the slabs, or everywhere but there. */
function clipTo({ ctx }: Pen, slabs: readonly ResolvedSlab[], outside: boolean, draw: () => void): void {
  if (outside && slabs.length === 0) {
    draw()
    return
  }
  ctx.save()
  const path = new Path2D()
  if (outside) path.rect(-1e5, -1e5, 2e5, 2e5)
  for (const slab of slabs) path.addPath(regionsPath(slab.net))
  ctx.clip(path, 'evenodd')
  draw()
  ctx.restore()
}

function fillLevel(pen: Pen, { parts }: LevelShade): void {
  const { ctx, inks } = pen
  const opacity = Number(inks['shade-op'])
  const shares = [...new Set(parts.map(part => part.transmission))]
  for (const share of shares) {
    const path = new Path2D()
    for (const part of parts) if (part.transmission === share) path.addPath(cyclesPath(part.cycles))
    ctx.fillStyle = inks.shade
    ctx.globalAlpha = opacity * (1 - share)
    ctx.fill(path, 'nonzero')
    if (share === 0) continue
    ctx.globalAlpha = 0.5
    ctx.strokeStyle = inks['shade-line']
    ctx.lineWidth = weight(pen, 1)
    ctx.setLineDash([px(pen, 2), px(pen, 4)])
    ctx.stroke(path)
    ctx.setLineDash([])
  }
  ctx.globalAlpha = 1
}
