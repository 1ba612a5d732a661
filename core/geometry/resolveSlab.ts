import type { Band, Border, Inset, Slab } from '../../shared/document/slab'
import { onceFrozen } from '../../shared/onceFrozen'
import type { Finding } from '../../shared/problem'
import { openingNames } from '../document/openingNames'
import { checkedRing } from './checkedRing'
import { checkOpenings } from './checkOpenings'
import { Claims } from './claims'
import type { CurveRegion, CurveRing } from './curve'
import { subtractCurves } from './curveBoolean'
import { edgeLength } from './edgeLength'
import { resolveBand } from './resolveBand'
import { type BorderRing, insideFronts, resolveBorders } from './resolveBorders'
import type { Claim, ResolvedBand, ResolvedBorder, ResolvedOpening, ResolvedSlab } from './resolvedSlab'
import { resolveInset } from './resolveInset'
import { reverseRing } from './reverseRing'
import { curveArea, ringArea } from './ringArea'
import { ringLength } from './ringLength'

/** Less is not told: 1/16 in. */
const leastBeyondM = 0.0015875

/** What there is of a slab whose outline is no outline. */
const nothing = {
  openings: [],
  net: [],
  grossAreaM2: 0,
  openingAreaM2: 0,
  netAreaM2: 0,
  perimeterM: 0,
  openingPerimeterM: 0,
  borders: [],
  bands: [],
  insets: [],
  field: [],
  fieldAreaM2: 0,
} as const

/**
 * Works a slab out: exact rings, areas and lengths, openings taken out, and the ground of each inset, band and border.
 * Claims go inset, band, border, in document order within each; what two of them want counts once, for the first.
 * Border lengths are those of the border itself, before insets and bands are let into it.
 * After a stop on the outline every figure is 0 and every shape empty (the outline stays, to be drawn); after a stop on
 * an opening, border, band or inset that entity takes no part. Never throws on bad input.
 * Once for a slab that can no longer change (frozen): page, commands and plan ask for the same one.
 */
export const resolveSlab: (slab: Slab) => ResolvedSlab = onceFrozen(slab => workSlabOut(slab))

interface Ground {
  readonly openings: readonly ResolvedOpening[]
  /** The outline's path and ring first, then those of the openings that are there. */
  readonly rings: readonly BorderRing[]
  readonly gross: CurveRegion
  readonly net: readonly CurveRegion[]
  /** No two openings share ground, and none leaves the outline. */
  readonly apart: boolean
  readonly findings: readonly Finding[]
}

/** The slab less its openings. */
function takeOpenings(slab: Slab, outline: CurveRing): Ground {
  const findings: Finding[] = []
  const cut: { opening: ResolvedOpening; path: Slab['outline'] }[] = []
  for (const { id, kind, path, pool } of slab.openings) {
    const { ring, findings: found, bad } = checkedRing(path, id, true)
    findings.push(...found)
    if (bad) continue
    const opening = { id, kind, ring, areaM2: -ringArea(ring), perimeterM: ringLength(ring) }
    cut.push({ opening: pool === undefined ? opening : { ...opening, pool }, path })
  }
  const checked = checkOpenings(
    outline,
    cut.map(({ opening }) => opening),
    found => openingNames(slab.openings).get(found)!.the,
  )
  findings.push(...checked.findings)
  const placed = cut.filter(c => !checked.left.has(c.opening.id))
  const openings = placed.map(c => c.opening)
  const gross: CurveRegion = { outer: outline, holes: [] }
  const net = checked.apart
    ? [{ outer: outline, holes: openings.map(o => o.ring) }]
    : subtractCurves(
        [gross],
        openings.map(o => ({ outer: reverseRing(o.ring), holes: [] })),
      ).regions
  const rings = [{ path: slab.outline, ring: outline }, ...placed.map(c => ({ path: c.path, ring: c.opening.ring }))]
  return { openings, rings, gross, net, apart: checked.apart, findings }
}

/** An entity's claim, less what others claimed before. */
function claimed(
  claims: Claims,
  entity: Inset | Band | Border,
  raw: { readonly regions: readonly CurveRegion[]; readonly chordsKept: boolean; readonly clearOf?: readonly string[] },
): Claim {
  const { id, finishId, placed } = entity
  const { shape, chordsKept } = claims.claim(entity, raw.regions, raw.clearOf)
  return { id, finishId, placed, shape, areaM2: curveArea(shape), chordsKept: chordsKept || raw.chordsKept }
}

/** Flights that are wider than what is left of their edge. */
const stepsBeyondEdges = ({ steps }: Slab, outline: CurveRing): readonly Finding[] =>
  steps.flatMap(({ id, edgeId, fromT, widthM }): Finding[] => {
    const edge = outline.find(each => each.edgeId === edgeId)
    if (!edge) return []
    const beyondM = widthM - (1 - fromT) * edgeLength(edge)
    return beyondM < leastBeyondM
      ? []
      : [{ code: 'stepsBeyondEdge', severity: 'check', values: { beyondM }, at: { entityId: id, point: edge.to } }]
  })

function workSlabOut(slab: Slab): ResolvedSlab {
  const { id, name, levelM, finishId } = slab
  const outlined = checkedRing(slab.outline, id, false)
  const outline = outlined.ring
  const base = { id, name, levelM, finishId, outline }
  if (outlined.bad) return { ...base, ...nothing, findings: outlined.findings }
  const { openings, rings, gross, net, apart, findings: cutFindings } = takeOpenings(slab, outline)
  const findings: Finding[] = [...outlined.findings, ...cutFindings]
  const grossAreaM2 = ringArea(outline)
  const netAreaM2 = curveArea(net)

  const claims = new Claims()
  const insets = slab.insets.map(inset => {
    const { shape, findings: found } = resolveInset(inset, gross, net)
    findings.push(...found)
    return claimed(claims, inset, shape)
  })
  const bands = slab.bands.map((band): ResolvedBand => {
    const { shape, findings: found } = resolveBand(band, outline, net)
    findings.push(...found)
    return { ...claimed(claims, band, shape), widthM: band.widthM, lengthM: shape.lengthM }
  })
  const bordered = resolveBorders(slab.borders, rings, net)
  findings.push(...bordered.findings)
  const borders = bordered.shapes.map((shape): ResolvedBorder => {
    const { border, outerSide, innerLengthM, centerLengthM } = shape
    const { pathId, widthM } = border
    const lengths = { outerLengthM: ringLength(outerSide), innerLengthM, centerLengthM }
    return { ...claimed(claims, border, shape), pathId, widthM, outerSide, ...lengths }
  })

  findings.push(...stepsBeyondEdges(slab, outline))

  const plain = net.length === 1 ? insideFronts(net[0]!, bordered.fronts) : undefined
  const all = [...insets, ...bands, ...borders]
  const fieldAreaM2 = all.reduce((sum, c) => sum - c.areaM2, netAreaM2)
  let field: readonly CurveRegion[] | undefined
  const leaveField = () =>
    plain
      ? claims.left([plain], new Set(bordered.fronts.flatMap(f => f.borderIds)), fieldAreaM2)
      : claims.left(net, new Set(), fieldAreaM2)
  for (const c of all)
    if (c.chordsKept) findings.push({ code: 'arcsKeptAsChords', severity: 'note', values: {}, at: { entityId: c.id } })
  return {
    ...base,
    openings,
    net,
    grossAreaM2,
    openingAreaM2: apart ? openings.reduce((sum, o) => sum + o.areaM2, 0) : grossAreaM2 - netAreaM2,
    netAreaM2,
    perimeterM: ringLength(outline),
    openingPerimeterM: openings.reduce((sum, o) => sum + o.perimeterM, 0),
    borders,
    bands,
    insets,
    // Its area is known without its shape, which is seldom asked for and costs as much as all claims.
    get field() {
      field ??= leaveField()
      return field
    },
    fieldAreaM2,
    findings,
  }
}
