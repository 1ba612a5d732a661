import type { Slab } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { boxesMeet, ringBounds } from './bounds'
import { checkOpenings } from './checkOpenings'
import { regionContains } from './contains'
import type { CurveRegion, CurveRing } from './curve'
import { clipCurveRings, subtractCurves } from './curveBoolean'
import { findSelfCrossing } from './findSelfCrossing'
import { ringsClear } from './offsetRing'
import { resolveBand } from './resolveBand'
import { type BorderRing, insideFronts, resolveBorders } from './resolveBorders'
import type { Claim, ResolvedBand, ResolvedBorder, ResolvedOpening, ResolvedSlab } from './resolvedSlab'
import { resolvePath } from './resolvePath'
import { reverseRing } from './reverseRing'
import { curveArea, ringArea } from './ringArea'
import { ringLength } from './ringLength'
import { sameRegions } from './sameRegions'

/** Overlaps and overhangs below 1 cm² are drawing inaccuracy, not a mistake. */
const smallAreaM2 = 1e-4

interface CheckedRing {
  readonly ring: CurveRing
  readonly findings: readonly Finding[]
  readonly bad: boolean
}

const knownRings = new WeakMap<Slab['outline'], CheckedRing & { readonly entityId: string }>()

/** As `checkRing`, once for a path that can no longer change: what an edit leaves alone keeps its ring and chords. */
function resolveRing(path: Slab['outline'], entityId: string, clockwise: boolean): CheckedRing {
  if (!Object.isFrozen(path)) return checkRing(path, entityId, clockwise)
  const known = knownRings.get(path)
  // A path is of one entity and runs one way: it is not kept twice.
  if (known?.entityId === entityId) return known
  const made = { ...checkRing(path, entityId, clockwise), entityId }
  knownRings.set(path, made)
  return made
}

/** The path's ring turned the way it should run, with what was wrong about it; empty after a stop. */
function checkRing(path: Slab['outline'], entityId: string, clockwise: boolean): CheckedRing {
  const { ring, findings } = resolvePath(path, entityId)
  if (ring.length === 0) return { ring, findings: [...findings], bad: true }
  const crossing = findSelfCrossing(ring)
  if (crossing) {
    const found: Finding = { code: 'selfCrossing', severity: 'stop', values: {}, at: { entityId, point: crossing } }
    return { ring, findings: [...findings, found], bad: true }
  }
  if (ringArea(ring) > 0 !== clockwise) return { ring, findings: [...findings], bad: false }
  const turned: Finding = {
    code: 'wrongWinding',
    severity: 'check',
    values: {},
    at: { entityId, point: ring[0]!.from },
  }
  return { ring: reverseRing(ring), findings: [...findings, turned], bad: false }
}

/** A scrap of a claim thinner than this on average is left to the field: a few times what chords may stray by. */
const hairlineM = 5e-4

/** True where regions certainly share no ground: their boundaries keep clear and neither lies in the other. */
function regionsApart(a: CurveRegion, b: CurveRegion): boolean {
  if (!boxesMeet(ringBounds(a.outer), ringBounds(b.outer))) return true
  const ringsOf = (r: CurveRegion) => [r.outer, ...r.holes]
  if (regionContains(a, b.outer[0]!.from) || regionContains(b, a.outer[0]!.from)) return false
  return ringsOf(a).every(p => ringsOf(b).every(q => ringsClear(p, q)))
}

interface ClaimedBefore {
  readonly regions: readonly CurveRegion[]
  readonly rivals: readonly CurveRegion[]
  readonly shape: readonly CurveRegion[]
  readonly chordsKept: boolean
}

/** By entity that can no longer change: what it claimed last. While a corner is dragged most claims stay as they are. */
const knownClaims = new WeakMap<object, ClaimedBefore>()

/** Takes off what others have claimed before, and keeps the claim. */
class Claims {
  private readonly taken: { readonly id: string; readonly region: CurveRegion }[] = []

  /** `clearOf`: earlier claims that it shares no ground with by construction. */
  claim(
    entity: { readonly id: string },
    regions: readonly CurveRegion[],
    clearOf: readonly string[] = [],
  ): Pick<ClaimedBefore, 'shape' | 'chordsKept'> {
    const rivals = this.taken
      .filter(t => !clearOf.includes(t.id) && regions.some(r => !regionsApart(r, t.region)))
      .map(t => t.region)
    const known = knownClaims.get(entity)
    const claimed =
      known && sameRegions(known.regions, regions) && sameRegions(known.rivals, rivals)
        ? known
        : { regions, rivals, ...leaveClaim(regions, rivals) }
    if (Object.isFrozen(entity)) knownClaims.set(entity, claimed)
    for (const region of claimed.shape) this.taken.push({ id: entity.id, region })
    return claimed
  }

  /** What the claims other than `known` leave of regions; `leftM2` is its area. */
  left(regions: readonly CurveRegion[], known: ReadonlySet<string>, leftM2: number): readonly CurveRegion[] {
    const rivals = this.taken.filter(t => !known.has(t.id)).map(t => t.region)
    return subtractCurves(regions, rivals, leftM2).regions
  }
}

function leaveClaim(regions: readonly CurveRegion[], rivals: readonly CurveRegion[]) {
  const { regions: left, chordsKept } = subtractCurves(regions, rivals)
  return { shape: left.filter(r => curveArea([r]) > hairlineM * (ringLength(r.outer) / 2)), chordsKept }
}

const knownSlabs = new WeakMap<Slab, ResolvedSlab>()

/**
 * Works a slab out: exact rings, areas and lengths, openings taken out, and the ground of each inset, band and border.
 * Claims go inset, band, border, in document order within each; what two of them want counts once, for the first.
 * Border lengths are those of the border itself, before insets and bands are let into it.
 * After a stop on the outline every figure is 0 and every shape empty (the outline stays, to be drawn); after a stop on
 * an opening, border, band or inset that entity takes no part. Never throws on bad input.
 * Once for a slab that can no longer change (frozen): page, commands and plan ask for the same one.
 */
export function resolveSlab(slab: Slab): ResolvedSlab {
  if (!Object.isFrozen(slab)) return workSlabOut(slab)
  const known = knownSlabs.get(slab)
  if (known) return known
  const made = workSlabOut(slab)
  knownSlabs.set(slab, made)
  return made
}

function workSlabOut(slab: Slab): ResolvedSlab {
  const findings: Finding[] = []
  const outlined = resolveRing(slab.outline, slab.id, false)
  findings.push(...outlined.findings)
  const outline = outlined.ring
  const base = {
    id: slab.id,
    name: slab.name,
    levelM: slab.levelM,
    finishId: slab.finishId,
    outline,
  }
  if (outlined.bad)
    return {
      ...base,
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
      findings,
    }

  const cut: { opening: ResolvedOpening; path: Slab['outline'] }[] = []
  for (const { id, kind, path, pool } of slab.openings) {
    const { ring, findings: found, bad } = resolveRing(path, id, true)
    findings.push(...found)
    if (bad) continue
    const opening = { id, kind, ring, areaM2: -ringArea(ring), perimeterM: ringLength(ring) }
    cut.push({ opening: pool === undefined ? opening : { ...opening, pool }, path })
  }
  const checked = checkOpenings(
    outline,
    cut.map(c => c.opening),
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
  const grossAreaM2 = ringArea(outline)
  const netAreaM2 = curveArea(net)

  const claims = new Claims()
  const insets: Claim[] = []
  for (const inset of slab.insets) {
    const { id, path, finishId, placed: when } = inset
    const { ring, findings: found, bad } = resolveRing(path, id, false)
    findings.push(...found)
    const whole: CurveRegion[] = bad ? [] : [{ outer: ring, holes: [] }]
    const inside = clipCurveRings(bad ? [] : [ring], net)
    const outsideM2 = bad ? 0 : curveArea(subtractCurves(whole, [gross]).regions)
    if (outsideM2 > smallAreaM2 || (!bad && inside.regions.length === 0))
      findings.push({
        code: 'insetOutside',
        severity: inside.regions.length === 0 ? 'stop' : 'check',
        values: { outsideM2 },
        at: { entityId: id, point: ring[0]!.from },
      })
    const { shape, chordsKept } = claims.claim(inset, inside.regions)
    insets.push({
      id,
      finishId,
      placed: when,
      shape,
      areaM2: curveArea(shape),
      chordsKept: chordsKept || inside.chordsKept,
    })
  }

  const bands: ResolvedBand[] = slab.bands.map(band => {
    const { shape: raw, findings: found } = resolveBand(band, outline, net)
    findings.push(...found)
    const { shape, chordsKept } = claims.claim(band, raw.regions)
    return {
      id: band.id,
      finishId: band.finishId,
      placed: band.placed,
      shape,
      areaM2: curveArea(shape),
      chordsKept: chordsKept || raw.chordsKept,
      widthM: band.widthM,
      lengthM: raw.lengthM,
    }
  })

  const rings: BorderRing[] = [
    { path: slab.outline, ring: outline },
    ...placed.map(c => ({ path: c.path, ring: c.opening.ring })),
  ]
  const bordered = resolveBorders(slab.borders, rings, net)
  findings.push(...bordered.findings)
  const borders: ResolvedBorder[] = bordered.shapes.map(raw => {
    const { shape, chordsKept } = claims.claim(raw.border, raw.regions, raw.clearOf)
    return {
      id: raw.border.id,
      finishId: raw.border.finishId,
      placed: raw.border.placed,
      shape,
      areaM2: curveArea(shape),
      chordsKept: chordsKept || raw.chordsKept,
      pathId: raw.border.pathId,
      widthM: raw.border.widthM,
      outerLengthM: raw.outerLengthM,
      innerLengthM: raw.innerLengthM,
      centerLengthM: raw.centerLengthM,
    }
  })

  const plain = net.length === 1 ? insideFronts(net[0]!, bordered.fronts) : undefined
  const claimed = [...insets, ...bands, ...borders]
  const fieldAreaM2 = claimed.reduce((sum, c) => sum - c.areaM2, netAreaM2)
  let field: readonly CurveRegion[] | undefined
  const leaveField = () =>
    plain
      ? claims.left([plain], new Set(bordered.fronts.flatMap(f => f.borderIds)), fieldAreaM2)
      : claims.left(net, new Set(), fieldAreaM2)
  for (const c of claimed)
    if (c.chordsKept) findings.push({ code: 'arcsKeptAsChords', severity: 'note', values: {}, at: { entityId: c.id } })
  return {
    ...base,
    openings,
    net,
    grossAreaM2,
    openingAreaM2: checked.apart ? openings.reduce((sum, o) => sum + o.areaM2, 0) : grossAreaM2 - netAreaM2,
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
