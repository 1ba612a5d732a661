import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Caster } from '../../../shared/document/caster'
import type { LevelShade } from '../../store/livePlan'
import { outlineOf } from './drawCasters'
import { inPlan, type Pen, weight } from './pen'
import { addShadow, regionsPath, ringPath } from './ringPath'

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
  inPlan(pen, () => {
    fillLevel(pen, ground, strength)
    rubOut(pen, casters, raised)
    for (const level of higher) {
      const path = new Path2D()
      for (const slab of slabs) if (slab.levelM === level.levelM) path.addPath(regionsPath(slab.net))
      clipped(pen, path, () => fillLevel(pen, level, strength))
    }
  })
}

/** Takes the ground's shade off roofs and off slabs that stand higher. Far cheaper than a clip around all of them. */
function rubOut({ ctx }: Pen, casters: readonly Caster[], raised: readonly ResolvedSlab[]): void {
  const path = new Path2D()
  for (const caster of casters) if (caster.kind === 'building') path.addPath(ringPath(outlineOf(caster.footprint)))
  for (const slab of raised) path.addPath(regionsPath(slab.net))
  ctx.globalCompositeOperation = 'destination-out'
  ctx.fill(path, 'nonzero')
  ctx.globalCompositeOperation = 'source-over'
}

function clipped({ ctx }: Pen, path: Path2D, draw: () => void): void {
  ctx.save()
  ctx.clip(path, 'evenodd')
  draw()
  ctx.restore()
}

const paths = new WeakMap<LevelShade['parts'], ReadonlyMap<number, Path2D>>()

/** What each transmission shades as one path, the darkest first; made once for an hour. */
function sharePaths(parts: LevelShade['parts']): ReadonlyMap<number, Path2D> {
  const known = paths.get(parts)
  if (known) return known
  const shares = [...new Set(parts.map(part => part.transmission))].sort((a, b) => a - b)
  const made = new Map(shares.map(share => [share, new Path2D()]))
  for (const part of parts) addShadow(made.get(part.transmission)!, part)
  paths.set(parts, made)
  return made
}

function fillLevel(pen: Pen, { parts }: LevelShade, strength: number): void {
  const { ctx, inks } = pen
  const opacity = Number(inks['shade-op']) * strength
  for (const [share, path] of sharePaths(parts)) {
    if (share === 0 && strength === 1) drawRim(pen, path)
    ctx.fillStyle = inks.shade
    ctx.globalAlpha = opacity * (1 - share)
    ctx.fill(path, 'nonzero')
    if (share > 0) {
      ctx.globalAlpha = 0.5 * strength
      ctx.strokeStyle = inks['shade-line']
      ctx.lineWidth = weight(pen, 0.75)
      ctx.stroke(path)
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
