import { describe, expect, it } from 'vitest'
import { tapeLength } from '../../core/document/tapeEnds'
import { tapeWords } from '../../core/reports/tapeWords'
import { printMeasures } from '../../core/units/printMeasures'
import { TestEditor } from './testEditor'

const ft = 0.3048
const patio = () => {
  const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  return hand
}

describe('furniture', () => {
  it('stands where it is put, one piece after the other, turned as asked', () => {
    const hand = patio().choose('furniture', { furniture: 'roundTable' })
    hand.click([3, 2]).click([5, 2])
    expect(hand.site.furnishings!.map(({ kind }) => kind)).toEqual(['roundTable', 'roundTable'])
    hand.choose('furniture', { furniture: 'chair', furnitureTurnDeg: 90 }).type('4', '4')
    expect(hand.site.furnishings![2]).toMatchObject({ kind: 'chair', turnDeg: 90 })
    expect(hand.site.furnishings![2]!.at[0]).toBeCloseTo(4 * ft, 12)
    expect(hand.state.action).toBe('furniture')
  })
  it('shows under the pointer before it is set', () => {
    const hand = patio().choose('furniture')
    hand.pointerMove([2, 1])
    expect(hand.shown.furnishings).toHaveLength(1)
    expect(hand.site.furnishings).toBeUndefined()
    hand.key('Escape')
    expect(hand.shown.furnishings).toBeUndefined()
  })
})

describe('a tape dimension', () => {
  it('hangs on the corners that the pointer catches and says the diagonal', () => {
    const hand = patio().choose('tape', { tape: 'dimension' })
    hand.click([0.01, 0.01]).click([24 * ft - 0.02, 14 * ft + 0.01])
    const [tape] = hand.site.tapes!
    expect(tape!.ends.map(({ on }) => on.on)).toEqual(['vertex', 'vertex'])
    expect(tapeLength(tape!) / ft).toBeCloseTo(Math.hypot(24, 14), 12)
    expect(hand.selection).toEqual([tape!.id])
  })
  it('is typed from a corner: right and up, then length and direction', () => {
    const hand = patio().choose('tape', { tape: 'dimension' })
    hand.type('', '14').type('24', 'right')
    expect(tapeLength(hand.site.tapes![0]!) / ft).toBeCloseTo(24, 12)
    expect(hand.site.tapes![0]!.ends.map(({ on }) => on.on)).toEqual(['vertex', 'vertex'])
  })
  it('says how the field differs from the drawing', () => {
    const ends = [0, 3.048].map(x => ({ on: { on: 'free' as const }, last: [x, 0] as const }))
    const tape = { id: 'j1', ends: [ends[0]!, ends[1]!] as [(typeof ends)[0], (typeof ends)[0]] }
    const print = printMeasures('ftin')
    expect(tapeWords(tape, print)).toEqual(['10′ 0″'])
    expect(tapeWords({ ...tape, measuredM: 3.048 + 0.0127 }, print)[1]).toMatch(/½″ longer than drawn$/)
    expect(tapeWords({ ...tape, measuredM: 3.048 }, print)[1]).toMatch(/as drawn$/)
  })
})

describe('a rectangle on a base line', () => {
  it('turns with its base: 3, 4, 5', () => {
    const hand = new TestEditor().choose('slab', { form: 'base' })
    hand.zoom = 1e7
    // From the origin to (3, 4): 5 long; 2 deep to its left.
    hand.click([0, 0]).pointerMove([3, 4], true)
    hand.pointerDown([3, 4]).pointerUp([3, 4])
    hand.pointerMove([-1.6, 1.2], true)
    hand.type('2m')
    const corners = hand.site.slabs[0]!.outline.vertices.map(({ at }) => at)
    expect(corners).toHaveLength(4)
    const far = corners.map(([x, y], i) => {
      const [nx, ny] = corners[(i + 1) % 4]!
      return Math.hypot(nx - x, ny - y)
    })
    for (const [i, each] of [5, 2, 5, 2].entries()) expect(far[i]).toBeCloseTo(each, 9)
    expect(corners.some(([x, y]) => Math.hypot(x + 1.6, y - 1.2) < 1e-9)).toBe(true)
  })
  it('is typed: length and direction, then depth', () => {
    const hand = new TestEditor().choose('slab', { form: 'base' }).type('10', '45').type('4')
    const [a, b] = hand.site.slabs[0]!.outline.vertices.map(({ at }) => at)
    expect(Math.hypot(b![0] - a![0], b![1] - a![1]) / ft).toBeCloseTo(10, 9)
  })
})

describe('keys pressed while no box has the focus', () => {
  it('go to the box to come, one behind the other', () => {
    const hand = new TestEditor()
    const press = (keys: readonly string[]) => keys.map(key => hand.editor.key(key))
    expect(press(['x', '-'])).toEqual([false, false])
    press(['2', '4', '.', '5', `'`, 'Tab', 'u', 'p', 'Enter'])
    expect(hand.state.drawing?.placed[1]).toEqual([expect.closeTo(0, 9), expect.closeTo(24.5 * ft, 9)])
    press(['1', '5', 'Backspace', '4', 'Enter'])
    expect(hand.state.drawing?.placed).toHaveLength(3)
    hand.choose('select')
    expect(press(['1'])).toEqual([false])
  })
})
