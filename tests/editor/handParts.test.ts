/** What the hand takes back, keeps and goes on with: one gesture or key at a time. */
import { describe, expect, it } from 'vitest'
import { moveSelection } from '../../core/document/commands/moveSelection'
import { setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { addSteps } from '../../core/document/commands/slabParts'
import { squareUp } from '../../core/document/commands/squareUp'
import { createMemo } from '../../core/plan/memo'
import { emptySite } from '../../renderer/app/emptySite'
import { entityGeometry } from '../../renderer/editor/layers/planGeometry'
import { deriveLive } from '../../renderer/store/livePlan'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

const finger = { zoom: 100, touch: true, free: true } as const
const patio = () => new TestEditor().choose('slab', { form: 'rectangle' }).drag([0, 0], [4, 3])
const steps = (editor: TestEditor) => editor.store.getState().rev

it('leaves no mark on the plan once all that was asked for is pointed out', () => {
  const editor = patio()
  const given: Pt[] = []
  editor.editor.pick({ prompts: ['One end.', 'The other.'], catches: true, done: points => given.push(...points) })
  editor.click([5, 1]).click([6, 2])
  expect(given).toHaveLength(2)
  expect(editor.state).toMatchObject({ action: 'select', drawing: null, aim: null })
})

describe('a finger', () => {
  it('sets the first corner of a rectangle where it comes down, the second where it is lifted', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' })
    editor.editor.down([0, 0], finger)
    editor.editor.up([0, 0], finger, false)
    expect(editor.state.drawing?.placed).toHaveLength(1)
    editor.editor.down([1, 1], finger)
    expect(editor.site.slabs).toHaveLength(0)
    editor.editor.move([4, 3], { ...finger, pressed: true })
    editor.editor.up([4, 3], finger, true)
    expect(editor.site.slabs[0]?.outline.vertices.map(({ at }) => at)).toContainEqual([4, 3])
  })
  it('lets go of what it carries when a second one comes down', () => {
    const editor = patio()
    const { slabs } = editor.site
    const corner: Pt = slabs[0]!.outline.vertices[0]!.at
    editor.editor.down(corner, finger)
    editor.editor.move([corner[0] + 1, corner[1]], { ...finger, pressed: true })
    expect(editor.shown.slabs).not.toEqual(slabs)
    editor.editor.cancel()
    editor.editor.move([corner[0] + 2, corner[1]], finger)
    expect(editor.shown.slabs).toEqual(slabs)
    expect(editor.state.carrying).toBe(false)
  })
})

it('a press on a corner that does not move is no step of undo', () => {
  const editor = patio()
  const before = steps(editor)
  // So far off that the drawing catches every fourth foot, and this corner stands on none of them.
  editor.zoom = 10
  const corner = editor.site.slabs[0]!.outline.vertices[2]!.at
  editor.pointerDown(corner).pointerUp(corner)
  expect(steps(editor)).toBe(before)
})

describe('edges of a border', () => {
  const edgesOf = (editor: TestEditor, slab: number) => editor.site.slabs[slab]!.outline.edges.map(({ id }) => id)
  it('all of a path are kept as all of it, whatever is drawn into it later', () => {
    const editor = patio().choose('border', { strip: 'border' })
    editor.editor.chooseEdges(edgesOf(editor, 0))
    editor.key('Enter')
    expect(editor.site.slabs[0]!.borders[0]?.edges).toBe('all')
  })
  it('begin anew at another path', () => {
    const editor = patio().choose('slab', { form: 'rectangle' }).drag([10, 0], [14, 3])
    editor.choose('border', { strip: 'border' }).click([2, 0]).click([12, 0])
    expect(editor.state.edges).toHaveLength(1)
    expect(edgesOf(editor, 1)).toContain(editor.state.edges[0])
  })
})

it('a tape that ends where it starts is refused in words, and keeps its start', () => {
  const editor = patio().choose('tape', { tape: 'dimension' }).click([1, 1]).click([1, 1])
  expect(editor.state.fault?.message).toMatch(/^0″ is no length of a line/)
  expect(editor.click([1, 3]).site.tapes).toHaveLength(1)
})

it('what was pasted is shaped next, and costs no corner of what is half drawn', () => {
  const editor = patio()
  editor.editor.copy()
  editor.choose('tree').editor.paste()
  expect(editor.state.action).toBe('select')
  expect(editor.selection).toEqual([editor.site.slabs[1]!.id])
  editor.choose('slab', { form: 'corners' }).click([20, 0]).editor.paste()
  expect(editor.state.drawing?.placed).toHaveLength(1)
  expect(editor.site.slabs).toHaveLength(3)
})

it('chosen steps are shown on the plan', () => {
  const editor = patio()
  const slab = editor.site.slabs[0]!
  const flight = { edgeId: slab.outline.edges[0]!.id, fromT: 0, widthM: 2, risers: 3, riserM: 0.18, treadM: 0.3 }
  editor.editor.run('steps', addSteps(slab.id, flight))
  const live = deriveLive(editor.site, '2026-07-21', createMemo())
  const { edges } = entityGeometry(live, {}, editor.site.slabs[0]!.steps[0]!.id)
  expect(Math.max(...edges.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1])))).toBeCloseTo(2, 9)
})

describe('another kind, chosen while one is drawn,', () => {
  it('is drawn its own way: after an inset the edges of a border are chosen', () => {
    const editor = patio().choose('border', { strip: 'inset', form: 'circle' })
    editor.editor.setOptions({ strip: 'border' })
    expect(editor.state.drawing).toBeNull()
    editor.click([2, 0]).key('Enter')
    expect(editor.site.slabs[0]!.borders).toHaveLength(1)
    expect(editor.site.slabs[0]!.insets).toHaveLength(0)
  })
  it('takes nothing over that was set for a line', () => {
    const editor = patio().choose('joint', { wish: 'direction' }).click([1, 0])
    editor.editor.setOptions({ wish: 'required' })
    expect(editor.state.drawing?.placed).toHaveLength(1)
    // A line may have many points, a required joint two.
    editor.editor.setOptions({ wish: 'forbiddenLine' })
    expect(editor.state.drawing?.placed).toHaveLength(0)
    editor.click([1, 0])
    editor.editor.setOptions({ wish: 'forbiddenArea', form: 'rectangle' })
    expect(editor.state.drawing?.placed).toHaveLength(0)
    editor.click([1, 1]).click([2, 2])
    expect(editor.site.wishes.map(({ kind }) => kind)).toEqual(['forbiddenArea'])
  })
})

it('what an edit did besides is told as done, until it is taken back or something else is chosen', () => {
  const editor = new TestEditor().choose('slab', { form: 'rectangle' }).type('20', '10')
  const [slab] = editor.site.slabs
  const path = slab!.outline
  editor.editor.run('arc', setEdgeRise(path.edges[1]!.id, 0.5))
  editor.editor.run('corner', moveSelection([path.vertices[2]!.id], [0.2, 0.1]))
  const square = () => editor.editor.run('square', squareUp(path.id, path.edges[0]!.id))
  expect(square()).toBe(true)
  expect(editor.state.fault).toMatchObject({ isDone: true, message: expect.stringContaining('square') })
  editor.store.undo()
  expect(editor.state.fault).toBeNull()
  square()
  editor.view.setState({ selection: [path.edges[0]!.id] })
  expect(editor.state.fault).toBeNull()
  // A refusal is no such thing: it stays until something is done.
  editor.editor.run('square', squareUp(path.id, 'e0'))
  expect(editor.state.fault).toMatchObject({ isDone: false })
})

it('a click beside all edges is told, and nothing is chosen', () => {
  const editor = patio().choose('border', { strip: 'border' }).click([2, 1.5])
  expect(editor.state.edges).toEqual([])
  expect(editor.state.fault?.message).toBe('No edge of a slab or an opening lies there.')
  expect(editor.click([2, 0]).state.fault).toBeNull()
})

it('what a form makes is chosen, to be shaped next; what it changes leaves the choice as it was', () => {
  const editor = patio()
  const { id, outline } = editor.site.slabs[0]!
  const flight = { edgeId: outline.edges[0]!.id, fromT: 0, widthM: 2, risers: 2, riserM: 0.18, treadM: 0.3 }
  expect(editor.editor.make('steps', addSteps(id, flight))).toBe(true)
  expect(editor.selection).toEqual([editor.site.slabs[0]!.steps[0]!.id])
  expect(editor.editor.make('steps', addSteps('none', flight))).toBe(false)
  expect(editor.editor.run('steps', addSteps(id, { ...flight, fromT: 0.5 }))).toBe(true)
  expect(editor.selection).toEqual([editor.site.slabs[0]!.steps[0]!.id])
})

describe('keys', () => {
  it('Enter sets the point the arrow keys carry, where it might have closed the outline', () => {
    const editor = new TestEditor().choose('slab', { form: 'corners' }).click([0, 0]).click([4, 0]).click([4, 3])
    editor.editor.carry([-2, 1], [0, 0])
    editor.key('Enter')
    expect(editor.site.slabs).toHaveLength(0)
    expect(editor.state.drawing?.placed).toHaveLength(4)
  })
  it('Tab goes from the last box to the first', () => {
    const editor = new TestEditor().choose('slab', { form: 'rectangle' })
    editor.editor.key('2')
    const boxes = editor.state.drawing!.fields.length
    for (let i = 0; i < boxes; i++) editor.editor.key('Tab')
    expect(editor.state.box).toBe(0)
  })
  it('Esc takes back what is typed before what is drawn', () => {
    const editor = new TestEditor().choose('slab', { form: 'corners' }).click([0, 0]).click([4, 0])
    editor.editor.key('2')
    editor.key('Escape')
    expect(editor.state.typed).toEqual({})
    expect(editor.state.drawing?.placed).toHaveLength(2)
    editor.key('Escape')
    expect(editor.state.drawing?.placed).toHaveLength(0)
  })
  it('go on to the boxes of the next tree', () => {
    const editor = patio().choose('tree')
    editor.editor.key('9')
    editor.editor.key('Enter')
    expect(editor.site.casters).toHaveLength(1)
    expect(editor.state.box).toBe(0)
  })
})

describe('a copy', () => {
  const chosenPatio = () => {
    const editor = patio()
    editor.view.setState({ selection: [editor.site.slabs[0]!.id] })
    return editor
  }
  it('is made of what was copied, also once that is deleted', () => {
    const editor = chosenPatio()
    editor.editor.copy()
    editor.editor.remove()
    expect(editor.site.slabs).toHaveLength(0)
    editor.editor.paste()
    expect(editor.site.slabs).toHaveLength(1)
  })
  it('of another site goes about the place that is given, and is still at hand in the next site', () => {
    const editor = chosenPatio()
    const text = editor.editor.copy()!
    editor.store.open(emptySite('other', 'Other'))
    expect(editor.state.hasCopy).toBe(true)
    editor.editor.paste(text, [20, 30])
    const corners = editor.site.slabs[0]!.outline.vertices.map(({ at }) => at)
    const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2
    expect(middle(corners.map(([x]) => x))).toBeCloseTo(20, 9)
    expect(middle(corners.map(([, y]) => y))).toBeCloseTo(30, 9)
  })
})

it('an arc belongs to the shape it was drawn in: the next thing starts with a straight edge', () => {
  const editor = new TestEditor().choose('slab', { form: 'corners', edge: 'arc' }).choose('building')
  expect(editor.state.options.edge).toBe('straight')
})

it('another form begins anew; another kind of edge keeps the corners that are set', () => {
  const editor = new TestEditor().choose('slab', { form: 'corners' }).click([0, 0]).click([4, 0])
  editor.editor.setOptions({ edge: 'arc' })
  expect(editor.state.drawing?.placed).toHaveLength(2)
  editor.editor.setOptions({ form: 'circle' })
  expect(editor.state.drawing?.placed).toHaveLength(0)
})
