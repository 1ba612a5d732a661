/** Slabs with pattern and color to scale: field, insets, bands, borders in courses, openings. */
import type { Finish } from '../../../shared/document/materials'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import type { CurveRing } from '../../geometry/curve'
import type { ResolvedBorder, ResolvedSlab } from '../../geometry/resolvedSlab'
import { curvePath, type Frame } from '../frame'
import { bandStones, borderStones, isCoursed } from '../pattern/borderStones'
import { drawCourses, drawFinish, type FinishPen } from '../pattern/drawFinish'
import { drawPath, ink } from '../svgPen'
import { openingFills } from './openingFills'

const borderRing = (slab: ResolvedSlab, border: ResolvedBorder, source: Slab): CurveRing | undefined =>
  border.pathId === source.outline.id
    ? slab.outline
    : slab.openings.find(({ id }) => source.openings.find(each => each.id === id)?.path.id === border.pathId)?.ring

export function drawClientSlabs(site: Site, slabs: readonly ResolvedSlab[], frame: Frame): string {
  const pen: FinishPen = { frame, clips: { next: 1 } }
  const finishOf = (id: string): Finish | undefined => site.finishes.find(each => each.id === id)
  return slabs
    .flatMap(slab => {
      const source = site.slabs.find(({ id }) => id === slab.id)
      return source === undefined || slab.outline.length === 0 ? [] : [drawSlab(slab, source, finishOf, pen)]
    })
    .join('')
}

function drawSlab(
  slab: ResolvedSlab,
  source: Slab,
  finishOf: (id: string) => Finish | undefined,
  pen: FinishPen,
): string {
  const { frame } = pen
  const parts: string[] = []
  const fill = (shape: ResolvedSlab['field'], finishId: string): void => {
    const finish = finishOf(finishId)
    if (finish !== undefined && shape.length > 0) parts.push(drawFinish(shape, finish, pen))
  }
  fill(slab.field, slab.finishId)
  for (const claim of slab.insets) fill(claim.shape, claim.finishId)
  for (const { id, shape, finishId } of slab.bands) {
    const finish = finishOf(finishId)
    const band = source.bands.find(each => each.id === id)
    if (finish !== undefined && band !== undefined && shape.length > 0 && isCoursed(finish.pattern))
      parts.push(drawCourses(shape, bandStones(band, finish.pattern), finish, pen))
    else fill(shape, finishId)
  }
  const depths = new Map<string, number>()
  for (const border of slab.borders) {
    const depthM = (depths.get(border.pathId) ?? 0) + border.widthM
    depths.set(border.pathId, depthM)
    const finish = finishOf(border.finishId)
    const ring = borderRing(slab, border, source)
    if (finish !== undefined && ring !== undefined && border.shape.length > 0 && isCoursed(finish.pattern))
      parts.push(drawCourses(border.shape, borderStones(ring, depthM, finish.pattern), finish, pen))
    else fill(border.shape, border.finishId)
  }
  for (const claim of [...slab.insets, ...slab.bands, ...slab.borders])
    for (const { outer, holes } of claim.shape)
      for (const ring of [outer, ...holes]) parts.push(drawPath(curvePath(frame, ring), { stroke: ink, width: 0.5 }))
  for (const { kind, ring } of slab.openings)
    parts.push(drawPath(curvePath(frame, ring), { fill: openingFills[kind], stroke: ink, width: 1.5 }))
  parts.push(drawPath(curvePath(frame, slab.outline), { stroke: ink, width: 2.2 }))
  return parts.join('')
}
