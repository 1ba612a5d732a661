import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { invariants } from '../../core/document/invariants'
import { edgeFromRise } from '../../core/geometry/resolvePath'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { ringArea } from '../../core/geometry/ringArea'
import { riseThrough } from '../../renderer/editor/actions/drawCorners'
import {
  parseAzimuth,
  parseDirection,
  parseTurn,
  printDirection,
  printTurn,
} from '../../renderer/editor/entry/directions'
import { sayLength } from '../../renderer/editor/entry/sayLength'
import { promptWords } from '../../renderer/editor/promptWords'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

const ft = 0.3048
const areaFt2 = (editor: TestEditor, slab = 0) => resolveSlab(editor.shown.slabs[slab]!).netAreaM2 / (ft * ft)

describe('typing alone', () => {
  it('draws a 24 × 14 ft patio from an empty sheet', () => {
    const editor = new TestEditor().type('24').type('14').type("24'").key('Enter')
    expect(areaFt2(editor)).toBeCloseTo(336, 9)
    expect(editor.site.slabs).toHaveLength(1)
    expect(editor.state.action).toBe('select')
    expect(editor.selection).toEqual([editor.site.slabs[0]!.id])
  })

  it('is not turned aside by a hand that rested on the plan before', () => {
    const editor = new TestEditor()
      .choose('slab')
      .pointerMove([3, -7])
      .type('24', 'right')
      .type('14')
      .type('24')
      .type('14')
    expect(areaFt2(editor)).toBeCloseTo(336, 9)
  })

  it('closes the outline when the last length comes back to the start', () => {
    const editor = new TestEditor().type('24').type('14').type('24').type('14')
    expect(areaFt2(editor)).toBeCloseTo(336, 9)
  })

  it('takes feet and inches to the eighth, meters, turns and directions', () => {
    const editor = new TestEditor()
      .type(`12' 6 1/8"`, 'right')
      .type('3.81m', '90 left')
      .type(`12'6 1/8"`, '90')
      .key('Enter')
    expect(areaFt2(editor)).toBeCloseTo((150.125 / 12) * 12.5, 9)
  })

  it('refuses what is no length, quotes it, and keeps what was drawn', () => {
    const editor = new TestEditor().type('24').type('two yards')
    expect(editor.state.fault?.message).toContain('“two yards”')
    expect(editor.state.fault?.field).toBe('length')
    expect(editor.state.drawing?.placed).toHaveLength(2)
    editor.editor.write('length', '')
    editor.type('14').type('24').key('Enter')
    expect(areaFt2(editor)).toBeCloseTo(336, 9)
  })

  it('measures a start from a corner that has a letter', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor.choose('building', { form: 'rectangle' }).type('-3', '14').type('30', '20')
    const [house] = editor.site.casters
    expect(house?.kind === 'building' && house.footprint.vertices[0]?.at).toEqual([-0.9144, 4.2672])
    expect(editor.site.slabs).toHaveLength(1)
  })

  it('draws an arc by chord and rise, and by chord and radius', () => {
    for (const [rise, radius] of [
      ['6', ''],
      ['', '12'],
    ] as const) {
      const editor = new TestEditor().type('24').type('14').type('24')
      editor.editor.setOptions({ edge: 'arc' })
      editor.type('14')
      editor.type(rise, radius)
      expect(editor.site.slabs).toHaveLength(1)
      const sagFt = rise ? 6 : 12 - Math.sqrt(144 - 49)
      // Circular segment from chord and height: CRC Standard Mathematical Tables, "Plane figures".
      const radiusFt = (49 + sagFt * sagFt) / (2 * sagFt)
      const theta = 4 * Math.atan2(2 * sagFt, 14)
      expect(areaFt2(editor)).toBeCloseTo(336 + (radiusFt * radiusFt * (theta - Math.sin(theta))) / 2, 6)
    }
  })
})

describe('the pointer', () => {
  it('draws corner by corner, closes on the first, and is one step of undo', () => {
    const editor = new TestEditor().choose('slab')
    const empty = editor.site
    editor
      .click([0, 0])
      .click([24 * ft, 0])
      .click([24 * ft, 14 * ft])
      .click([0, 14 * ft])
      .click([0.03, 0.02])
    expect(areaFt2(editor)).toBeCloseTo(336, 6)
    editor.store.undo()
    expect(editor.site).toBe(empty)
  })

  it('shows the area of what is in hand, and Esc takes it and never redo', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor.store.undo()
    editor
      .choose('slab', { form: 'rectangle' })
      .click([0, 0])
      .pointerMove([10 * ft, 10 * ft])
    expect(areaFt2(editor)).toBeCloseTo(100, 6)
    editor.key('Escape')
    expect(editor.shown.slabs).toHaveLength(0)
    editor.store.redo()
    expect(areaFt2(editor)).toBeCloseTo(336, 9)
  })

  it('drags a rectangle out in one go', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).drag([0, 0], [20 * ft, 10 * ft])
    expect(areaFt2(editor)).toBeCloseTo(200, 6)
  })

  it('carries a corner of what is chosen, and nothing else', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    const before = editor.site
    editor.drag([24 * ft, 14 * ft], [30 * ft, 14 * ft])
    expect(areaFt2(editor)).toBeCloseTo(378, 6)
    expect(editor.site.slabs[0]!.outline.vertices[0]).toBe(before.slabs[0]!.outline.vertices[0])
    editor.store.undo()
    expect(editor.site).toBe(before)
  })

  it('leaves alone what is not chosen', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor.view.setState({ selection: [] })
    const before = editor.site
    editor.drag([5, 2], [8, 3])
    expect(editor.site).toBe(before)
  })

  it('is never held by what it carries', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor.pointerDown([24 * ft, 14 * ft]).pointerMove([24 * ft + 0.03, 14 * ft + 0.05], true)
    expect(editor.state.aim?.caught).toBeNull()
    expect(editor.state.aim?.at[0]).toBeCloseTo(24 * ft + 0.03, 12)
  })

  it('says in words what holds it', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor.choose('building').pointerMove([24 * ft + 0.04, 0.03])
    expect(editor.state.aim?.at).toEqual([7.3152, 0])
    expect(editor.state.aim?.caught).toEqual({ relation: 'Corner', rest: 'of Patio' })
  })

  it('names a trunk, a spot and whatever else it is held on, and both where two hold it', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter')
    editor
      .choose('tree')
      .click([40 * ft, 10 * ft])
      .choose('access', { access: 'truck' })
      .click([33 * ft, -9 * ft])
    const trunk = editor.site.casters.flatMap(caster => (caster.kind === 'tree' ? [caster.at] : []))[0]!
    const spot = editor.site.access!.truckSpots[0]!.at
    const off = ([x, y]: Pt): Pt => [x + 0.03, y - 0.04]
    editor.choose('building').pointerMove(off(trunk))
    expect(editor.state.aim).toEqual({ at: trunk, caught: { relation: 'Trunk', rest: 'of Tree' } })
    editor.pointerMove(off(spot))
    expect(editor.state.aim).toEqual({ at: spot, caught: { relation: 'Spot', rest: 'of Truck 1' } })
    editor.pointerMove([24 * ft + 0.03, 27.3 * ft])
    expect(editor.state.aim?.caught).toEqual({ relation: 'In line', rest: 'with Patio' })
    editor.click(trunk).pointerMove([40 * ft + 0.02, -0.03])
    expect(editor.state.aim?.caught).toEqual({ relation: 'In line', rest: 'with Patio, square to it, 10′ 0″' })
    editor.key('Escape').key('Escape').choose('opening', { inSlab: 'planter', form: 'rectangle' })
    editor.click([6 * ft, 4 * ft]).click([10 * ft, 8 * ft])
    editor.choose('building').pointerMove([6 * ft + 0.02, 4 * ft - 0.02])
    expect(editor.state.aim?.caught).toEqual({ relation: 'Corner', rest: 'of the planter' })
    // Neither holds itself while it is carried.
    editor.key('Escape').key('Escape')
    for (const at of [trunk, spot]) {
      editor
        .choose('select')
        .click(at)
        .pointerDown(at)
        .pointerMove([at[0] + 0.07, at[1] + 0.07])
      expect(editor.state.aim?.at).not.toEqual(at)
      editor.key('Escape').pointerUp(at)
    }
  })

  it('is held by a required joint, by its ends, and by what two slabs share, with both names', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('20', '10')
    editor.choose('slab', { form: 'rectangle' }).drag([20 * ft, 0], [30 * ft, 10 * ft])
    editor
      .choose('joint', { wish: 'required' })
      .click([8 * ft, 0])
      .click([8 * ft, 10 * ft])
    expect(editor.site.wishes).toHaveLength(1)
    editor.choose('building').pointerMove([8 * ft + 0.03, 0.02])
    expect(editor.state.aim?.at).toEqual(
      editor.site.wishes.flatMap(wish => (wish.kind === 'required' ? [wish.line[0].last] : []))[0],
    )
    expect(editor.state.aim?.caught).toEqual({ relation: 'End', rest: 'of the required joint' })
    editor.pointerMove([8 * ft + 0.03, 1.13])
    expect(editor.state.aim?.caught).toEqual({ relation: 'On edge', rest: 'of the required joint' })
    editor.pointerMove([20 * ft + 0.03, 0.02])
    expect(editor.state.aim).toEqual({ at: [20 * ft, 0], caught: { relation: 'Corner', rest: 'of Patio and Patio 2' } })
    editor.pointerMove([20 * ft + 0.03, 5 * ft - 0.02])
    expect(editor.state.aim).toEqual({
      at: [20 * ft, 5 * ft],
      caught: { relation: 'Middle', rest: 'of Patio and Patio 2' },
    })
    editor.pointerMove([20 * ft + 0.03, 1.07])
    expect(editor.state.aim?.caught).toEqual({ relation: 'On edge', rest: 'of Patio and Patio 2' })
    // A corner that is carried takes the joint on its edges along: where that was holds nothing.
    editor.key('Escape').choose('select')
    editor.view.setState({ selection: [editor.site.slabs[0]!.id] })
    editor.pointerDown([0, 0]).pointerMove([8 * ft + 0.03, 0.02])
    expect(editor.state.aim?.caught?.rest ?? '').not.toContain('joint')
    expect(promptWords(editor.state)).toBe('Hold Alt to keep off corners, edges and lines.')
    editor.key('Escape').pointerUp([8 * ft + 0.03, 0.02])
    expect(promptWords(editor.state)).toBe('')
  })

  it('is held where an outline closes squarely, and names the quarters of a circle, which has no corners', () => {
    const editor = new TestEditor()
    editor.zoom = 30
    // An L turned by 12 degrees: the last corner stands square to the edge before it and over the first.
    const turn = (12 * Math.PI) / 180
    const at = (x: number, y: number): Pt => [
      (x * Math.cos(turn) - y * Math.sin(turn)) * ft,
      (x * Math.sin(turn) + y * Math.cos(turn)) * ft,
    ]
    editor.choose('slab')
    for (const [x, y] of [
      [0, 0],
      [20, 0],
      [20, 10],
      [10, 10],
      [10, 15],
    ] as const) {
      editor.pointerMove(at(x, y), true)
      editor.editor.down(at(x, y), { zoom: 30, free: true })
      editor.editor.up(at(x, y), { zoom: 30, free: true }, false)
    }
    const [x, y] = at(0, 15)
    editor.pointerMove([x + 0.08, y - 0.1])
    expect(editor.state.aim?.caught).toEqual({
      relation: 'Square at',
      rest: 'the first corner, square to what is drawn, 10′ 0″',
    })
    expect(editor.state.aim?.at[0]).toBeCloseTo(x, 9)
    expect(editor.state.aim?.at[1]).toBeCloseTo(y, 9)
    editor.key('Escape').key('Escape')
    editor.choose('slab', { form: 'circle' }).type('40', '0').type('5')
    const [east, , , west] = editor.site.slabs[0]!.outline.vertices.map(({ at }) => at).sort((a, b) => b[0] - a[0])
    editor.choose('building').pointerMove([east![0] + 0.05, east![1] + 0.05])
    expect(editor.state.aim?.caught).toEqual({ relation: 'Quarter point', rest: 'of Patio' })
    const [middle, eighth] = [(east![0] + west![0]) / 2, ((east![0] - west![0]) / 2) * Math.SQRT1_2]
    editor.pointerMove([middle + eighth + 0.05, east![1] + eighth + 0.05])
    expect(editor.state.aim?.caught).toEqual({ relation: 'On edge', rest: 'of Patio' })
  })

  it('is held within 8 px at every scale, and never from farther', () => {
    const editor = new TestEditor().type('24').type('14').type('24').key('Enter').choose('building')
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 0, max: 7.9, noNaN: true }),
        (zoom, angle, far) => {
          editor.zoom = zoom
          editor.pointerMove([(far / zoom) * Math.cos(angle), (far / zoom) * Math.sin(angle)])
          expect(editor.state.aim?.at).toEqual([0, 0])
          // A hair beyond 8 px the corner holds it no more, whatever else may.
          editor.pointerMove([(8.1 / zoom) * Math.cos(angle), (8.1 / zoom) * Math.sin(angle)])
          expect(editor.state.aim?.caught?.relation).not.toBe('Corner')
          const beyond: Pt = [-(9 / zoom), -(9 / zoom)]
          editor.pointerMove(beyond)
          const { at } = editor.state.aim!
          expect(Math.hypot(at[0] - beyond[0], at[1] - beyond[1])).toBeLessThanOrEqual((2 * 8) / zoom + 1e-9)
        },
      ),
      { seed: 5, numRuns: 200 },
    )
  })
})

describe('Esc, Backspace and a second finger', () => {
  it('take back the last corner, then the drawing, then the action', () => {
    const editor = new TestEditor().type('24').type('14').key('Backspace')
    expect(editor.state.drawing?.placed).toHaveLength(2)
    editor.key('Escape')
    expect(editor.state.drawing?.placed).toHaveLength(0)
    expect(editor.state.action).toBe('slab')
    editor.key('Escape')
    expect(editor.state.action).toBe('select')
    expect(editor.site.slabs).toHaveLength(0)
  })

  it('what the first finger set is taken back when a second comes down', () => {
    const editor = new TestEditor().choose('slab').pointerDown([1, 1])
    expect(editor.state.drawing?.placed).toHaveLength(1)
    editor.editor.cancel()
    expect(editor.state.drawing?.placed).toHaveLength(0)
  })
})

describe('words of directions', () => {
  it('read back what they print', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1799, max: 1800 }), tenths => {
        const deg = tenths / 10
        const turn = parseTurn(printTurn(deg))
        expect(turn.ok && turn.value).toBeCloseTo(deg, 9)
        const direction = parseDirection(printDirection(deg))
        expect(direction.ok && direction.value).toBeCloseTo((deg + 360) % 360, 9)
      }),
      { seed: 8 },
    )
  })

  it('refuse signs that stand for nothing', () => {
    for (const text of ['@90', '<45', '3,4', '', '90 up']) {
      expect(parseTurn(text).ok).toBe(false)
      expect(parseDirection(text).ok).toBe(false)
    }
  })

  it('are read as a field book writes them: minutes, left and right by a letter, bearings by their quadrant', () => {
    for (const [text, deg] of [
      ['89°30′ left', 89.5],
      [`12-30 R`, -12.5],
      ['45L', 45],
      ['−30', -30],
    ] as const)
      expect(parseTurn(text), text).toEqual({ ok: true, value: deg })
    // The four quadrants of one angle: Wolf and Ghilani, Elementary Surveying, 13th ed., 2012, chapter 7.
    for (const [text, deg] of [
      ['N 30 E', 30],
      ['S30°E', 150],
      [`s 30°0'0" w`, 210],
      ['N 30 W', 330],
      ['north', 0],
      ['W', 270],
    ] as const) {
      expect(parseDirection(text), text).toEqual({ ok: true, value: deg })
      expect(parseDirection(text, 20), text).toEqual({ ok: true, value: (deg + 20) % 360 })
    }
    for (const text of ['N 91 E', 'N E', 'E 30 N', 'N 30', 'toString'])
      expect(parseDirection(text).ok, text).toBe(false)
    for (const [text, deg] of [
      ['68.5', 68.5],
      ['360', 0],
      ['N 23°30′ E', 23.5],
      ['S 10 W', 190],
    ] as const)
      expect(parseAzimuth(text), text).toEqual({ ok: true, value: deg })
    for (const text of ['365', '-5', 'up', '']) expect(parseAzimuth(text).ok, text).toBe(false)
    // Degrees and words are the sheet's, whichever way north lies.
    expect(parseDirection('right', 20)).toEqual({ ok: true, value: 90 })
    expect(parseDirection('45', 20)).toEqual({ ok: true, value: 45 })
  })

  it('say a length as a mason would', () => {
    expect(sayLength(12.5 * ft, 'ftin')).toBe('12 ft 6 in')
    expect(sayLength(0.0254 * 0.125, 'ftin')).toBe('1/8 in')
    expect(sayLength(0, 'ftin')).toBe('0 in')
    expect(sayLength(-ft, 'ftin')).toBe('minus 1 ft')
    expect(sayLength(3.81, 'metric')).toBe('3.81 m')
  })
})

describe('an arc through three points', () => {
  it('passes through the third', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 4, noNaN: true }),
        fc.boolean(),
        (x, y, above) => {
          const p: Pt = [x, above ? y : -y]
          const riseM = riseThrough([-1, 0], [1, 0], p)
          const { arc } = edgeFromRise('', [-1, 0], [1, 0], riseM)
          expect(Math.hypot(p[0] - arc!.center[0], p[1] - arc!.center[1])).toBeCloseTo(arc!.radiusM, 9)
          expect(Math.sign(riseM)).toBe(above ? -1 : 1)
        },
      ),
      { seed: 4 },
    )
  })
})

describe('any run of gestures', () => {
  const point: fc.Arbitrary<Pt> = fc.tuple(
    fc.double({ min: -12, max: 12, noNaN: true }),
    fc.double({ min: -12, max: 12, noNaN: true }),
  )
  const gesture = fc.oneof(
    fc.tuple(
      fc.constant('choose' as const),
      fc.constantFrom(
        'select',
        'slab',
        'opening',
        'border',
        'building',
        'fence',
        'tree',
        'cover',
        'joint',
        'access',
        'note',
      ),
      fc.constantFrom('corners', 'rectangle', 'circle', 'freehand'),
    ),
    fc.tuple(fc.constant('click' as const), point),
    fc.tuple(fc.constant('drag' as const), point, point),
    fc.tuple(
      fc.constant('type' as const),
      fc.constantFrom('12', `6' 3 1/2"`, '4m', 'x', ''),
      fc.constantFrom('', '90', '45 right', '8'),
    ),
    fc.tuple(fc.constant('key' as const), fc.constantFrom('Enter', 'Escape', 'Backspace', 'Delete')),
    fc.tuple(fc.constant('edge' as const), fc.constantFrom('straight', 'arc')),
    fc.tuple(fc.constant('undo' as const)),
  )

  it('keeps every invariant, and undoing all of it gives back the very document it began with', () => {
    fc.assert(
      fc.property(fc.array(gesture, { maxLength: 40 }), gestures => {
        const editor = new TestEditor().choose('slab', { form: 'rectangle' }).drag([-4, -3], [4, 3])
        const first = editor.site
        let undone = 0
        for (const each of gestures) {
          if (each[0] === 'choose') editor.choose(each[1] as 'slab', { form: each[2] as 'corners' })
          else if (each[0] === 'click') editor.click(each[1])
          else if (each[0] === 'drag') editor.drag(each[1], each[2])
          else if (each[0] === 'type') editor.type(each[1], each[2])
          else if (each[0] === 'key') editor.key(each[1] as 'Enter')
          else if (each[0] === 'edge') editor.editor.setOptions({ edge: each[1] as 'arc' })
          else {
            editor.store.undo()
            undone += 1
          }
          expect(invariants(editor.site)).toEqual([])
        }
        const last = editor.site
        const steps = editor.store.getState().history!.at
        for (let i = 0; i < steps; i++) editor.store.undo()
        for (let i = 0; i < steps; i++) editor.store.redo()
        expect(editor.site).toBe(last)
        const { history } = editor.store.getState()
        expect(history!.steps[0]!.document.slabs).toEqual([])
        if (undone === 0) expect(history!.steps[1]!.document).toBe(first)
      }),
      { seed: 11, numRuns: 120 },
    )
  })
})

describe('an arc drawn and its area', () => {
  it('bulges to the side the pointer is on', () => {
    const editor = new TestEditor().type('10').type('10').type('10')
    editor.editor.setOptions({ edge: 'arc' })
    editor.click([0, 0]).click([-1, 5 * ft])
    expect(editor.site.slabs).toHaveLength(1)
    expect(ringArea(resolveSlab(editor.site.slabs[0]!).outline)).toBeGreaterThan(100 * ft * ft)
  })
})
