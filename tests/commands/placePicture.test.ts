/** The picture under the plan by two points, against the plane geometry it follows. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { movePicture, scalePicture, turnPicture, turnToRun } from '../../core/document/commands/placePicture'
import { setPicture } from '../../core/document/commands/setSite'
import { emptySite } from '../../renderer/app/emptySite'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { chain, refusal } from './edit'

const picture = { assetId: 'a', originAt: [-9, 6] as Pt, metersPerPixel: 0.03, turnDeg: 0, fade: 0.4 }
// A picture of one pixel (PNG, W3C third edition).
const base64 = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='
const site = chain(emptySite('s', 'S'), setPicture(picture, { kind: 'image/png', base64 }))

/** Where a pixel lies on the plan: rows run down, the whole turned about its first corner. */
const pixelAt = ({ place }: Site, x: number, y: number): Pt => {
  const { originAt, metersPerPixel, turnDeg } = place.picture!
  const angle = (turnDeg * Math.PI) / 180
  const [u, v] = [x * metersPerPixel, -y * metersPerPixel]
  return [
    originAt[0] + u * Math.cos(angle) - v * Math.sin(angle),
    originAt[1] + u * Math.sin(angle) + v * Math.cos(angle),
  ]
}
const far = (a: Pt, b: Pt) => Math.hypot(b[0] - a[0], b[1] - a[1])
const pixel = fc.tuple(fc.integer({ min: 0, max: 2400 }), fc.integer({ min: 0, max: 2400 }))
const runs = { seed: 5, numRuns: 60 } as const

describe('a picture under the plan', () => {
  it('set to scale: the two points are as far apart as typed, the first stays where it was clicked', () => {
    fc.assert(
      fc.property(pixel, pixel, fc.double({ min: 0.5, max: 200, noNaN: true }), (p, q, trueM) => {
        fc.pre(Math.hypot(p[0] - q[0], p[1] - q[1]) > 3)
        const [a, b] = [pixelAt(site, ...p), pixelAt(site, ...q)]
        const scaled = chain(site, scalePicture(a, b, trueM))
        expect(far(pixelAt(scaled, ...p), pixelAt(scaled, ...q))).toBeCloseTo(trueM, 6)
        expect(far(pixelAt(scaled, ...p), a)).toBeLessThan(1e-6)
      }),
      runs,
    )
  })

  it('turned by two points: their line runs as asked, the first stays', () => {
    fc.assert(
      fc.property(pixel, pixel, fc.integer({ min: 0, max: 359 }), (p, q, alongDeg) => {
        fc.pre(Math.hypot(p[0] - q[0], p[1] - q[1]) > 3)
        const [a, b] = [pixelAt(site, ...p), pixelAt(site, ...q)]
        const leftDeg = turnToRun(a, b, alongDeg)
        expect(Math.abs(leftDeg)).toBeLessThanOrEqual(90)
        const turned = chain(site, turnPicture(a, leftDeg))
        const [c, d] = [pixelAt(turned, ...p), pixelAt(turned, ...q)]
        const along = (alongDeg * Math.PI) / 180
        const across = (d[0] - c[0]) * Math.cos(along) - (d[1] - c[1]) * Math.sin(along)
        expect(Math.abs(across)).toBeLessThan(1e-6)
        expect(far(a, c)).toBeLessThan(1e-6)
      }),
      runs,
    )
  })

  it('moved by two points, it brings the first to the second', () => {
    const moved = chain(site, movePicture([1, 2], [4, -3]))
    expect(moved.place.picture!.originAt).toEqual([-6, 1])
  })

  it('is not scaled by one point, by no length, or where there is none', () => {
    expect(refusal(scalePicture([1, 1], [1, 1], 3)(site))).toBe('badMeasure')
    expect(refusal(scalePicture([1, 1], [2, 1], 0)(site))).toBe('badMeasure')
    expect(refusal(movePicture([0, 0], [1, 1])(emptySite('t', 'T')))).toBe('entityMissing')
  })
})
