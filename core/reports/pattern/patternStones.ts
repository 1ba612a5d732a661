/** The stones of a pattern where they lie on the plan. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'
import type { Box } from '../../geometry/bounds'
import type { PatternTile, Stone } from './finishPattern'

export type Laid = Pick<Finish, 'patternDeg' | 'patternAt'>

/** Where the pattern starts, and how far it is turned counter-clockwise from drawing-right. */
export const layOf = ({ patternDeg = 0, patternAt = [0, 0] }: Laid): { readonly at: Pt; readonly deg: number } => ({
  at: patternAt,
  deg: patternDeg,
})

/** The repeats of the tile that a box of the plan can show, as the index of their column and row. */
function repeatsOver(tile: PatternTile, finish: Laid, box: Box) {
  const { at, deg } = layOf(finish)
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
  const corners = [
    [box.minX, box.minY],
    [box.maxX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
  ].map(([x, y]): Pt => {
    const [dx, dy] = [x! - at[0], y! - at[1]]
    return [dx * cos + dy * sin, dy * cos - dx * sin]
  })
  const span = (axis: 0 | 1, sideM: number): readonly [number, number] => {
    const along = corners.map(corner => corner[axis])
    // One more on each side: a stone may reach over its tile's side.
    return [Math.floor(Math.min(...along) / sideM) - 1, Math.floor(Math.max(...along) / sideM) + 1]
  }
  return { at, cos, sin, columns: span(0, tile.widthM), rows: span(1, tile.heightM) }
}

/** How many stones `stonesOver` would come to, about: for leaving them out where they are too many. */
export function countStones(tile: PatternTile, box: Box): number {
  const areaM2 = (box.maxX - box.minX) * (box.maxY - box.minY)
  return (areaM2 / (tile.widthM * tile.heightM)) * tile.own.length
}

/** Every stone that may show in a box of the plan, in plan meters, in the same order each time. */
export function stonesOver(tile: PatternTile, finish: Laid, box: Box): Stone[] {
  const { at, cos, sin, columns, rows } = repeatsOver(tile, finish, box)
  const stones: Stone[] = []
  for (let row = rows[0]; row <= rows[1]; row++)
    for (let column = columns[0]; column <= columns[1]; column++)
      for (const { points, face, tone } of tile.own) {
        const [dx, dy] = [column * tile.widthM, row * tile.heightM]
        const lay = ([x, y]: Pt): Pt => [
          at[0] + (x + dx) * cos - (y + dy) * sin,
          at[1] + (x + dx) * sin + (y + dy) * cos,
        ]
        const laid = points.map(lay)
        if (touches(laid, box))
          stones.push({ points: laid, ...(face === undefined ? {} : { face: face.map(lay) }), tone })
      }
  return stones
}

function touches(points: readonly Pt[], box: Box): boolean {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return maxX > box.minX && minX < box.maxX && maxY > box.minY && minY < box.maxY
}
