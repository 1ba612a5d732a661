import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addBuilding } from '../../core/document/commands/addCaster'
import { setPicture } from '../../core/document/commands/setSite'
import { createMemo } from '../../core/plan/memo'
import { emptySite } from '../../renderer/app/emptySite'
import { type Camera, fitBox, panBy, pinch, toPlan, toScreen, zoomAt } from '../../renderer/editor/camera/camera'
import { homeBox } from '../../renderer/editor/camera/homeBox'
import { homeCamera } from '../../renderer/editor/camera/homeCamera'
import { madeBox } from '../../renderer/editor/camera/madeBox'
import { furniture } from '../../renderer/editor/layers/furniture'
import { deriveLive } from '../../renderer/store/livePlan'
import type { Pt } from '../../shared/document/primitives'

const camera: fc.Arbitrary<Camera> = fc.record({
  zoom: fc.double({ min: 1, max: 400, noNaN: true }),
  x: fc.double({ min: -2000, max: 2000, noNaN: true }),
  y: fc.double({ min: -2000, max: 2000, noNaN: true }),
})
const screen: fc.Arbitrary<Pt> = fc.tuple(
  fc.double({ min: 0, max: 1400, noNaN: true }),
  fc.double({ min: 0, max: 900, noNaN: true }),
)

const expectNear = (a: Pt, b: Pt, digits = 6) => {
  expect(a[0]).toBeCloseTo(b[0], digits)
  expect(a[1]).toBeCloseTo(b[1], digits)
}

describe('the camera', () => {
  it('turns a point of the screen into the plan and back', () => {
    fc.assert(
      fc.property(camera, screen, (c, p) => {
        expectNear(toScreen(c, toPlan(c, p)), p)
      }),
      { seed: 3 },
    )
  })

  it('draws y up', () => {
    const c = { zoom: 10, x: 0, y: 0 }
    expect(toScreen(c, [1, 2])).toEqual([10, -20])
  })

  it('zooms about the pointer: what lies under it stays under it', () => {
    fc.assert(
      fc.property(camera, screen, fc.double({ min: 0.5, max: 2, noNaN: true }), (c, p, factor) => {
        expectNear(toPlan(zoomAt(c, p, factor), p), toPlan(c, p))
      }),
      { seed: 4 },
    )
  })

  it('keeps both plan points under two fingers that pinch along their line', () => {
    const c = { zoom: 50, x: 100, y: 700 }
    const [from, to]: [[Pt, Pt], [Pt, Pt]] = [
      [
        [200, 300],
        [600, 300],
      ],
      [
        [150, 340],
        [750, 340],
      ],
    ]
    const after = pinch(c, from, to)
    expectNear(toPlan(after, to[0]), toPlan(c, from[0]))
    expectNear(toPlan(after, to[1]), toPlan(c, from[1]))
  })

  it('does not jump when a second finger touches or lifts', () => {
    const c = { zoom: 50, x: 100, y: 700 }
    const fingers: [Pt, Pt] = [
      [10, 10],
      [500, 400],
    ]
    expect(pinch(c, fingers, fingers)).toEqual(c)
    expect(panBy(c, 0, 0)).toEqual(c)
  })

  it('fits a box with its margin, and an empty one without breaking', () => {
    const size = { width: 1000, height: 800 }
    const c = fitBox({ minX: 0, minY: 0, maxX: 20, maxY: 10 }, size, 50)
    const [left, bottom] = toScreen(c, [0, 0])
    const [right, top] = toScreen(c, [20, 10])
    expect(left).toBeCloseTo(50)
    expect(right).toBeCloseTo(950)
    expect((top + bottom) / 2).toBeCloseTo(400)
    const empty = fitBox({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity }, size, 50)
    expect(Number.isFinite(empty.zoom) && empty.zoom > 0).toBe(true)
  })
})

describe('what should be in view', () => {
  it('is the picture under the plan while nothing is drawn, however it is turned', () => {
    // A picture of one pixel (PNG, W3C third edition), 4 m of ground.
    const base64 = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='
    const picture = { assetId: 'a', originAt: [10, 20] as const, metersPerPixel: 4, turnDeg: 90, fade: 0.4 }
    const result = setPicture(picture, { kind: 'image/png', base64 })(emptySite('s', 'S'))
    if (!result.ok) throw new Error('no picture')
    const box = homeBox(deriveLive(result.value, '2026-07-21', createMemo()))
    // Its first corner is the origin; a quarter turn to the left carries right to up and down to right.
    expectNear([box.minX, box.minY], [10, 20])
    expectNear([box.maxX, box.maxY], [14, 24])
  })

  it('is what was made, too, wherever it was typed; what was there before makes nothing jump', () => {
    const before = emptySite('s', 'S')
    const result = addBuilding({
      name: 'House',
      footprint: { kind: 'rectangle', at: [30, 40], widthM: 8, depthM: 6 },
      height: { stories: 1 },
      overhangM: 0,
      roof: { form: 'flat' },
    })(before)
    if (!result.ok) throw new Error('no building')
    const live = deriveLive(result.value, '2026-07-21', createMemo())
    expect(madeBox(live, before, result.made)).toEqual({ minX: 30, minY: 40, maxX: 38, maxY: 46 })
    const none = madeBox(live, result.value, result.made)
    expect(none.minX).toBeGreaterThan(none.maxX)
  })
})

describe('a plan at home in its window', () => {
  const square = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ] as const
  const outline = square.map((from, i) => ({ edgeId: `e${i}`, from, to: square[(i + 1) % 4]! }))
  const whole = { minX: 0, minY: 0, maxX: 16, maxY: 12 }
  const size = { width: 1000, height: 700 }
  const corners = furniture(size, 'sun')
  const planWith = (at: Pt) => ({
    slabs: [{ outline }],
    site: {
      access: { truckSpots: [], pumpSpots: [], washouts: [{ id: 'w', at }], noGo: [], ways: [], chuteReachM: 4 },
    },
  })

  it('has no washout under the legend of the sun', () => {
    const plan = planWith([15, 12.6])
    const plain = toScreen(fitBox(whole, size, 110), plan.site.access.washouts[0]!.at)
    const isUnder = ([x, y]: readonly number[]) =>
      corners.some(c => x! > c.x - 16 && x! < c.x + c.width + 16 && y! > c.y - 12 && y! < c.y + c.height + 12)
    expect(isUnder(plain)).toBe(true)
    const camera = homeCamera(whole, plan, { size, asidePx: 0, corners })
    expect(isUnder(toScreen(camera, plan.site.access.washouts[0]!.at))).toBe(false)
    for (const at of square) {
      const [x, y] = toScreen(camera, at)
      expect(x > 40 && x < 960 && y > 40 && y < 660, String(at)).toBe(true)
    }
  })

  it('stands as it fits where nothing is hidden', () => {
    const plan = planWith([2, 2])
    expect(homeCamera(whole, plan, { size, asidePx: 0, corners })).toEqual(fitBox(whole, size, 110))
  })
})
