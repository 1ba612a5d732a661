import { describe, expect, it } from 'vitest'
import { boxesCollide, type LabelBox, type LabelWish, placeLabels } from '../../core/reports/placeLabels'

const bounds = { x0: 0, y0: 0, x1: 400, y1: 300 }
const nothing = { segments: [], boxes: [], bounds }

const box = (x: number, y: number, turnDeg = 0): LabelBox => ({ center: [x, y], width: 60, height: 16, turnDeg })

/** Places on a ring around a point, the first the dearest, so that the cheapest is not simply the first one. */
const around = (x: number, y: number): LabelWish<LabelBox> => ({
  candidates: Array.from({ length: 8 }, (_, i) => {
    const a = (i * Math.PI) / 4
    const place = box(x + 40 * Math.cos(a), y + 20 * Math.sin(a))
    return { boxes: [place], cost: 8 - i, place }
  }),
})

describe('labels', () => {
  it('take their cheapest place when nothing is in the way', () => {
    const wish = around(200, 150)
    expect(placeLabels([wish], nothing)).toEqual([wish.candidates[7]!.place])
  })

  it('never share paper where there is room for all', () => {
    const wishes = Array.from({ length: 12 }, (_, i) => around(70 + 90 * (i % 4), 60 + 80 * Math.floor(i / 4)))
    const placed = placeLabels(wishes, nothing)
    expect(placed.filter(p => p !== null)).toHaveLength(12)
    placed.forEach((p, i) => {
      for (const q of placed.slice(0, i)) expect(boxesCollide(p!, q!)).toBe(false)
    })
  })

  it('stand beside a thin line of another, which lines cross freely', () => {
    const thin: LabelBox = { center: [100, 100], width: 3, height: 80, turnDeg: 0, line: true, thin: true }
    const kept: LabelWish<string> = { candidates: [{ boxes: [thin], cost: 0, place: 'thin' }] }
    const words = (boxes: LabelBox[]): LabelWish<string> => ({
      candidates: [
        { boxes, cost: 0, place: 'on it' },
        { boxes: [box(160, 100)], cost: 30, place: 'beside it' },
      ],
    })
    expect(placeLabels([kept, words([box(100, 100)])], nothing)).toEqual(['thin', 'beside it'])
    expect(placeLabels([kept, words([{ ...box(100, 100), line: true }])], nothing)).toEqual(['thin', 'on it'])
  })

  it('two that want one spot part; the earlier has the first choice', () => {
    const spot = box(100, 100)
    const aside = box(100, 140)
    const wish: LabelWish<LabelBox> = {
      candidates: [
        { boxes: [spot], cost: 0, place: spot },
        { boxes: [aside], cost: 5, place: aside },
      ],
    }
    expect(placeLabels([wish, wish], nothing)).toEqual([spot, aside])
  })

  it('are left out rather than cover another', () => {
    const spot = box(100, 100)
    const only: LabelWish<LabelBox> = { candidates: [{ boxes: [spot], cost: 0, place: spot }], dropAbove: 500 }
    expect(placeLabels([only, only], nothing)).toEqual([spot, null])
  })

  it('keep off lines and off the border of the sheet', () => {
    const wish: LabelWish<string> = {
      candidates: [
        { boxes: [box(100, 100)], cost: 0, place: 'on the line' },
        { boxes: [box(10, 200)], cost: 1, place: 'over the border' },
        { boxes: [box(100, 200)], cost: 2, place: 'free' },
      ],
    }
    const segments = [{ a: [0, 100] as const, b: [400, 100] as const, weight: 50 }]
    expect(placeLabels([wish], { ...nothing, segments })).toEqual(['free'])
  })

  it('turned boxes collide only where they really meet', () => {
    expect(boxesCollide(box(100, 100), box(145, 130))).toBe(false)
    // One diagonal points into the corner of the first box, the other past it.
    const diagonals = [45, -45].map(turn => boxesCollide(box(100, 100), box(148, 122, turn)))
    expect(diagonals.sort()).toEqual([false, true])
    expect(boxesCollide(box(100, 100), box(100, 100, 90))).toBe(true)
  })
})
