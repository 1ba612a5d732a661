import { ringBounds } from '../../../core/geometry/bounds'
import { regionContains } from '../../../core/geometry/contains'
import type { CurveRegion } from '../../../core/geometry/curve'
import { type LabelSpot, nameSpot, roomAt } from './drawPours'

/** A name moves once its room, or a side of what it names, is another by this share. */
const steadyShare = 0.02

interface Stood {
  readonly region: CurveRegion
  readonly spot: LabelSpot
}

function standsWell({ region: before, spot }: Stood, now: CurveRegion): boolean {
  const [a, b] = [ringBounds(before.outer), ringBounds(now.outer)]
  const moveM = Math.max(
    Math.abs(a.minX - b.minX),
    Math.abs(a.minY - b.minY),
    Math.abs(a.maxX - b.maxX),
    Math.abs(a.maxY - b.maxY),
  )
  if (moveM > steadyShare * Math.min(a.maxX - a.minX, a.maxY - a.minY)) return false
  if (before.holes.length !== now.holes.length || !regionContains(now, spot.at)) return false
  return Math.abs(roomAt(now, spot.at) - spot.roomM) <= steadyShare * spot.roomM
}

/**
 * Where names stand, by the ids of what they name: as `nameSpot`, but a name keeps its place while a hand moves an edge
 * by little, so that it neither jumps nor is looked for in every frame.
 */
export function steadySpots(): (id: string, region: CurveRegion) => LabelSpot {
  const stood = new Map<string, Stood>()
  return (id, region) => {
    const before = stood.get(id)
    if (before && (before.region === region || standsWell(before, region))) return before.spot
    const spot = nameSpot(region)
    stood.set(id, { region, spot })
    return spot
  }
}
