import { describe, expect, it } from 'vitest'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { shapeHandle } from '../../renderer/editor/shapeHandle'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

const ft = 0.3048
const areaFt2 = (editor: TestEditor) => resolveSlab(editor.shown.slabs[0]!).netAreaM2 / (ft * ft)

/** 24 × 14 ft, one part of its outline chosen. */
function patio(part: 'vertices' | 'edges', index: number) {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const { id } = editor.site.slabs[0]!.outline[part][index]!
  editor.view.setState({ selection: [id] })
  const ring = shapeHandle(editor.site, [id], editor.zoom)!
  const pull = ([x, y]: Pt): Pt => [ring.at[0] + x, ring.at[1] + y]
  return { editor, ring, pull }
}

describe('the ring beside a chosen corner', () => {
  it('dragged along the line that halves the corner rounds it to a whole measure, as one step', () => {
    const { editor, ring, pull } = patio('vertices', 2)
    // A right angle: the rounding of radius r lies r(√2 − 1) off its corner.
    const far = (6 * ft * (Math.SQRT2 - 1)) / Math.SQRT2 + 0.01
    editor.pointerDown(ring.at).pointerMove(pull([-far, -far]))
    expect(editor.state.aim?.caught).toEqual({ relation: 'Radius', rest: '6′ 0″' })
    expect(editor.site.slabs[0]!.outline.vertices[2]!.roundM).toBeUndefined()
    editor.pointerUp(pull([-far, -far]))
    expect(areaFt2(editor)).toBeCloseTo(336 - (1 - Math.PI / 4) * 36, 9)
    const { steps, at } = editor.store.getState().history!
    expect([steps[at]!.name, at]).toEqual(['corner radius', 2])
    const again = shapeHandle(editor.site, editor.selection, editor.zoom)!
    editor.drag(again.at, [again.at[0] + 3, again.at[1] + 3])
    expect(editor.site.slabs[0]!.outline.vertices[2]!).not.toHaveProperty('roundM')
  })

  it('stays at the last radius that had room, and Esc leaves the corner as it was', () => {
    const { editor, ring, pull } = patio('vertices', 0)
    editor.pointerDown(ring.at)
    for (let far = 0; far < 2; far += 0.02) editor.pointerMove(pull([far, far]))
    // 14 ft is all that the shorter side has.
    expect(editor.shown.slabs[0]!.outline.vertices[0]!.roundM! / ft).toBeCloseTo(14, 9)
    const before = editor.site
    editor.key('Escape').pointerUp(pull([2, 2]))
    expect(editor.shown).toBe(before)
  })
})

describe('the ring beside a chosen edge', () => {
  it('bends it to either side, and straightens it again', () => {
    const { editor, ring, pull } = patio('edges', 0)
    editor.drag(ring.at, pull([1, -2 * ft]))
    expect(editor.site.slabs[0]!.outline.edges[0]!.riseM! / ft).toBeCloseTo(2, 9)
    // Segment of rise 2 over a chord of 24 ft: R = (c² + 4s²)/8s = 37, area R²(θ − sin θ)/2, CRC Standard Mathematical Tables.
    const half = Math.asin(12 / 37)
    expect(areaFt2(editor)).toBeCloseTo(336 + (37 ** 2 * (2 * half - Math.sin(2 * half))) / 2, 6)
    const bent = shapeHandle(editor.site, editor.selection, editor.zoom)!
    editor.drag(bent.at, [bent.at[0], bent.at[1] + 4 * ft])
    expect(editor.site.slabs[0]!.outline.edges[0]!.riseM! / ft).toBeCloseTo(-2, 9)
  })
})

it('stands for one chosen part only, and never at a corner that is straight', () => {
  const { editor } = patio('vertices', 0)
  const { vertices, edges } = editor.site.slabs[0]!.outline
  expect(shapeHandle(editor.site, [], 100)).toBeNull()
  expect(shapeHandle(editor.site, [vertices[0]!.id, vertices[1]!.id], 100)).toBeNull()
  expect(shapeHandle(editor.site, [editor.site.slabs[0]!.id], 100)).toBeNull()
  expect(shapeHandle(editor.site, [edges[0]!.id], 100)?.words).toBe('Rise')
  editor.editor.run('new corner', splitEdge(edges[0]!.id, 0.5))
  expect(shapeHandle(editor.site, [editor.site.slabs[0]!.outline.vertices[1]!.id], 100)).toBeNull()
})
