import { describe, expect, it } from 'vitest'
import { patternTile } from '../../core/reports/pattern/finishPattern'
import type { Pt } from '../../shared/document/primitives'

const area = (points: readonly Pt[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!
    return sum + (x * ny - nx * y) / 2
  }, 0)

const contains = (points: readonly Pt[], x: number, y: number): boolean =>
  points.every(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0
  })

const stamped = ['ashlar', 'runningBond', 'plank', 'flagstone', 'cobble'] as const

describe.each(stamped)('the %s tile', name => {
  const tile = patternTile(name)!

  it('covers every spot of itself once', () => {
    let uncovered = 0
    let twice = 0
    for (let i = 0; i < 40; i++)
      for (let j = 0; j < 40; j++) {
        const [x, y] = [((i + 0.37) / 40) * tile.widthM, ((j + 0.61) / 40) * tile.heightM]
        const over = tile.stones.filter(stone => contains(stone.points, x, y)).length
        if (over === 0) uncovered++
        if (over > 1) twice++
      }
    expect({ uncovered, twice }).toEqual({ uncovered: 0, twice: 0 })
  })

  it('has whole stones, drawn counter-clockwise', () => {
    for (const { points } of tile.stones) expect(area(points)).toBeGreaterThan(1e-4)
  })

  it('is the same every time', () => {
    expect(patternTile(name)).toBe(tile)
  })
})

it('a seamless texture and a broomed surface show tones without joints, a plain one neither', () => {
  expect(patternTile('seamless')!.jointed).toBe(false)
  expect(patternTile('broom')!.jointed).toBe(false)
  expect(patternTile('plain')).toBeNull()
})
