/** A finish drawn to scale on paper: its color, its stones, cut at the edge of what it covers. */
import type { Finish } from '../../../shared/document/materials'
import { pointBounds } from '../../geometry/bounds'
import type { CurveRegion } from '../../geometry/curve'
import { flattenRing } from '../../geometry/flattenRing'
import { curveRegionPath, type Frame, ringToPage } from '../frame'
import { closedPath, drawPath } from '../svgPen'
import { patternTile, type Stone } from './finishPattern'
import { countStones, stonesOver } from './patternStones'
import { jointShare, stoneShare, stoneTint, tint } from './tones'

/** Joints nearer than this on paper, in points, run together: the color alone is drawn. Soft tones may lie nearer. */
const leastJointPt = 2.2
const leastTonePt = 0.8
/** More stones than this make a sheet that no viewer opens gladly. */
const mostStones = 24_000

export interface FinishPen {
  readonly frame: Frame
  /** Names the clips of this picture; counts up. */
  readonly clips: { next: number }
}

const clipped = ({ clips }: FinishPen, d: string, inside: string): string => {
  const id = `cut-${clips.next++}`
  return `<clipPath id="${id}"><path d="${d}" clip-rule="evenodd"/></clipPath><g clip-path="url(#${id})">${inside}</g>`
}

const shapePath = (frame: Frame, shape: readonly CurveRegion[]): string =>
  shape.map(region => curveRegionPath(frame, region)).join('')

/** Stones of one tone are one path, joints one more. */
function drawStones(stones: readonly Stone[], color: string, jointed: boolean, frame: Frame): string {
  const byTint = new Map<number, string[]>()
  const whole = (points: Stone['points']) => closedPath(ringToPage(frame, points))
  for (const { points, face, tone } of stones) {
    const share = stoneTint(tone, jointed ? stoneShare : stoneShare / 2)
    const list = byTint.get(share) ?? []
    list.push(whole(face ?? points))
    byTint.set(share, list)
  }
  const fills = [...byTint]
    .sort(([a], [b]) => a - b)
    .map(([share, paths]) => drawPath(paths.join(''), { fill: tint(color, share) }))
  if (!jointed) return fills.join('')
  const joint = tint(color, jointShare)
  // Where corners are worn round the joint widens.
  const worn = stones.filter(({ face }) => face !== undefined)
  const under = worn.length === 0 ? '' : drawPath(worn.map(({ points }) => whole(points)).join(''), { fill: joint })
  const joints = drawPath(stones.map(({ points, face }) => whole(face ?? points)).join(''), {
    stroke: joint,
    width: 0.5,
  })
  return under + fills.join('') + joints
}

export function drawFinish(shape: readonly CurveRegion[], finish: Finish, pen: FinishPen): string {
  const { frame } = pen
  const d = shapePath(frame, shape)
  const ground = drawPath(d, { fill: tint(finish.color, 0), evenOdd: true })
  const tile = patternTile(finish.pattern)
  if (tile === null || tile.jointM * frame.ptPerM < (tile.jointed ? leastJointPt : leastTonePt)) return ground
  const box = pointBounds(shape.flatMap(region => flattenRing(region.outer)))
  if (countStones(tile, box) > mostStones) return ground
  return ground + clipped(pen, d, drawStones(stonesOver(tile, finish, box), finish.color, tile.jointed, frame))
}

/** Courses of a border, in the order they are laid: a later edge's lie over an earlier one's. */
export function drawCourses(
  shape: readonly CurveRegion[],
  stones: readonly Stone[],
  finish: Finish,
  pen: FinishPen,
): string {
  const { frame } = pen
  const d = shapePath(frame, shape)
  const inside = stones
    .map(({ points, tone }) =>
      drawPath(closedPath(ringToPage(frame, points)), {
        fill: tint(finish.color, stoneTint(tone)),
        stroke: tint(finish.color, jointShare),
        width: 0.5,
      }),
    )
    .join('')
  return drawPath(d, { fill: tint(finish.color, 0), evenOdd: true }) + clipped(pen, d, inside)
}
