import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { handWords } from '../../renderer/app/handWords'
import type { Camera } from '../../renderer/editor/camera/camera'
import { toScreen } from '../../renderer/editor/camera/camera'
import { actsHeight, boxSize, placeEntry } from '../../renderer/editor/entry/placeEntry'
import { loupePlace, loupePx } from '../../renderer/editor/loupePlace'
import { withinPlan } from '../../renderer/editor/useCarriedAside'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

describe('a finger on the plan', () => {
  it('hides what it aims at only while it is down', () => {
    const editor = new TestEditor().choose('slab')
    editor.editor.down([0, 0], { zoom: editor.zoom, touch: true })
    expect(editor.state).toMatchObject({ isUnderFinger: true, drawing: { placed: [] } })
    expect(editor.state.aim?.at).toEqual([0, 0])
    editor.editor.up([1, 0], { zoom: editor.zoom, touch: true }, true)
    expect(editor.state).toMatchObject({ isUnderFinger: false, aim: null })
    expect(editor.state.drawing?.placed).toHaveLength(1)
    // What a second finger takes back is hidden no longer either; a mouse hides nothing.
    editor.editor.down([3, 0], { zoom: editor.zoom, touch: true })
    editor.editor.cancel()
    expect(editor.state).toMatchObject({ isUnderFinger: false, aim: null })
    editor.pointerDown([3, 0])
    expect(editor.state.isUnderFinger).toBe(false)
  })

  it('sets corners where it is lifted, and its slab is that of a mouse', () => {
    const corners: readonly Pt[] = [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ]
    const byFinger = new TestEditor().choose('slab')
    for (const [x, y] of corners) byFinger.slide([x - 1, y + 1], [x, y])
    byFinger.key('Enter')
    const byMouse = new TestEditor().choose('slab')
    for (const at of corners) byMouse.click(at)
    byMouse.key('Enter')
    expect(byFinger.site).toEqual(byMouse.site)
  })
})

describe('a second point that makes nothing', () => {
  it.each(['rectangle', 'circle'] as const)('of a %s is refused in words, and the first stays', form => {
    const editor = new TestEditor().choose('slab', { form }).click([0, 0]).click([0, 0])
    expect(editor.state.fault?.message).toMatch(/^0″ is no (width|radius)/)
    expect(editor.state.drawing?.placed).toEqual([[0, 0]])
    expect(editor.click([3, 2]).site.slabs).toHaveLength(1)
  })

  it('of a rectangle in one line with the first is refused, by a finger too', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' })
    editor.slide([0, 0])
    editor.slide([3, 1], [3, 0])
    expect(editor.state.fault?.message).toMatch(/^0″ is no depth/)
    expect(editor.site.slabs).toEqual([])
  })

  it('is none yet where the first click trembled', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).drag([0, 0], [0.01, 0])
    expect(editor.state).toMatchObject({ fault: null, drawing: { placed: [[0, 0]] } })
    const onBase = new TestEditor().choose('slab', { form: 'base' }).click([0, 0]).drag([4, 0], [4.01, 0])
    expect(onBase.state).toMatchObject({ fault: null })
    expect(onBase.click([2, 0]).state.fault?.message).toMatch(/^0″ is no depth/)
    expect(onBase.click([2, 3]).site.slabs).toHaveLength(1)
  })
})

describe('the form a thing is drawn in', () => {
  it('is kept for each kind of thing: a round planter makes no round house', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).drag([0, 0], [9, 6])
    editor.choose('opening', { form: 'circle' })
    expect(editor.choose('building').state.options.form).toBe('corners')
    expect(editor.choose('opening').state.options.form).toBe('circle')
    expect(editor.choose('slab').state.options.form).toBe('rectangle')
  })

  it('is not taken over by a kind that has none at first: a round pool makes no round forbidden ground', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).drag([0, 0], [9, 6])
    editor.choose('opening', { form: 'circle' })
    editor.choose('access', { access: 'noGo' })
    expect(editor.state.options.form).toBe('corners')
    editor.editor.setOptions({ form: 'rectangle' })
    editor.editor.setOptions({ access: 'truck' })
    editor.choose('opening')
    editor.choose('access', { access: 'noGo' })
    expect(editor.state.options.form).toBe('rectangle')
  })
})

describe('the boxes beside the last point', () => {
  const camera: Camera = { zoom: 20, x: 400, y: 300 }
  const inPlan = (size: { width: number; height: number }) =>
    fc.tuple(fc.integer({ min: 92, max: size.width - 8 }), fc.integer({ min: 8, max: size.height - 8 }))
  const toPlan = ([x, y]: readonly [number, number]): Pt => {
    const [ox, oy] = toScreen(camera, [0, 0])
    return [(x - ox) / camera.zoom, (oy - y) / camera.zoom]
  }
  const isFree = ([left, top]: readonly [number, number], [x, y]: readonly [number, number]) =>
    x < left || x > left + boxSize.width || y < top || y > top + boxSize.height + actsHeight

  // The plan beside the ledger: 1024 × 768 and 820 × 1180 under a finger, 1440 × 900.
  it.each([
    { width: 734, height: 614 },
    { width: 530, height: 1026 },
    { width: 1100, height: 760 },
  ])('never cover it, wherever it is set, on $width × $height', size => {
    fc.assert(
      fc.property(inPlan(size), at => {
        expect(isFree(placeEntry(camera, size, [toPlan(at)], undefined), at)).toBe(true)
      }),
    )
  })

  it('nor the loupe, nor the points set before, where the plan has room', () => {
    // An upright tablet of 768 × 1024.
    const size = { width: 478, height: 870 }
    fc.assert(
      fc.property(fc.integer({ min: 250, max: 560 }), fc.integer({ min: 100, max: 460 }), (y, x) => {
        const [last, aimed] = [[x, y] as const, [x, y + 40] as const]
        const [left, top] = placeEntry(camera, size, [toPlan(last)], toPlan(aimed), true)
        const [loupeLeft, loupeTop] = loupePlace(aimed, size)
        const isBeside = left >= loupeLeft + loupePx || left + boxSize.width <= loupeLeft
        const isOver = top >= loupeTop + loupePx || top + boxSize.height + actsHeight <= loupeTop
        expect(isBeside || isOver).toBe(true)
      }),
    )
    const [lower, upper] = [[300, 500] as const, [300, 380] as const]
    expect(isFree(placeEntry(camera, size, [toPlan(lower), toPlan(upper)], undefined), lower)).toBe(true)
    // A tablet on its side: three corners of a pool, the first of which closes it.
    const corners = [[200, 500] as const, [460, 500] as const, [460, 340] as const]
    const place = placeEntry(camera, { width: 890, height: 666 }, corners.map(toPlan), undefined)
    expect(corners.map(at => isFree(place, at))).toEqual([true, true, true])
  })

  it('make room for the finger before the first point', () => {
    const size = { width: 478, height: 870 }
    const [left, top] = placeEntry(camera, size, [], undefined)
    const under: Pt = [left + 40, top + 40]
    expect(isFree(placeEntry(camera, size, [], toPlan(under), true), under)).toBe(true)
    expect(placeEntry(camera, size, [], toPlan([300, 700]), true)).toEqual([left, top])
  })

  it('cover neither it nor what is aimed at where the plan has room for all three', () => {
    const size = { width: 1100, height: 760 }
    fc.assert(
      fc.property(
        inPlan(size),
        fc.integer({ min: -200, max: 200 }),
        fc.integer({ min: -200, max: 200 }),
        (at, dx, dy) => {
          const aimed = [at[0] + dx, at[1] + dy] as const
          const place = placeEntry(camera, size, [toPlan(at)], toPlan(aimed))
          expect([isFree(place, at), isFree(place, aimed)]).toEqual([true, true])
        },
      ),
    )
  })
})

describe('what is asked of the hand', () => {
  afterEach(() => vi.unstubAllGlobals())
  const pointIs = (pointer: 'coarse' | 'fine') =>
    vi.stubGlobal('matchMedia', (query: string) => ({ matches: query === `(pointer: ${pointer})` }))

  it('is a tap where a finger points, and names the buttons in place of keys', () => {
    pointIs('coarse')
    expect(handWords('Click the next corner, or type the length.')).toBe('Tap the next corner, or type the length.')
    expect(handWords('3 corners. Enter leads the last arc to the first corner; so does a click on it.')).toBe(
      '3 corners. “Close it” leads the last arc to the first corner; so does a tap on it.',
    )
    expect(handWords('3 corners. Enter closes it; so does a click on the first corner.')).toBe(
      '3 corners. “Close it” closes it; so does a tap on the first corner.',
    )
    pointIs('fine')
    expect(handWords('Click the next corner.')).toBe('Click the next corner.')
  })
})

it('boxes carried aside stay on the plan', () => {
  const plan = { width: 400, height: 300 }
  const box = { width: 270, height: 170 }
  expect(withinPlan([100, 40], box, plan)).toEqual([100, 40])
  expect(withinPlan([-20, -5], box, plan)).toEqual([82, 0])
  expect(withinPlan([390, 299], box, plan)).toEqual([130, 130])
})
