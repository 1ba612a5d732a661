/** A shade caster as the solids that throw its shadow. */
import type { Building, Caster, Cover, Tree, Wall } from '../../shared/document/caster'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Finding } from '../../shared/problem'
import type { Box } from '../geometry/bounds'
import { subtractRegions } from '../geometry/clip'
import type { CurveRing, Region, Ring } from '../geometry/curve'
import { findSelfCrossing } from '../geometry/findSelfCrossing'
import { flatArea, flatRingArea } from '../geometry/flatArea'
import { flattenRing } from '../geometry/flattenRing'
import { resolvePath } from '../geometry/resolvePath'
import { cleanRing } from './cleanRing'
import { eaveOutline } from './eaveOutline'
import { flatRing } from './flatRing'
import { pitchedRoof } from './pitchedRoof'
import { solidBox } from './shadowBox'
import type { Prism, Solid } from './solid'

export interface ResolvedCaster {
  readonly id: string
  readonly caster: Caster
  readonly solids: readonly Solid[]
  /** Around each solid in plan. */
  readonly boxes: readonly Box[]
}

export interface CasterResolution {
  readonly value: ResolvedCaster
  readonly findings: readonly Finding[]
}

interface Solids {
  readonly solids: readonly Solid[]
  readonly findings: readonly Finding[]
}

const noHeight = (caster: Caster, bottomM: number, topM: number): Finding => ({
  code: 'noHeight',
  severity: 'stop',
  values: { name: caster.name, kind: caster.kind, bottomM, topM, heightM: topM - bottomM },
  at: { entityId: caster.id },
})

interface Outline {
  readonly ring: Ring
  readonly curve: CurveRing
  readonly findings: readonly Finding[]
}

/** Empty after a stop: a ring that crosses itself has no sure inside to stand on. */
const resolveOutline = (path: Path, entityId: string): Outline => {
  const { ring: curve, findings } = resolvePath(path, entityId)
  const crossing = findSelfCrossing(curve)
  if (crossing === undefined) return { ring: cleanRing(flattenRing(curve)), curve, findings }
  const crossed: Finding = { code: 'selfCrossing', severity: 'stop', values: {}, at: { entityId, point: crossing } }
  return { ring: [], curve, findings: [...findings, crossed] }
}

/** Unit direction of an edge of the footprint (of its chord, if an arc); null if it is not one of them. */
const edgeDirection = (curve: CurveRing, edgeId: string): Pt | null => {
  const edge = curve.find(each => each.edgeId === edgeId)
  if (edge === undefined) return null
  const x = edge.to[0] - edge.from[0]
  const y = edge.to[1] - edge.from[1]
  const length = Math.hypot(x, y)
  return length === 0 ? null : [x / length, y / length]
}

const regionRings = (regions: readonly Region[]): Float64Array[] =>
  regions.flatMap(({ ring, holes }) => [flatRing(ring, 1), ...holes.map(hole => flatRing(hole, -1))])

/** A courtyard that reaches this far out of the walls, or over another, is more than drawing inaccuracy: 1 cm². */
const smallAreaM2 = 1e-4

interface Ground {
  /** What the walls enclose: outer rings counter-clockwise, courtyards clockwise. */
  readonly rings: readonly Float64Array[]
  readonly isCutShort: boolean
}

const groundOf = (outline: Ring, courts: readonly Ring[]): Ground => {
  if (courts.length === 0) return { rings: [flatRing(outline, 1)], isCutShort: false }
  const solid = subtractRegions(
    [{ ring: outline, holes: [] }],
    courts.map(ring => ({ ring, holes: [] })),
  )
  const courtM2 = courts.reduce((sum, ring) => sum + flatRingArea(ring), 0)
  const takenM2 = flatRingArea(outline) - flatArea(solid)
  return { rings: regionRings(solid), isCutShort: courtM2 - takenM2 > smallAreaM2 }
}

const resolveBuilding = (building: Building): Solids => {
  const { id, baseM, eaveM, overhangM, roof } = building
  const outline = resolveOutline(building.footprint, id)
  const courtyards = (building.courtyards ?? []).map(path => resolveOutline(path, id))
  const findings = [...outline.findings, ...courtyards.flatMap(court => court.findings)]
  if (eaveM <= baseM) return { solids: [], findings: [...findings, noHeight(building, baseM, eaveM)] }
  if (outline.ring.length < 3) return { solids: [], findings }
  const courts = courtyards.map(court => court.ring).filter(ring => ring.length >= 3)
  const ground = groundOf(outline.ring, courts)
  const walls: Prism = { form: 'prism', rings: ground.rings, bottomM: baseM, topM: eaveM }
  const tell = (code: 'courtyardOutside' | 'roofOverCourtyard' | 'roofFlat'): void => {
    findings.push({ code, severity: 'check', values: { name: building.name, form: roof.form }, at: { entityId: id } })
  }
  if (ground.isCutShort) tell('courtyardOutside')
  /** Eaves overhang outward only: a courtyard stays as open as its walls. */
  const flatRoof = (): readonly Solid[] => {
    if (overhangM === 0) return [walls]
    const eaves = subtractRegions(
      eaveOutline(outline.ring, overhangM),
      courts.map(ring => ({ ring, holes: [] })),
    )
    return [walls, { form: 'prism', rings: regionRings(eaves), bottomM: eaveM, topM: eaveM }]
  }
  if (roof.form === 'flat') return { solids: flatRoof(), findings }
  if (courts.length > 0) {
    tell('roofOverCourtyard')
    return { solids: flatRoof(), findings }
  }
  const ridge = roof.ridgeAlongEdge === undefined ? null : edgeDirection(outline.curve, roof.ridgeAlongEdge)
  const faces = pitchedRoof(outline.ring, overhangM, roof, eaveM, ridge)
  if (faces === null) {
    tell('roofFlat')
    return { solids: flatRoof(), findings }
  }
  return { solids: [walls, faces], findings }
}

const resolveWall = (wall: Wall): Solids => {
  if (wall.topM <= wall.baseM) return { solids: [], findings: [noHeight(wall, wall.baseM, wall.topM)] }
  const solids: Solid[] = wall.line.slice(1).map((to, index) => ({
    form: 'screen',
    from: wall.line[index]!,
    to,
    bottomM: wall.baseM,
    topM: wall.topM,
  }))
  return { solids, findings: [] }
}

/** The crown alone: the trunk's shade, a few inches wide, is left out. */
const resolveTree = (tree: Tree): Solids => {
  if (tree.topM <= tree.trunkM) return { solids: [], findings: [noHeight(tree, tree.trunkM, tree.topM)] }
  return {
    solids: [{ form: 'crown', at: tree.at, radiusM: tree.crownRadiusM, bottomM: tree.trunkM, topM: tree.topM }],
    findings: [],
  }
}

/** Floats: nothing between its underside and the ground. A sheet with no thickness still shades. */
const resolveCover = (cover: Cover): Solids => {
  const { ring, findings } = resolveOutline(cover.outline, cover.id)
  if (cover.topM < cover.undersideM)
    return { solids: [], findings: [...findings, noHeight(cover, cover.undersideM, cover.topM)] }
  if (ring.length < 3) return { solids: [], findings }
  return {
    solids: [{ form: 'prism', rings: [flatRing(ring, 1)], bottomM: cover.undersideM, topM: cover.topM }],
    findings,
  }
}

const solidsOf = (caster: Caster): Solids => {
  switch (caster.kind) {
    case 'building':
      return resolveBuilding(caster)
    case 'wall':
      return resolveWall(caster)
    case 'tree':
      return resolveTree(caster)
    case 'cover':
      return resolveCover(caster)
  }
}

/**
 * The solids of one caster; arcs of footprints as chords within 1/16 in. Below the eave the walls stand at the footprint
 * whatever the overhang. Findings: `noHeight` (nothing stands there), `roofOverCourtyard` and `roofFlat` (drawn flat at
 * the eave), and those of its paths.
 */
export const resolveCaster = (caster: Caster): CasterResolution => {
  const { solids, findings } = solidsOf(caster)
  return { value: { id: caster.id, caster, solids, boxes: solids.map(solidBox) }, findings }
}
