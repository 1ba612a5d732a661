/** Shade casters in plan view. */

import type { CurveRing } from '../../../core/geometry/curve'
import { resolvePath } from '../../../core/geometry/resolvePath'
import type { Building, Caster, Tree } from '../../../shared/document/caster'
import type { Path } from '../../../shared/document/path'
import type { Pt } from '../../../shared/document/primitives'
import { inPlan, type Pen, px, weight } from './pen'
import { ringPath } from './ringPath'

const rings = new WeakMap<Path, CurveRing>()

/** A path as it is drawn, closed or with two ends, made once. */
export function outlineOf(path: Path): CurveRing {
  const known = rings.get(path)
  if (known) return known
  const { ring } = resolvePath(path, '', path.edges.length === path.vertices.length)
  rings.set(path, ring)
  return ring
}

export function drawCasters(pen: Pen, casters: readonly Caster[]): void {
  inPlan(pen, () => {
    for (const caster of casters) drawCaster(pen, caster)
  })
}

function drawCaster(pen: Pen, caster: Caster): void {
  const { ctx, inks } = pen
  switch (caster.kind) {
    case 'building':
      drawBuilding(pen, caster)
      return
    case 'tree':
      drawTree(pen, caster)
      return
    case 'wall': {
      ctx.strokeStyle = inks.wall
      ctx.fillStyle = inks.wall
      ctx.lineWidth = weight(pen, 3)
      ctx.lineJoin = 'miter'
      ctx.beginPath()
      for (const [x, y] of caster.line) ctx.lineTo(x, y)
      ctx.stroke()
      const post = px(pen, 3.5)
      for (const [x, y] of caster.line) ctx.fillRect(x - post, y - post, 2 * post, 2 * post)
      return
    }
    case 'cover': {
      const path = ringPath(outlineOf(caster.outline))
      ctx.strokeStyle = inks.cover
      ctx.lineWidth = weight(pen, 1.8)
      ctx.setLineDash([px(pen, 8), px(pen, 5)])
      ctx.stroke(path)
      ctx.setLineDash([])
    }
  }
}

function drawBuilding(pen: Pen, building: Building): void {
  const { ctx, inks } = pen
  const outline = outlineOf(building.footprint)
  if (outline.length === 0) return
  const path = new Path2D()
  path.addPath(ringPath(outline))
  for (const court of building.courtyards ?? []) path.addPath(ringPath(outlineOf(court)))
  ctx.fillStyle = inks.building
  ctx.fill(path, 'evenodd')
  drawRoof(pen, building, outline, path)
  ctx.strokeStyle = inks['building-ink']
  ctx.lineWidth = weight(pen, 2)
  ctx.stroke(path)
}

interface RoofFrame {
  readonly alongM: readonly [number, number]
  readonly acrossM: readonly [number, number]
  /** A point of the plan by how far it lies along the ridge and across it. */
  readonly at: (alongM: number, acrossM: number) => Pt
}

/** A roof as it lies along its ridge; null for one without. */
function roofFrame({ roof }: Building, outline: CurveRing): RoofFrame | null {
  if (roof.form === 'flat') return null
  const along = outline.find(edge => edge.edgeId === roof.ridgeAlongEdge) ?? outline[0]
  const length = along ? Math.hypot(along.to[0] - along.from[0], along.to[1] - along.from[1]) : 0
  if (!along || length === 0) return null
  const [ux, uy] = [(along.to[0] - along.from[0]) / length, (along.to[1] - along.from[1]) / length]
  const points = outline.map(edge => edge.from)
  const us = points.map(([x, y]) => x * ux + y * uy)
  const vs = points.map(([x, y]) => -x * uy + y * ux)
  return {
    alongM: [Math.min(...us), Math.max(...us)],
    acrossM: [Math.min(...vs), Math.max(...vs)],
    at: (u, v) => [u * ux - v * uy, u * uy + v * ux],
  }
}

/** The ridge of a gable, from end to end. */
export function ridgeOf(building: Building): readonly [Pt, Pt] | null {
  if (building.roof.form !== 'gable') return null
  const frame = roofFrame(building, outlineOf(building.footprint))
  if (!frame) return null
  const { alongM, acrossM, at } = frame
  const middle = (acrossM[0] + acrossM[1]) / 2
  return [at(alongM[0], middle), at(alongM[1], middle)]
}

/** Roof courses across the fall, and the ridge of a gable as a long dash. */
function drawRoof(pen: Pen, building: Building, outline: CurveRing, path: Path2D): void {
  const frame = roofFrame(building, outline)
  if (!frame) return
  const {
    alongM: [u0, u1],
    acrossM: [v0, v1],
    at,
  } = frame
  const { ctx, inks } = pen
  ctx.save()
  ctx.clip(path, 'evenodd')
  ctx.strokeStyle = inks['building-ink']
  ctx.globalAlpha = 0.35
  ctx.lineWidth = weight(pen, 0.8)
  ctx.beginPath()
  const spacing = Math.max(0.6, 14 / pen.camera.zoom)
  for (let u = Math.ceil(u0 / spacing) * spacing; u < u1; u += spacing) {
    ctx.moveTo(...at(u, v0))
    ctx.lineTo(...at(u, v1))
  }
  ctx.stroke()
  ctx.globalAlpha = 1
  const ridge = ridgeOf(building)
  if (ridge) {
    ctx.fillStyle = inks['building-2']
    ctx.lineWidth = weight(pen, 1.6)
    ctx.setLineDash([px(pen, 14), px(pen, 3), px(pen, 3), px(pen, 3)])
    ctx.beginPath()
    ctx.moveTo(...ridge[0])
    ctx.lineTo(...ridge[1])
    ctx.stroke()
    ctx.setLineDash([])
  }
  ctx.restore()
}

const lobes = 17
/** Lobe radius over half the distance between neighbors: the larger, the flatter the scallops. */
const lobeFlat = 1.22

interface TreePaths {
  readonly crown: Path2D
  readonly branches: Path2D
}

const trees = new WeakMap<Tree, TreePaths>()

/** A crown as a scalloped ring with branches, its outermost points on the crown radius; made once for each tree. */
function treePaths(tree: Tree): TreePaths {
  const known = trees.get(tree)
  if (known) return known
  const {
    at: [x, y],
    crownRadiusM,
  } = tree
  const half = Math.sin(Math.PI / lobes)
  const ringM = crownRadiusM / (1 + lobeFlat * half)
  const lobeM = lobeFlat * half * ringM
  const open = Math.PI / 2 + Math.PI / lobes - Math.acos(1 / lobeFlat)
  const paths: TreePaths = { crown: new Path2D(), branches: new Path2D() }
  for (let i = 0; i < lobes; i++) {
    const a = (2 * Math.PI * i) / lobes
    paths.crown.arc(x + ringM * Math.cos(a), y + ringM * Math.sin(a), lobeM, a - open, a + open)
  }
  paths.crown.closePath()
  for (let i = 0; i < 9; i++) {
    const a = (2 * Math.PI * i) / 9 + 0.4
    paths.branches.moveTo(x + 0.22 * crownRadiusM * Math.cos(a), y + 0.22 * crownRadiusM * Math.sin(a))
    paths.branches.lineTo(x + 0.72 * crownRadiusM * Math.cos(a), y + 0.72 * crownRadiusM * Math.sin(a))
  }
  trees.set(tree, paths)
  return paths
}

function drawTree(pen: Pen, tree: Tree): void {
  const { ctx, inks } = pen
  const { at, crownRadiusM } = tree
  const { crown, branches } = treePaths(tree)
  ctx.fillStyle = inks['tree-fill']
  ctx.fill(crown)
  ctx.strokeStyle = inks.tree
  ctx.lineWidth = weight(pen, 1.6)
  ctx.stroke(crown)
  ctx.lineWidth = weight(pen, 0.9)
  ctx.stroke(branches)
  ctx.fillStyle = inks.tree
  ctx.beginPath()
  ctx.arc(at[0], at[1], Math.max(px(pen, 3), 0.09 * crownRadiusM), 0, 2 * Math.PI)
  ctx.fill()
}
