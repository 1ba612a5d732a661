/** A pour cut across its placing direction into strips of wanted areas, arcs exact. */
import type { Pt } from '../../../shared/document/primitives'
import type { CurveRegion } from '../../geometry/curve'
import { type Chord, findChords } from '../region/chords'
import { type CutRegion, toCurveRegion, toCutRegion } from '../region/cutRegion'
import { insidePoint } from '../region/insidePoint'
import { extentOf, minimumBox } from '../region/minimumBox'
import { type Segment, traceFaces } from '../region/traceFaces'

/** Unit vector in which the placing moves on. */
export type Direction = readonly [x: number, y: number]

export interface Strip {
  readonly regions: readonly CurveRegion[]
  readonly areaM2: number
  /** Along the placing direction. */
  readonly depthM: number
  /** Of the pour's own boundary. */
  readonly formedM: number
  /** Across: where the strip begins and where it ends. */
  readonly frontM: number
  /** The marks where this strip ends and the next begins; none after the last. */
  readonly ends: readonly { readonly from: Pt; readonly to: Pt }[]
}

/**
 * ∫ (c − d)₊ ds along one side, d the distance in the placing direction and s across it (to the right of it): by Green's
 * theorem the sum over a region's boundary is its area with d < c, holes and arcs included.
 */
function areaTerm(
  side: CutRegion['rings'][number]['sides'][number],
  end: { readonly x: number; readonly y: number },
  [ux, uy]: Direction,
  c: number,
): number {
  const d0 = ux * side.x + uy * side.y
  const d1 = ux * end.x + uy * end.y
  // s runs so that (s, d) is right-handed: s = (uy, −ux)·p.
  if (side.sweep === 0) {
    const ds = uy * (end.x - side.x) - ux * (end.y - side.y)
    const h0 = c - d0
    const h1 = c - d1
    if (h0 >= 0 && h1 >= 0) return (ds * (h0 + h1)) / 2
    if (h0 <= 0 && h1 <= 0) return 0
    const inside = Math.max(h0, h1)
    return (ds * inside * inside) / (2 * Math.abs(h1 - h0))
  }
  const { cx, cy, r, sweep } = side
  const dc = ux * cx + uy * cy
  // With φ measured in the (s, d) frame: s = sc + r cos φ, d = dc + r sin φ.
  const start = Math.atan2(d0 - dc, uy * (side.x - cx) - ux * (side.y - cy))
  const primitive = (phi: number): number => (c - dc) * r * Math.cos(phi) + r * r * (phi / 2 - Math.sin(2 * phi) / 4)
  const cuts = [0, 1]
  const lift = (c - dc) / r
  if (Math.abs(lift) < 1) {
    const asin = Math.asin(lift)
    for (const root of [asin, Math.PI - asin])
      for (let turn = -2; turn <= 2; turn++) {
        const t = (root + 2 * Math.PI * turn - start) / sweep
        if (t > 0 && t < 1) cuts.push(t)
      }
  }
  cuts.sort((a, b) => a - b)
  let sum = 0
  for (let i = 1; i < cuts.length; i++) {
    const from = start + sweep * cuts[i - 1]!
    const to = start + sweep * cuts[i]!
    if (dc + r * Math.sin((from + to) / 2) < c) sum += primitive(to) - primitive(from)
  }
  return sum
}

/** Area of a region behind the line at distance `c` along the direction. */
export function areaBehind(region: CutRegion, direction: Direction, c: number): number {
  let sum = 0
  for (const { sides } of region.rings)
    for (let i = 0; i < sides.length; i++)
      sum += areaTerm(sides[i]!, sides[i + 1 === sides.length ? 0 : i + 1]!, direction, c)
  return sum
}

/** The distance behind which `areaM2` lies: bisection to the last bit that matters. */
function distanceOf(region: CutRegion, direction: Direction, areaM2: number, low: number, high: number): number {
  let [from, to] = [low, high]
  for (let turn = 0; turn < 60 && to - from > 1e-10; turn++) {
    const middle = (from + to) / 2
    if (areaBehind(region, direction, middle) < areaM2) from = middle
    else to = middle
  }
  return (from + to) / 2
}

const chordLength = (chords: readonly Chord[]): number => chords.reduce((sum, chord) => sum + chord.lengthM, 0)

function formedLength(face: CutRegion): number {
  return face.perimeterM - face.jointM
}

/**
 * Strips in placing order whose areas have the given shares (any positive numbers). A strip of a bent or pierced pour
 * may have more than one piece.
 */
export function cutStrips(region: CurveRegion, direction: Direction, shares: readonly number[]): readonly Strip[] {
  const cut = toCutRegion(region)
  const [ux, uy] = direction
  const [low, high] = extentOf(cut.rings[0]!, ux, uy)
  const whole = shares.reduce((sum, share) => sum + share, 0)
  const distances: number[] = [low]
  let behind = 0
  for (const share of shares.slice(0, -1)) {
    behind += (share / whole) * cut.areaM2
    distances.push(distanceOf(cut, direction, behind, distances.at(-1)!, high))
  }
  distances.push(high)
  // The kernel's line {n·p = offset} with n = (−vy, vx) is across when v = (uy, −ux): n = (ux, uy).
  const chordsAt = distances.slice(1, -1).map(at => findChords(cut, uy, -ux, at, true, { done: 0 }, 'break'))
  const segments: Segment[] = chordsAt.flatMap((chords, joint) =>
    chords.map(({ a, b }) => ({ a: { x: a.x, y: a.y, on: a }, b: { x: b.x, y: b.y, on: b }, joint })),
  )
  const faces = segments.length === 0 ? [cut] : traceFaces(cut, segments).faces
  const stripOf = (face: CutRegion): number => {
    const [x, y] = insidePoint(face)
    const at = ux * x + uy * y
    let strip = 0
    while (strip < shares.length - 1 && at > distances[strip + 1]!) strip++
    return strip
  }
  const owners = faces.map(stripOf)
  return shares.map((_, strip) => {
    const own = faces.filter((__, i) => owners[i] === strip)
    const before = chordsAt[strip - 1]
    const after = chordsAt[strip]
    const depthM = distances[strip + 1]! - distances[strip]!
    const areaM2 = own.reduce((sum, face) => sum + face.areaM2, 0)
    const across = Math.max(before ? chordLength(before) : 0, after ? chordLength(after) : 0)
    return {
      regions: own.map(face => toCurveRegion(face, joint => `strip-end-${joint + 1}`)),
      areaM2,
      depthM,
      formedM: own.reduce((sum, face) => sum + formedLength(face), 0),
      frontM: across > 0 ? across : depthM > 0 ? areaM2 / depthM : 0,
      ends: (after ?? []).map(({ a, b }) => ({ from: [a.x, a.y] as const, to: [b.x, b.y] as const })),
    }
  })
}

/** Along and across the least rectangle, both ways: the directions a crew would place in. */
export function placingDirections(region: CurveRegion): readonly Direction[] {
  const box = minimumBox(toCutRegion(region).rings[0]!)
  const [x, y] = [box.ux, box.uy]
  const extent = extentOf(toCutRegion(region).rings[0]!, x, y)
  const alongIsLong = Math.abs(extent[1] - extent[0] - box.longM) < 1e-6
  const long: Direction = alongIsLong ? [x, y] : [-y, x]
  const short: Direction = alongIsLong ? [-y, x] : [x, y]
  return [long, [-long[0], -long[1]], short, [-short[0], -short[1]]]
}
