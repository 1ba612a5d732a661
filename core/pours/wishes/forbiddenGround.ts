/** Lines and areas that no joint may touch, ready to be asked about many joints. */
import { findChords, type Work } from '../region/chords'
import { type CutRegion, toCutRegion } from '../region/cutRegion'
import { extentOf } from '../region/minimumBox'
import type { ForbiddenGround } from '../search/searchContext'
import type { JointWishes } from './jointWishes'
import { distanceBetween } from './wishCost'

/** A joint closer than this to a forbidden line is on it, for those who form and stamp (m): 6 in, own assumption. */
const onLineM = 0.1524
/** Less inside a forbidden area is along its edge (m). */
const alongEdgeM = 1e-3
/** Joints just beside are tried this much farther off (m). */
const clearM = 1e-3
/** Work of looking at one piece of a line, in sides visited. */
const pieceWork = 2

interface Area {
  readonly id: string
  readonly region: CutRegion
}

/** Length of the joint inside the area as seen from one side of the joint, m. */
function insideLength(
  { region }: Area,
  ax: number,
  ay: number,
  ux: number,
  uy: number,
  lengthM: number,
  onIsAbove: boolean,
  work: Work,
): number {
  const t = ux * ax + uy * ay
  let inside = 0
  for (const { t0, t1 } of findChords(region, ux, uy, -uy * ax + ux * ay, onIsAbove, work, 'break'))
    inside += Math.max(0, Math.min(t1, t + lengthM) - Math.max(t0, t))
  return inside
}

/** Null where nothing is forbidden. */
export function forbiddenGround({ forbiddenLines = [], forbiddenAreas = [] }: JointWishes): ForbiddenGround | null {
  const areas = forbiddenAreas.flatMap(({ id, ring }): Area[] =>
    ring.length === 0 ? [] : [{ id, region: toCutRegion({ outer: ring, holes: [] }) }],
  )
  const pieces = forbiddenLines.flatMap(({ line }) =>
    line.slice(1).map(([bx, by], i) => ({ ax: line[i]![0], ay: line[i]![1], bx, by })),
  )
  if (areas.length + pieces.length === 0) return null
  return {
    forbids(ax, ay, bx, by, work) {
      const joint = { ax, ay, bx, by }
      work.done += pieceWork * pieces.length
      if (pieces.some(piece => distanceBetween(joint, piece) < onLineM)) return true
      const lengthM = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay))
      const ux = (bx - ax) / lengthM
      const uy = (by - ay) / lengthM
      // Along an edge of the area only one of the two looks sees the joint inside.
      return areas.some(area =>
        [true, false].every(onIsAbove => insideLength(area, ax, ay, ux, uy, lengthM, onIsAbove, work) > alongEdgeM),
      )
    },
    offsetsBeside(ux, uy) {
      const offsets: number[] = []
      for (const { region } of areas) {
        const [low, high] = extentOf(region.rings[0]!, -uy, ux)
        offsets.push(low - clearM, high + clearM)
      }
      for (const { line } of forbiddenLines) {
        const across = line.map(([x, y]) => -uy * x + ux * y)
        offsets.push(Math.min(...across) - onLineM - clearM, Math.max(...across) + onLineM + clearM)
      }
      return offsets
    },
  }
}
