import { describe, expect, it } from 'vitest'
import { labelSpot, nameSpot, plateSpot } from '../../renderer/editor/layers/drawPours'
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

const angle = curveRegion([
  [0, 0],
  [20, 0],
  [20, 4],
  [4, 4],
  [4, 20],
  [0, 20],
])

describe('where a name stands', () => {
  it('is the roomiest place at first', () => {
    const region = court(16)
    expect(steadySpots()('s1', region)).toEqual(nameSpot(region))
  })

  it('stays while an edge moves by an inch, and through many such moves only as long as it is a good place', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    expect(spotOf('s1', court(16.0254))).toBe(first)
    const moved = Array.from({ length: 80 }, (_, i) => spotOf('s1', court(16 - 0.0254 * i, [pool])))
    const last = nameSpot(court(16 - 0.0254 * 79, [pool]))
    expect(new Set(moved).size).toBeGreaterThan(1)
    expect(new Set(moved).size).toBeLessThan(40)
    expect(Math.abs(moved.at(-1)!.roomM - last.roomM)).toBeLessThan(0.1)
  })

  it('is looked for anew where an opening takes it', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    const region = court(16, [pool])
    expect(spotOf('s1', region)).not.toBe(first)
    expect(spotOf('s1', region)).toEqual(nameSpot(region))
  })

  it('is each slab’s own', () => {
    const spotOf = steadySpots()
    const first = spotOf('s1', court(16))
    expect(spotOf('s2', court(16))).not.toBe(first)
    expect(spotOf('s2', court(16))).toEqual(first)
  })
})

describe('the name of a slab', () => {
  it('stands in the middle of one that is a little out of square, where the roomiest place is at its end', () => {
    const skewed = curveRegion([
      [-12, -7],
      [12, -7],
      [13, 7],
      [-11, 7.5],
    ])
    expect(Math.abs(nameSpot(skewed).at[0] - 0.5)).toBeLessThan(0.2)
    expect(Math.abs(labelSpot(skewed).at[0] - 0.5)).toBeGreaterThan(2)
  })

  it('stands where most room is, where the middle lies off the slab or near its edge', () => {
    expect(nameSpot(angle)).toEqual(labelSpot(angle))
    const around = court(16, [
      [
        [6, 3],
        [6, 7],
        [10, 7],
        [10, 3],
      ],
    ])
    expect(nameSpot(around)).toEqual(labelSpot(around))
  })

  it('plates of lanes side by side stand in a row, in the middle of each', () => {
    for (const left of [0, 15, 30, 45]) {
      const { at } = plateSpot(curveRegion(box(left * 0.3048, 0, 15 * 0.3048, 36 * 0.3048)))
      expect(at[0]).toBeCloseTo((left + 7.5) * 0.3048, 9)
      expect(at[1]).toBeCloseTo(18 * 0.3048, 9)
    }
    expect(plateSpot(angle)).toEqual(labelSpot(angle))
  })
})
