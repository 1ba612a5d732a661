/** The directions in which a part may be cut: wished ones, then its own long edges, then its main axes. */
import type { CutRegion } from '../region/cutRegion'
import type { Direction, SearchContext } from './searchContext'

/** Edge directions with less than this share of the perimeter are left out. */
const leastShare = 0.08
export const mostDirections = 6
/** sin of the angle within which two directions are one. */
const sameSin = 0.01

export const isSameDirection = (a: Direction, b: Direction): boolean => Math.abs(a.ux * b.uy - a.uy * b.ux) < sameSin

interface Ranked extends Direction {
  weight: number
  longest: number
}

/** Axes of inertia of the boundary: they turn with the region, whatever its frame. */
function mainAxes(region: CutRegion): Direction[] {
  const { sides } = region.rings[0]!
  const n = sides.length
  let length = 0
  let mx = 0
  let my = 0
  const parts: [x: number, y: number, l: number][] = []
  for (let i = 0; i < n; i++) {
    const s = sides[i]!
    const e = sides[(i + 1) % n]!
    const l = Math.hypot(e.x - s.x, e.y - s.y)
    parts.push([(s.x + e.x) / 2, (s.y + e.y) / 2, l])
    length += l
    mx += (l * (s.x + e.x)) / 2
    my += (l * (s.y + e.y)) / 2
  }
  mx /= length
  my /= length
  let xx = 0
  let xy = 0
  let yy = 0
  for (const [x, y, l] of parts) {
    xx += l * (x - mx) * (x - mx)
    xy += l * (x - mx) * (y - my)
    yy += l * (y - my) * (y - my)
  }
  const round = Math.hypot(xx - yy, 2 * xy) < 1e-6 * (xx + yy)
  const angle = round ? Math.atan2(sides[0]!.y - my, sides[0]!.x - mx) : Math.atan2(2 * xy, xx - yy) / 2
  const ux = Math.cos(angle)
  const uy = Math.sin(angle)
  return [
    { ux, uy },
    { ux: -uy, uy: ux },
  ]
}

/** Unit directions of the long straight edges of a part and their normals, weightiest first. */
function edgeDirections(region: CutRegion): Ranked[] {
  const ranked: Ranked[] = []
  const add = (ux: number, uy: number, weight: number, length: number): void => {
    const known = ranked.find(r => isSameDirection(r, { ux, uy }))
    if (known) {
      known.weight += weight
      if (length > known.longest) Object.assign(known, { ux, uy, longest: length })
    } else ranked.push({ ux, uy, weight, longest: length })
  }
  for (const ring of region.rings)
    for (let i = 0; i < ring.sides.length; i++) {
      const s = ring.sides[i]!
      if (s.sweep !== 0) continue
      const e = ring.sides[(i + 1) % ring.sides.length]!
      const length = Math.hypot(e.x - s.x, e.y - s.y)
      if (length < 1) continue
      add((e.x - s.x) / length, (e.y - s.y) / length, length, length)
      add(-(e.y - s.y) / length, (e.x - s.x) / length, 0.3 * length, 0)
    }
  return ranked.filter(r => r.weight > leastShare * region.perimeterM).sort((a, b) => b.weight - a.weight)
}

/** Share of the perimeter in arcs from which a part counts as curved. */
const curvedShare = 0.3

interface ArcNormal extends Direction {
  readonly length: number
}

/** Normals to the middles of the arcs that bulge into a curved part, longest first: joints meet an opening squarely. */
function arcNormals(region: CutRegion): ArcNormal[] {
  const normals: ArcNormal[] = []
  let curved = 0
  for (const ring of region.rings)
    for (const s of ring.sides) {
      curved += s.r * Math.abs(s.sweep)
      if (s.sweep >= 0 || s.r < 0.5) continue
      const angle = Math.atan2(s.y - s.cy, s.x - s.cx) + s.sweep / 2
      normals.push({ ux: Math.cos(angle), uy: Math.sin(angle), length: -s.r * s.sweep })
    }
  return curved < curvedShare * region.perimeterM ? [] : normals.sort((a, b) => b.length - a.length)
}

export function directionsOf(
  region: CutRegion,
  wished: readonly Direction[],
  most: number,
  along: readonly Direction[],
): Direction[] {
  const chosen: Direction[] = [...wished]
  const add = (d: Direction): void => {
    if (chosen.length < Math.max(most, wished.length) && !chosen.some(c => isSameDirection(c, d)))
      chosen.push({ ux: d.ux, uy: d.uy })
  }
  for (const d of edgeDirections(region)) add(d)
  if (chosen.length < 2) for (const d of mainAxes(region)) add(d)
  if (wished.length === 0) {
    let last = 0
    for (const d of arcNormals(region)) {
      if (chosen.length >= most && d.length < last - 1e-6) break
      last = d.length
      // A tie is never broken by the order of the edges.
      if (!chosen.some(c => isSameDirection(c, d))) chosen.push({ ux: d.ux, uy: d.uy })
    }
  }
  for (const d of along) if (!chosen.some(c => isSameDirection(c, d))) chosen.push(d)
  return chosen
}

/** Joints need not keep to a few directions: in curved parts, and where twelve are allowed. */
export function turnsFreely({ rings, perimeterM }: CutRegion, { wished }: SearchContext): boolean {
  if (wished.length > 0) return wished.length > mostDirections
  let curved = 0
  for (const { sides } of rings) for (const s of sides) curved += s.r * Math.abs(s.sweep)
  return curved >= curvedShare * perimeterM
}
