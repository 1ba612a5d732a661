import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Caster } from '../../../shared/document/caster'
import type { LevelShade } from '../../store/livePlan'
import { outlineOf } from './drawCasters'
import { inPlan, type Pen, px, weight } from './pen'
import { cyclesPath, regionsPath, ringPath } from './ringPath'

export interface ShadeScene {
  readonly shade: readonly LevelShade[]
  readonly slabs: readonly ResolvedSlab[]
  readonly casters: readonly Caster[]
  /** 1 where the shade is what the stage is about, less where it lies behind something else. */
  readonly strength: number
}

/**
 * Shade of the hour: each level one path of all cycles, filled by the non-zero rule. The lowest level's lies on the
 * ground too; slabs that stand higher get their own inside their edges only. It ends at the walls that throw it: roofs
 * are not shaded. On a canvas of its own.
 */
export function drawShade(pen: Pen, { shade, slabs, casters, strength }: ShadeScene): void {
  const [ground, ...higher] = shade
  if (!ground || strength === 0) return
  const raised = slabs.filter(slab => slab.levelM !== ground.levelM)
  const roofs = new Path2D()
  roofs.rect(-1e5, -1e5, 2e5, 2e5)
  for (const caster of casters) if (caster.kind === 'building') roofs.addPath(ringPath(outlineOf(caster.footprint)))
  for (const slab of raised) roofs.addPath(regionsPath(slab.net))
  inPlan(pen, () => {
    clipped(pen, roofs, () => fillLevel(pen, ground, strength))
    for (const level of higher) {
      const path = new Path2D()
      for (const slab of slabs) if (slab.levelM === level.levelM) path.addPath(regionsPath(slab.net))
      clipped(pen, path, () => fillLevel(pen, level, strength))
    }
  })
}

function clipped({ ctx }: Pen, path: Path2D, draw: () => void): void {
  ctx.save()
  ctx.clip(path, 'evenodd')
  draw()
  ctx.restore()
}

function fillLevel(pen: Pen, { parts }: LevelShade, strength: number): void {
  const { ctx, inks } = pen
  const opacity = Number(inks['shade-op']) * strength
  const shares = [...new Set(parts.map(part => part.transmission))].sort((a, b) => a - b)
  for (const share of shares) {
    const path = new Path2D()
    for (const part of parts) if (part.transmission === share) path.addPath(cyclesPath(part.cycles))
    if (share === 0 && strength === 1) drawRim(pen, path)
    ctx.fillStyle = inks.shade
    ctx.globalAlpha = opacity * (1 - share)
    ctx.fill(path, 'nonzero')
    if (share > 0) {
      ctx.globalAlpha = 0.5 * strength
      ctx.strokeStyle = inks['shade-line']
      ctx.lineWidth = weight(pen, 1)
      ctx.setLineDash([px(pen, 2), px(pen, 4)])
      ctx.stroke(path)
      ctx.setLineDash([])
    }
    ctx.globalAlpha = 1
  }
}

/** The rim of the union: every cycle's line, then all that lies inside any cycle rubbed out. */
function drawRim(pen: Pen, path: Path2D): void {
  const { ctx, inks } = pen
  ctx.strokeStyle = inks['shade-line']
  ctx.lineWidth = weight(pen, 4)
  ctx.stroke(path)
  ctx.globalCompositeOperation = 'destination-out'
  ctx.fill(path, 'nonzero')
  ctx.globalCompositeOperation = 'source-over'
}
