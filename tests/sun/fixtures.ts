/** Small sites for the sun tests. Invented. */

import type { CurveRegion, CurveRing, Ring } from '../../core/geometry/curve'
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { type ResolvedCaster, resolveCaster } from '../../core/sun/resolveCaster'
import { type SiteDay, siteDay } from '../../core/sun/siteDay'
import type { Building, Caster, Cover, Tree, Wall } from '../../shared/document/caster'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'

/** Seeded numbers in [0, 1). Source: T. Ettinger, mulberry32, public domain. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

export const pathOf = (points: readonly Pt[], first = 1): Path => ({
  id: `p${first}`,
  vertices: points.map((at, i) => ({ id: `v${first + i}`, at })),
  edges: points.map((_, i) => ({ id: `e${first + i}` })),
})

export const box = (x: number, y: number, width: number, height: number): Pt[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

export const curveRing = (points: Ring): CurveRing =>
  points.map((from, i) => ({ edgeId: `e${i + 1}`, from, to: points[(i + 1) % points.length]! }))

export const curveRegion = (points: Ring, holes: readonly Ring[] = []): CurveRegion => ({
  outer: curveRing(points),
  holes: holes.map(curveRing),
})

export const slabOf = (points: Ring, holes: readonly Ring[] = [], levelM = 0): ResolvedSlab => {
  const net = [curveRegion(points, holes)]
  return {
    id: 's1',
    name: 'Patio',
    levelM,
    finishId: 'f1',
    outline: curveRing(points),
    openings: [],
    net,
    grossAreaM2: 0,
    openingAreaM2: 0,
    netAreaM2: 0,
    perimeterM: 0,
    openingPerimeterM: 0,
    borders: [],
    bands: [],
    insets: [],
    field: net,
    fieldAreaM2: 0,
    findings: [],
  }
}

export const building = (points: readonly Pt[], more: Partial<Building> = {}): Building => ({
  id: 'c1',
  name: 'House',
  kind: 'building',
  footprint: pathOf(points),
  baseM: 0,
  eaveM: 3,
  overhangM: 0,
  roof: { form: 'flat' },
  ...more,
})

export const wall = (line: readonly Pt[], more: Partial<Wall> = {}): Wall => ({
  id: 'c2',
  name: 'Fence',
  kind: 'wall',
  line: [...line],
  baseM: 0,
  topM: 2,
  solidity: 1,
  ...more,
})

export const tree = (at: Pt, more: Partial<Tree> = {}): Tree => ({
  id: 'c3',
  name: 'Shade tree',
  kind: 'tree',
  at,
  baseM: 0,
  trunkM: 2,
  topM: 8,
  crownRadiusM: 3,
  density: 'medium',
  leaves: 'evergreen',
  ...more,
})

export const cover = (points: readonly Pt[], more: Partial<Cover> = {}): Cover => ({
  id: 'c4',
  name: 'Porch cover',
  kind: 'cover',
  outline: pathOf(points),
  undersideM: 2.5,
  topM: 2.7,
  light: 'none',
  ...more,
})

export const cast = (caster: Caster): ResolvedCaster => resolveCaster(caster).value

/** High plains, mountain time, drawing-up = true north. */
export const place: Place = { latDeg: 40, lonDeg: -105, elevationM: 1600, zone: 'America/Denver', northDeg: 0 }

export const dayOf = (date: string, zone: string = place.zone): SiteDay => {
  const day = siteDay(date, zone)
  if (!day.ok) throw new Error(`${date} in ${zone} is no day`)
  return day.value
}
