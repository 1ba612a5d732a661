import { describe, expect, it } from 'vitest'
import { labelSpot } from '../../renderer/editor/layers/drawPours'
import { steadySpots } from '../../renderer/editor/layers/steadySpots'
import { box, curveRegion } from '../sun/fixtures'

const court = (widthM: number, holes: number[][][] = []) =>
  curveRegion(box(0, 0, widthM, 10), holes as unknown as [number, number][][])
const pool = [
  [2, 2],
  [2, 8],
  [9, 8],
  [9, 2],
]

describe('where a name stands', () => {
  it('is the roomiest place at first', () => {
    const region = court(16)
    expect(steadySpots()('s1', region)).toEqual(labelSpot(region))
  })

  it('stays while an edge moves by an inch, and through many such moves only as long as it is a good place', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    expect(spotOf('s1', court(16.0254))).toBe(first)
    const moved = Array.from({ length: 80 }, (_, i) => spotOf('s1', court(16 - 0.0254 * i, [pool])))
    const last = labelSpot(court(16 - 0.0254 * 79, [pool]))
    expect(new Set(moved).size).toBeGreaterThan(1)
    expect(new Set(moved).size).toBeLessThan(40)
    expect(Math.abs(moved.at(-1)!.roomM - last.roomM)).toBeLessThan(0.1)
  })

  it('is looked for anew where an opening takes it', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    const region = court(16, [pool])
    expect(spotOf('s1', region)).not.toBe(first)
    expect(spotOf('s1', region)).toEqual(labelSpot(region))
  })

  it('is each slab’s own', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    expect(spotOf('s2', court(16))).not.toBe(first)
    expect(spotOf('s2', court(16))).toEqual(first)
  })
})
