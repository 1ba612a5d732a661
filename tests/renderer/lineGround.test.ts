import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringContains } from '../../core/geometry/contains'
import type { CurveRing } from '../../core/geometry/curve'
import { toPlan } from '../../renderer/editor/camera/camera'
import { lettersHidden, lineGround, linePxHidden, type NearGround } from '../../renderer/editor/layers/lineGround'
import type { Pt } from '../../shared/document/primitives'

const nothing: NearGround = { flags: [], crowns: [], steps: [], walls: [], marks: [], neighbors: [] }
const camera = { zoom: 25, x: 300, y: 200 }

/** A five-sided slab, each corner at a distance of its own from the middle. */
const slabOf = (reachesM: readonly number[], [x, y]: Pt): CurveRing => {
  const corners = reachesM.map((r, i): Pt => {
    const angle = (2 * Math.PI * i) / reachesM.length
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)]
  })
  return corners.map((from, i) => ({ edgeId: `e${i}`, from, to: corners[(i + 1) % corners.length]! }))
}

describe('what lies about a line', () => {
  it('tells how much of it lies on another slab as samples of the line do, turned any way', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 6, noNaN: true }), { minLength: 5, maxLength: 5 }),
        fc.record({
          x: fc.double({ min: -3, max: 3, noNaN: true }),
          turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
          out: fc.integer({ min: -60, max: 60 }),
        }),
        (reachesM, { x, turn, out }) => {
          const ring = slabOf(reachesM, [x, 1])
          const u: Pt = [Math.cos(turn), Math.sin(turn)]
          const n: Pt = [-u[1], u[0]]
          const [a, longPx]: [Pt, number] = [[300, 200], 400]
          const ground = lineGround({ a, u, n }, { ...nothing, neighbors: [ring] }, camera)
          const isOn = (px: number) =>
            ringContains(ring, toPlan(camera, [a[0] + u[0] * px + n[0] * out, a[1] + u[1] * px + n[1] * out]))
          const sampled = Array.from({ length: longPx }, (_, i) => i + 0.5).filter(isOn).length
          const place = { longPx, out, lettersPx: 60 }
          const hidden = linePxHidden(ground, { ...place, middle: 0 })
          expect(hidden).toBeGreaterThan(sampled - 8)
          for (const middle of [40, 200, 360])
            if (isOn(middle)) expect(lettersHidden(ground, { ...place, middle })).toBe(true)
          // Within reach of an edge a line counts as read with it.
          const keepsOff = ring.every(({ from, to }) =>
            [from, to].some(p => {
              const [sx, sy] = [300 + 25 * p[0], 200 - 25 * p[1]]
              return Math.abs((sx - a[0]) * n[0] + (sy - a[1]) * n[1] - out) >= 6
            }),
          )
          if (keepsOff) expect(hidden).toBeLessThan(sampled + 8)
        },
      ),
    )
  })

  it('has its letters beside a flag, which stands up from its point', () => {
    const ground = lineGround({ a: [300, 200], u: [1, 0], n: [0, 1] }, { ...nothing, flags: [[4, 0]] }, camera)
    // 100 px along the line, 14 px high.
    const isHidden = (middle: number, out: number) => lettersHidden(ground, { longPx: 400, out, middle, lettersPx: 40 })
    expect([isHidden(100, 0), isHidden(100, -20), isHidden(130, 0)]).toEqual([true, true, true])
    expect([isHidden(100, 14), isHidden(100, -28), isHidden(140, 0)]).toEqual([false, false, false])
  })

  it('finds nothing where nothing stands', () => {
    const ground = lineGround({ a: [0, 0], u: [1, 0], n: [0, 1] }, nothing, camera)
    const place = { longPx: 100, out: 30, middle: 50, lettersPx: 60 }
    expect([linePxHidden(ground, place), lettersHidden(ground, place)]).toEqual([0, false])
  })
})
