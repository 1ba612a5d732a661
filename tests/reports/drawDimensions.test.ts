import { describe, expect, it } from 'vitest'
import { resolvePath } from '../../core/geometry/resolvePath'
import { drawDimensions } from '../../core/reports/drawDimensions'
import { type Frame, flatToPage } from '../../core/reports/frame'
import { type LabelBox, placeLabels } from '../../core/reports/placeLabels'
import type { XY } from '../../core/reports/svgPen'
import { printMeasures } from '../../core/units/printMeasures'
import type { Pt } from '../../shared/document/primitives'
import { drawPath, rectangle } from '../geometry/drawSlab'

const ft = 0.3048
const print = printMeasures('ftin')
const bounds = { x0: 0, y0: 0, x1: 1000, y1: 800 }
const feet = (points: readonly Pt[]): Pt[] => points.map(([x, y]): Pt => [x * ft, y * ft])
const ringOf = (key: number, points: readonly Pt[]) => resolvePath(drawPath(key, points), `s${key}`).ring

/** The boxes of the letters that are chosen, and those of their lines. */
function placed(outlines: readonly ReturnType<typeof ringOf>[], frame: Frame, crowns: readonly XY[][] = []) {
  const { wishes } = drawDimensions(outlines, frame, print, { crowns, steps: [] })
  const places = placeLabels(
    wishes.map(wish => ({ ...wish, candidates: wish.candidates.map(each => ({ ...each, place: each.boxes })) })),
    { segments: [], boxes: [], bounds },
  )
  return places.flatMap(boxes => (boxes ? [{ letters: boxes[0]!, line: boxes[1]! }] : []))
}

/** The points of a turned box, its middle and its corners. */
function pointsOf({ center, width, height, turnDeg = 0 }: LabelBox): readonly XY[] {
  const a = (-turnDeg * Math.PI) / 180
  const at = (s: number, t: number): XY => [
    center[0] + (s * width * Math.cos(a) - t * height * Math.sin(a)) / 2,
    center[1] + (s * width * Math.sin(a) + t * height * Math.cos(a)) / 2,
  ]
  return [at(0, 0), at(-1, -1), at(1, -1), at(1, 1), at(-1, 1), at(-0.9, 0), at(0.9, 0)]
}

describe('dimensions on paper', () => {
  it('lie on no other slab, however narrow the gap', () => {
    for (const gapFt of [1, 3, 6])
      for (const ptPerM of [12, 20, 30]) {
        const slabs = [rectangle(0, 0, 24, 14), rectangle(24 + gapFt, 0, 20, 14)].map((each, i) =>
          ringOf(i + 1, feet(each)),
        )
        const frame: Frame = { ptPerM, originPt: [120, 500] }
        const boxes = slabs.map(ring => {
          const points = flatToPage(frame, ring)
          const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
          return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
        })
        const all = placed(slabs, frame)
        expect(all).toHaveLength(8)
        const onBoth = ({ letters, line }: (typeof all)[number]): boolean =>
          boxes.filter(([x0, x1, y0, y1]) =>
            [...pointsOf(letters), ...pointsOf(line)].some(([x, y]) => x > x0 + 1 && x < x1 - 1 && y > y0 && y < y1),
          ).length > 1
        expect(all.some(onBoth), `${gapFt} ${ptPerM}`).toBe(false)
        // The first slab's own four lines come first.
        const [a0, a1] = boxes[0]!
        const [b0, b1] = boxes[1]!
        for (const [i, { letters }] of all.entries()) {
          const [low, high] = i < 4 ? [b0, b1] : [a0, a1]
          expect(letters.center[0] > low && letters.center[0] < high, `${i} ${gapFt} ${ptPerM}`).toBe(false)
        }
      }
  })

  it('of a short edge beside a tree have their letters beyond its crown', () => {
    // A driveway that widens at the street, a crown over the flare.
    const outline = ringOf(
      1,
      feet([
        [0, 0],
        [26, 0],
        [23, 6],
        [23, 48],
        [3, 48],
        [3, 6],
      ]),
    )
    const frame: Frame = { ptPerM: 14.8, originPt: [300, 500] }
    const [[cx, cy], r] = [[300 - 9 * ft * 14.8, 500 - 14 * ft * 14.8], 12 * ft * 14.8] as const
    const crown = Array.from(
      { length: 24 },
      (_, i): XY => [cx + r * Math.cos((i * Math.PI) / 12), cy + r * Math.sin((i * Math.PI) / 12)],
    )
    const all = placed([outline], frame, [crown])
    expect(all).toHaveLength(6)
    for (const { letters } of all)
      for (const [x, y] of pointsOf(letters)) expect(Math.hypot(x - cx, y - cy)).toBeGreaterThan(r - 2)
  })
})
