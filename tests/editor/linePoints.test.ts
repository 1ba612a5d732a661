import { describe, expect, it } from 'vitest'
import { checkSite } from '../../core/document/checkSite'
import { addLinePoint } from '../../core/document/commands/linePoints'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

const ft = 0.3048
const inFt = ([x, y]: Pt): Pt => [x / ft, y / ft]
const near = (found: Pt, wanted: Pt) => {
  expect(found[0]).toBeCloseTo(wanted[0], 9)
  expect(found[1]).toBeCloseTo(wanted[1], 9)
}

/** A slab 24 × 14 ft with its corner A at the origin, and a fence of three points beyond it. */
function yard() {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
  const [a] = editor.site.slabs[0]!.outline.vertices
  editor.choose('fence')
  const at = (x: number, y: number): Pt => [a!.at[0] + x * ft, a!.at[1] + y * ft]
  for (const spot of [at(-2, 20), at(10, 20), at(26, 20)]) editor.click(spot)
  editor.key('Enter')
  const id = editor.site.casters[0]!.id
  const line = (): readonly Pt[] => {
    const wall = editor.site.casters[0]!
    return wall.kind === 'wall' ? wall.line.map(([x, y]) => inFt([x - a!.at[0], y - a!.at[1]])) : []
  }
  const steps = () => editor.store.getState().history!.steps.map(({ name }) => name)
  return { editor, at, id, line, steps }
}

describe('a point of a fence', () => {
  it('is chosen by a click on it and dragged alone, as one step that undo takes back', () => {
    const { editor, at, id, line, steps } = yard()
    expect(editor.selection).toEqual([id])
    const before = steps().length
    const drawn = editor.site
    editor.drag(at(10, 20), at(10, 23))
    near(line()[1]!, [10, 23])
    near(line()[0]!, [-2, 20])
    near(line()[2]!, [26, 20])
    expect(steps().slice(before)).toEqual(['move point'])
    editor.store.undo()
    expect(editor.site).toBe(drawn)
  })

  it('catches on the slab and on the other points of its own fence, never on itself', () => {
    const { editor, at, line } = yard()
    editor.pointerDown(at(10, 20)).pointerMove(at(24.1, 14.1))
    expect(editor.state.aim?.caught).toMatchObject({ relation: 'Corner' })
    editor.pointerUp(at(24.1, 14.1))
    near(line()[1]!, [24, 14])
    editor.pointerDown(at(24, 14)).pointerMove(at(25.9, 20.1))
    expect(editor.state.aim?.caught).toMatchObject({ relation: 'End' })
    editor.key('Escape').pointerUp(at(25.9, 20.1))
    near(line()[1]!, [24, 14])
  })

  it('is moved by the arrow keys, taken out by Delete, and two points stay', () => {
    const { editor, id, line } = yard()
    editor.view.setState({ selection: [`${id}.1`] })
    editor.editor.nudge([0, 0.0254])
    near(line()[1]!, [10, 20 + 1 / 12])
    editor.key('Delete')
    expect(line()).toHaveLength(2)
    editor.view.setState({ selection: [`${id}.0`] })
    editor.key('Delete')
    expect(line()).toHaveLength(2)
    expect(editor.state.fault?.message).toMatch(/^A line has two points at least/)
  })

  it('of two neighbors taken out at once the right ones go', () => {
    const { editor, id, line } = yard()
    editor.editor.run('new point', addLinePoint(`${id}.1`))
    near(line()[2]!, [18, 20])
    editor.view.setState({ selection: [`${id}.1`, `${id}.2`] })
    editor.key('Delete')
    near(line()[0]!, [-2, 20])
    near(line()[1]!, [26, 20])
  })

  it('goes once where its fence is chosen with it', () => {
    const { editor, id, line } = yard()
    editor.view.setState({ selection: [id, `${id}.1`] })
    editor.editor.nudge([ft, 0])
    for (const [i, x] of [-1, 11, 27].entries()) near(line()[i]!, [x, 20])
  })
})

describe('a point of a joint line or of a tape', () => {
  it('of a line no joint crosses is dragged, and the whole line by its middle', () => {
    const { editor, at } = yard()
    editor.choose('joint', { wish: 'forbiddenLine' })
    editor.click(at(4, 4)).click(at(12, 4)).key('Enter')
    const wish = () => editor.site.wishes.find(({ kind }) => kind === 'forbiddenLine')!
    const ends = () => {
      const found = wish()
      return found.kind === 'forbiddenLine' ? found.line : []
    }
    editor.view.setState({ selection: [wish().id] })
    editor.drag(at(12, 4), at(12, 8))
    near(ends()[1]!, at(12, 8))
    near(ends()[0]!, at(4, 4))
    editor.view.setState({ selection: [wish().id] })
    const [from, to] = [at(8, 6), at(9, 7)]
    editor.pointerDown(from).pointerMove(to, true).pointerUp(to)
    expect(ends()[0]![0]).toBeGreaterThan(at(4, 4)[0] + 0.5 * ft)
    expect(ends()[1]![1] - ends()[0]![1]).toBeCloseTo(4 * ft, 9)
  })

  it('of a required joint holds on to the edge it is dragged to, and lets go in the open', () => {
    const { editor, at } = yard()
    editor.choose('joint', { wish: 'required' })
    // Two points are a joint: nothing more is asked, and no third is dropped in silence.
    editor.click(at(8, 0)).click(at(8, 14))
    expect(editor.site.wishes).toHaveLength(1)
    const end = (i: 0 | 1) => {
      const wish = editor.site.wishes[0]!
      if (wish.kind !== 'required') throw new Error('no joint line')
      return wish.line[i]
    }
    const edges = editor.site.slabs[0]!.outline.edges
    expect(end(1).anchor).toMatchObject({ on: 'edge', edgeId: edges[2]!.id })
    editor.view.setState({ selection: [editor.site.wishes[0]!.id] })
    editor.drag(at(8, 14), at(24, 7))
    expect(end(1).anchor).toMatchObject({ on: 'edge', edgeId: edges[1]!.id })
    near(end(1).last, at(24, 7))
    editor.drag(at(24, 7), at(12, 8))
    expect(end(1).anchor).toEqual({ on: 'free' })
    near(end(0).last, at(8, 0))
    expect(checkSite(editor.site)).toEqual([])
  })

  it('held at both ends it is not pushed, which is told, and leaves no step of undo', () => {
    const { editor, at } = yard()
    editor.choose('joint', { wish: 'required' }).click(at(8, 0)).click(at(8, 14))
    editor.choose('tape', { tape: 'dimension' }).click(at(0, 0)).click(at(24, 14))
    const before = editor.site
    for (const id of [before.wishes[0]!.id, before.tapes![0]!.id]) {
      editor.view.setState({ selection: [id] })
      editor.editor.nudge([1, 0])
      expect(editor.state.fault?.message).toMatch(/^Nothing that is chosen can be moved\. .*held at both ends/s)
      expect(editor.site).toBe(before)
    }
  })

  it('of a tape takes hold of the corner it is dragged to', () => {
    const { editor, at } = yard()
    editor.choose('tape', { tape: 'dimension' })
    editor.click(at(3, 18)).click(at(24, 14))
    const tape = () => editor.site.tapes![0]!
    editor.view.setState({ selection: [tape().id] })
    editor.drag(at(3, 18), at(0, 14))
    expect(tape().ends[0].on).toEqual({ on: 'vertex', vertexId: editor.site.slabs[0]!.outline.vertices[3]!.id })
    expect(Math.hypot(24, 0)).toBeCloseTo((tape().ends[1].last[0] - tape().ends[0].last[0]) / ft, 9)
  })
})
