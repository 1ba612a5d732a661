import type { CurveEdge, CurveRing } from '../../../core/geometry/curve'
import { pointAt } from '../../../core/geometry/edgeAt'
import { edgeLength } from '../../../core/geometry/edgeLength'
import type { Claim, ResolvedBorder, ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { thickenedShapes } from '../../../core/quantities/thickenedShapes'
import { openingFills } from '../../../core/reports/client/openingFills'
import { bandStones, borderStones, isCoursed } from '../../../core/reports/pattern/borderStones'
import type { Stone } from '../../../core/reports/pattern/finishPattern'
import { inwardAt } from '../../../core/reports/pattern/inwardAt'
import { jointShare, stoneShare, tint } from '../../../core/reports/pattern/tones'
import type { Finish } from '../../../shared/document/materials'
import type { Band, Slab } from '../../../shared/document/slab'
import { onceFrozen } from '../../../shared/onceFrozen'
import { type FinishInks, fillCourses, fillFinish } from './finishFill'
import { inPlan, type Pen, px, weight } from './pen'
import { addEdges, regionsPath, ringPath } from './ringPath'

export interface SlabsScene {
  readonly slabs: readonly ResolvedSlab[]
  readonly sources: readonly Slab[]
  readonly finishes: readonly Finish[]
  /** Finish colors as the client sees them, not the planner's quiet inks. */
  readonly inColor: boolean
  /** False where pours lie over the field: texture under hatch cannot be read. */
  readonly textured: boolean
}

/** Courses across a border stand about this far apart. */
const courseM = 0.3048
/** Courses nearer than this on the screen run together. */
const leastCoursePx = 5

/** Fills the field and what has a finish of its own. */
export function drawSlabs(pen: Pen, scene: SlabsScene): void {
  inPlan(pen, () => {
    for (const slab of scene.slabs) {
      const source = scene.sources.find(each => each.id === slab.id)
      if (slab.outline.length > 0 && source) drawSlab(pen, slab, source, scene)
    }
  })
}

/** Outdoors colors are paler and joints darker, so that what lies over them stays readable. */
function clientInks({ inks }: Pen, color: string | undefined, ground: string): FinishInks {
  const own = color ?? ground
  return inks.weight > 1
    ? { ground: tint(own, 0.45), joint: tint(own, -0.7), tone: 0.06 }
    : { ground: tint(own, 0), joint: tint(own, jointShare), tone: stoneShare }
}

function drawSlab(pen: Pen, slab: ResolvedSlab, source: Slab, scene: SlabsScene): void {
  const { ctx, inks } = pen
  const finish = (id: string) => scene.finishes.find(each => each.id === id)
  const fillClaim = (regions: Claim['shape'], finishId: string, ground: string, joint: string) => {
    const own = finish(finishId)
    if (scene.inColor) fillFinish(pen, regions, own, clientInks(pen, own?.color, ground))
    else if (scene.textured) fillFinish(pen, regions, own, { ground, joint, tone: 0 })
    else {
      ctx.fillStyle = ground
      ctx.fill(regionsPath(regions), 'evenodd')
    }
  }
  fillClaim(slab.net, slab.finishId, inks.slab, inks['slab-joint'])
  for (const claim of [...slab.insets, ...slab.bands, ...slab.borders]) {
    if (!('pathId' in claim)) {
      const band = source.bands.find(({ id }) => id === claim.id)
      const own = finish(claim.finishId)
      if (band && scene.inColor && own && isCoursed(own.pattern) && courseM * pen.camera.zoom >= leastCoursePx)
        fillCourses(pen, claim.shape, bandCourses(band, own.pattern).stones, clientInks(pen, own.color, ''))
      else fillClaim(claim.shape, claim.finishId, inks['border-fill'], inks['border-joint'])
      continue
    }
    const border = claim as ResolvedBorder
    const own = finish(border.finishId)
    if (scene.inColor && own && isCoursed(own.pattern) && courseM * pen.camera.zoom >= leastCoursePx) {
      const ring = borderRing(slab, border, source)
      const depthM = depthOf(slab, border)
      if (ring) fillCourses(pen, border.shape, coursesOf(ring, depthM, own.pattern), clientInks(pen, own.color, ''))
    } else if (scene.inColor) fillClaim(border.shape, border.finishId, inks['border-fill'], inks['border-joint'])
    else {
      ctx.fillStyle = inks['border-fill']
      ctx.fill(regionsPath(border.shape), 'evenodd')
      drawCourses(pen, slab, border, source)
    }
  }
}

const borderRing = (slab: ResolvedSlab, border: ResolvedBorder, source: Slab): CurveRing | undefined =>
  border.pathId === source.outline.id
    ? slab.outline
    : slab.openings.find(o => source.openings.find(s => s.id === o.id)?.path.id === border.pathId)?.ring

/** How far from the edge a stacked border ends: all borders further out on the same path lie before it. */
const depthOf = (slab: ResolvedSlab, border: ResolvedBorder): number =>
  slab.borders
    .slice(0, slab.borders.indexOf(border) + 1)
    .filter(({ pathId }) => pathId === border.pathId)
    .reduce((sum, { widthM }) => sum + widthM, 0)

const laid = new WeakMap<CurveRing, Map<string, readonly Stone[]>>()

/** Made once for each ring, depth and pattern. */
function coursesOf(ring: CurveRing, depthM: number, pattern: Finish['pattern']): readonly Stone[] {
  const known = laid.get(ring) ?? new Map<string, readonly Stone[]>()
  laid.set(ring, known)
  const key = `${pattern} ${depthM}`
  const stones = known.get(key) ?? borderStones(ring, depthM, pattern)
  known.set(key, stones)
  return stones
}

const bandCourses = onceFrozen(
  (band: Band, pattern: Finish['pattern']) => ({ pattern, stones: bandStones(band, pattern) }),
  (known, pattern) => known.pattern === pattern,
)

/** Everything drawn in ink: over the fills, and over the pours where they are shown. */
export function drawSlabEdges(pen: Pen, { slabs, sources, finishes, inColor }: Omit<SlabsScene, 'textured'>): void {
  const { ctx, inks } = pen
  inPlan(pen, () => {
    for (const slab of slabs) {
      ctx.lineWidth = weight(pen, 1)
      for (const { finishId, shape } of [...slab.insets, ...slab.bands, ...slab.borders]) {
        const own = inColor ? finishes.find(({ id }) => id === finishId) : undefined
        ctx.strokeStyle = own ? clientInks(pen, own.color, '').joint : inks['border-joint']
        ctx.stroke(regionsPath(shape))
      }
      const source = sources.find(each => each.id === slab.id)
      for (const opening of slab.openings) {
        const kind = source?.openings.find(({ id }) => id === opening.id)?.kind
        ctx.fillStyle = inColor && kind ? clientInks(pen, openingFills[kind], '').ground : inks.opening
        ctx.fill(ringPath(opening.ring))
        ctx.strokeStyle = inks.outline
        ctx.lineWidth = weight(pen, 1.8)
        ctx.stroke(ringPath(opening.ring))
      }
      if (source && !inColor) drawThickened(pen, slab, source)
      if (source) drawEdges(pen, slab, source)
    }
  })
}

const courses = new WeakMap<ResolvedBorder, Path2D>()

function coursePath(border: ResolvedBorder, ring: CurveRing): Path2D {
  const known = courses.get(border)
  if (known) return known
  const path = new Path2D()
  for (const edge of ring) addCourses(path, edge, border.widthM)
  courses.set(border, path)
  return path
}

/** Short joints square to the bordered edges. */
function drawCourses(pen: Pen, slab: ResolvedSlab, border: ResolvedBorder, source: Slab): void {
  const { ctx, inks } = pen
  if (courseM * pen.camera.zoom < leastCoursePx) return
  const ring = borderRing(slab, border, source)
  if (!ring) return
  ctx.save()
  ctx.clip(regionsPath(border.shape), 'evenodd')
  ctx.strokeStyle = inks['border-joint']
  ctx.lineWidth = weight(pen, 1)
  ctx.stroke(coursePath(border, ring))
  ctx.restore()
}

function addCourses(path: Path2D, edge: CurveEdge, widthM: number): void {
  const lengthM = edgeLength(edge)
  const count = Math.max(1, Math.round(lengthM / (2 * courseM)))
  for (let i = 0; i < count; i++) {
    const [x, y] = pointAt(edge, (i + 0.5) / count)
    const [nx, ny] = inwardAt(edge, x, y)
    path.moveTo(x - nx * 0.01, y - ny * 0.01)
    path.lineTo(x + nx * widthM * 1.02, y + ny * widthM * 1.02)
  }
}

const haunches = new WeakMap<Slab, { readonly of: ResolvedSlab; readonly path: Path2D }>()

/** How far thickened edges reach under the slab, by dashes. */
function drawThickened(pen: Pen, slab: ResolvedSlab, source: Slab): void {
  if (source.thickened.length === 0) return
  const known = haunches.get(source)
  const path =
    known?.of === slab ? known.path : regionsPath(thickenedShapes(slab, source).flatMap(({ shape }) => shape))
  haunches.set(source, { of: slab, path })
  pen.ctx.strokeStyle = pen.inks.outline
  pen.ctx.lineWidth = weight(pen, 1)
  pen.ctx.setLineDash([px(pen, 6), px(pen, 4)])
  pen.ctx.stroke(path)
  pen.ctx.setLineDash([])
}

/** The outline in ink; where it meets existing work, isolation blocks. */
function drawEdges(pen: Pen, slab: ResolvedSlab, source: Slab): void {
  const { ctx, inks } = pen
  const against = new Set<string>(source.againstExisting)
  const free = slab.outline.filter(edge => !against.has(edge.edgeId))
  const isolated = slab.outline.filter(edge => against.has(edge.edgeId))
  const stroke = (edges: readonly CurveEdge[], color: string, width: number, dash: readonly number[]) => {
    if (edges.length === 0) return
    const path = new Path2D()
    addEdges(path, edges)
    ctx.strokeStyle = color
    ctx.lineWidth = weight(pen, width)
    ctx.setLineDash(dash.map(d => px(pen, d)))
    ctx.stroke(path)
    ctx.setLineDash([])
  }
  ctx.lineCap = 'square'
  ctx.lineJoin = 'miter'
  stroke(free, inks.outline, 2.5, [])
  ctx.lineCap = 'butt'
  stroke(isolated, inks['joint-isolation'], 3, [])
  stroke(isolated, inks.paper, 2, [4, 4])
}
