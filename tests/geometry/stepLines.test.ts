import { describe, expect, it } from 'vitest'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import { stepLines, stepsRing } from '../../core/geometry/stepLines'
import { stepsVolume } from '../../core/quantities/concrete'
import type { Path } from '../../shared/document/path'
import { drawPath, rectangle } from './drawSlab'

const plain = drawPath(1, rectangle(0, 0, 10, 6))
/** The right side of the rectangle as half a circle of 3 m, out or in. */
const round = (riseM: number): Path => ({
  ...plain,
  edges: plain.edges.map((edge, i) => (i === 1 ? { ...edge, riseM } : edge)),
})
const flight = (edge: number, treadM = 0.5) => ({
  id: 'k1',
  edgeId: plain.edges[edge]!.id,
  fromT: 0.25,
  widthM: 2,
  risers: 3,
  riserM: 0.2,
  treadM,
})
const linesOn = (path: Path, edge: number, treadM?: number) =>
  stepLines(resolvePath(path, 's1').ring, flight(edge, treadM))

describe('the lines of a flight of steps', () => {
  it('go out from a straight edge, tread by tread, with a line at either end', () => {
    const [first, second, ...ends] = linesOn(plain, 0)
    expect([first!.from, first!.to]).toEqual([
      [2.5, -0.5],
      [4.5, -0.5],
    ])
    expect([second!.from, second!.to]).toEqual([
      [2.5, -1],
      [4.5, -1],
    ])
    expect(ends.map(({ from, to }) => [from, to])).toEqual([
      [
        [2.5, 0],
        [2.5, -1],
      ],
      [
        [4.5, 0],
        [4.5, -1],
      ],
    ])
  })

  it('cover a rectangle beside a straight edge, a piece of a ring beside an arc', () => {
    const areaOn = (path: Path, edge: number) =>
      Math.abs(ringArea(stepsRing(resolvePath(path, 's1').ring, flight(edge))))
    expect(areaOn(plain, 0)).toBeCloseTo(2 * 1, 9)
    expect(areaOn(round(3), 1)).toBeCloseTo(((2 / 3) * (4 ** 2 - 3 ** 2)) / 2, 9)
    expect(areaOn(round(-3), 1)).toBeCloseTo(((2 / 3) * (3 ** 2 - 2 ** 2)) / 2, 9)
    expect(stepsRing(resolvePath(plain, 's1').ring, { ...flight(0), edgeId: 'none' })).toEqual([])
  })

  it('run about the center of an arc: wider with each tread outside it, narrower in a hollow, as deep as it is', () => {
    const out = linesOn(round(3), 1)
    const into = linesOn(round(-3), 1)
    const radii = (lines: typeof out) => lines.flatMap(({ arc }) => (arc ? [arc.radiusM] : []))
    expect(radii(out)).toEqual([expect.closeTo(3.5, 9), expect.closeTo(4, 9)])
    expect(radii(into)).toEqual([expect.closeTo(2.5, 9), expect.closeTo(2, 9)])
    for (const { arc, from, to } of out)
      if (arc) {
        // 2 m along an edge of radius 3 m.
        expect(arc.sweepRad).toBeCloseTo(2 / 3, 9)
        for (const p of [from, to])
          expect(Math.hypot(p[0] - arc.center[0], p[1] - arc.center[1])).toBeCloseTo(arc.radiusM, 9)
      }
    expect(radii(linesOn(round(-3), 1, 2))).toEqual([expect.closeTo(1, 9)])
    expect(linesOn(round(-3), 1, 4)).toEqual([])
  })

  it('hold concrete by pieces of a ring where they run about an arc', () => {
    const arc = { center: [0, 0], radiusM: 3, sweepRad: 2 } as const
    // Two treads of 0.5 m about 3 m, over an angle of 2/3: ½ φ (R² − r²), the inner one two risers of 0.2 m high.
    const byHand = (1 / 3) * ((3.5 ** 2 - 9) * 2 + (16 - 3.5 ** 2)) * 0.2
    expect(stepsVolume(flight(1), arc)).toBeCloseTo(byHand, 12)
    const hollow = (1 / 3) * ((9 - 2.5 ** 2) * 2 + (2.5 ** 2 - 4)) * 0.2
    expect(stepsVolume(flight(1), { ...arc, sweepRad: -2 })).toBeCloseTo(hollow, 12)
    // As good as straight.
    expect(stepsVolume(flight(1), { ...arc, radiusM: 1e7 })).toBeCloseTo(stepsVolume(flight(1)), 6)
  })
})
