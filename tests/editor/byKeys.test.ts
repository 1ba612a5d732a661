/** The plan by the keys alone: what is carried, set, told and kept when nothing is pointed at. */
import { describe, expect, it } from 'vitest'
import { addSlab } from '../../core/document/commands/addSlab'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { m2ToSquareFeet } from '../../core/units/convert'
import { toScreen } from '../../renderer/editor/camera/camera'
import { actsHeight, boxSize, placeEntry } from '../../renderer/editor/entry/placeEntry'
import { aimWords } from '../../renderer/editor/hand/telling'
import type { Pt } from '../../shared/document/primitives'
import { TestEditor } from './testEditor'

const foot = 0.3048
const middle: Pt = [0, 0]

/** As many steps of a foot as asked, to one side. */
function carry(hand: TestEditor, [right, up]: Pt, times = 1): TestEditor {
  for (let i = 0; i < times; i++) hand.editor.carry([right * foot, up * foot], middle)
  return hand
}
const said = (hand: TestEditor): string => hand.state.said.words

function patio(): TestEditor {
  const hand = new TestEditor()
  hand.choose('slab', { form: 'rectangle' }).type('30', '20')
  return hand
}

describe('the point the arrow keys carry', () => {
  it('is told at every step, as the boxes would read', () => {
    const hand = new TestEditor()
    carry(hand, [1, 0], 2)
    expect(said(hand)).toBe('Right 2 ft, up 0 in')
    hand.key('Enter')
    expect(said(hand)).toBe('Point A is set.')
    carry(hand, [1, 0], 12)
    expect(said(hand)).toBe('Length 12 ft, direction right')
    hand.key('Enter')
    carry(hand, [0, 1], 6)
    expect(said(hand)).toBe('Length 6 ft, turn 90° left')
    hand.key('Backspace')
    expect(said(hand)).toBe('Point B is taken back.')
  })

  it('is told left and below as less than zero', () => {
    const hand = patio().choose('tree')
    expect(aimWords(hand.state.drawing!, [-3 * foot, -0.5 * foot], 'ftin')).toBe('Right minus 3 ft, up minus 6 in')
  })

  it('draws a stroke that lines and arcs are fitted to: Enter begins it and ends it', () => {
    const hand = new TestEditor()
    hand.choose('slab', { form: 'freehand' })
    hand.key('Enter')
    expect(hand.state.fault?.message).toContain('the arrows carry the point')
    carry(hand, [1, 0]).key('Enter')
    carry(hand, [1, 0], 12)
    carry(hand, [0, 1], 8)
    carry(hand, [-1, 0], 12)
    carry(hand, [0, -1], 8)
    hand.key('Enter')
    const [slab] = hand.site.slabs
    expect(slab?.outline.vertices).toHaveLength(4)
    // 12 × 8 ft by its four corners.
    const xs = slab!.outline.vertices.map(({ at }) => at[0] / foot)
    const ys = slab!.outline.vertices.map(({ at }) => at[1] / foot)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(12, 6)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(8, 6)
  })

  it('takes its last step back from a stroke', () => {
    const hand = new TestEditor()
    hand.choose('slab', { form: 'freehand' })
    carry(hand, [1, 0]).key('Enter')
    carry(hand, [1, 0], 3)
    hand.key('Backspace')
    expect(hand.state.drawing?.placed).toHaveLength(3)
    expect(said(hand)).toBe('The last step is taken back.')
  })
})

describe('what is typed', () => {
  it('stays while the box beside it is asked for', () => {
    const hand = new TestEditor()
    hand.choose('slab', { form: 'rectangle' }).type('30')
    expect(hand.state.typed).toEqual({ width: '30' })
    expect(hand.state.fault).toEqual({ field: 'depth', message: 'Type the depth as well.' })
    expect(hand.state.box).toBe(1)
    hand.editor.write('depth', '20')
    hand.editor.enter()
    expect(hand.site.slabs).toHaveLength(1)
  })

  it('leads the last edge back as an arc, to either side, and a typed edge that comes home is one', () => {
    // A half circle over 14 ft, outward and inward: 336 ft² and π·7²/2 more or less.
    const half = (Math.PI * 49) / 2
    for (const [rise, radius, areaFt2] of [
      ['7', '', 336 + half],
      ['-7', '', 336 - half],
      ['', '7', 336 + half],
      ['', '−7', 336 - half],
    ] as const) {
      const hand = new TestEditor().type('24').type('14').type('24')
      hand.editor.setOptions({ edge: 'arc' })
      expect(hand.state.drawing?.prompt).toContain('Enter leads the last arc to the first corner')
      hand.key('Enter')
      expect(hand.state.said.words).toBe('Back at point A.')
      expect(hand.state.drawing?.fields.map(({ id }) => id)).toEqual(['rise', 'radius'])
      hand.key('Backspace')
      expect(hand.state.drawing?.placed).toHaveLength(4)
      hand.key('Enter').type(rise, radius)
      expect(hand.site.slabs).toHaveLength(1)
      expect(m2ToSquareFeet(resolveSlab(hand.site.slabs[0]!).netAreaM2)).toBeCloseTo(areaFt2, 6)
    }
    // Two corners and two arcs: a disk of 24 ft, its second edge typed home.
    const disk = new TestEditor().choose('slab', { edge: 'arc' })
    disk.type('24').type('12')
    expect(disk.state.said.words).toBe('The arc is set.')
    disk.type('24', '90')
    expect(disk.state.said.words).toBe('Back at point A.')
    disk.type('12')
    expect(m2ToSquareFeet(resolveSlab(disk.site.slabs[0]!).netAreaM2)).toBeCloseTo(Math.PI * 144, 6)
  })

  it('stays where it is refused: a turn without a length, a radius that spans nothing, a zero', () => {
    const hand = new TestEditor()
    hand.type('24').type('', '90 left')
    expect(hand.state.typed).toEqual({ turn: '90 left' })
    expect(hand.state.fault?.message).toBe('Type the length as well.')
    const arc = new TestEditor().choose('slab', { edge: 'arc' })
    arc.type('24').type('', '2')
    expect(arc.state.typed).toEqual({ radius: '2' })
    expect(arc.state.fault?.message).toContain('12′')
    const zero = new TestEditor().choose('slab', { form: 'rectangle' }).type('0', '20')
    expect(zero.state.typed).toEqual({ width: '0', depth: '20' })
    expect(zero.state.fault?.message).toContain('is no width')
  })

  it('begins with a sign where less than zero means left or below, and only there', () => {
    const hand = patio().choose('slab', { form: 'corners' })
    expect(hand.editor.key('-')).toBe(true)
    hand.editor.key('5')
    expect(hand.state.typed).toEqual({ right: '-5' })
    hand.editor.enter()
    expect(hand.state.drawing?.placed[0]?.[0]).toBeCloseTo(-5 * foot, 9)
    hand.editor.attend(null)
    expect(hand.editor.key('-')).toBe(false)
  })

  it('of a row of things goes by one corner, and the next action by it too', () => {
    const hand = patio().choose('tree')
    hand.type('35', '10').type('40', '20').type('45', '5')
    expect(hand.site.casters.map(each => each.kind === 'tree' && each.at[0] / foot)).toEqual([
      expect.closeTo(35, 9),
      expect.closeTo(40, 9),
      expect.closeTo(45, 9),
    ])
    hand.key('Escape').choose('fence')
    expect(hand.state.mark?.words).toBe('corner A of Patio')
    // Who chooses a tree means it.
    hand.view.setState({ selection: [hand.site.casters[0]!.id] })
    hand.choose('fence')
    expect(hand.state.mark?.words).toBe('trunk of Tree')
  })

  it('an Enter that ends nothing says what is waited for', () => {
    const hand = new TestEditor()
    hand.key('Enter')
    expect(hand.state.fault?.message).toBe('Type a length or click the first corner.')
    hand.type('24')
    expect(hand.state.fault).toBeNull()
  })
})

describe('what is told', () => {
  it('of every edit, by the name undo has for it, also when it is the same again', () => {
    const hand = patio()
    expect(said(hand)).toBe('Slab done.')
    hand.editor.nudge([foot, 0])
    const first = hand.state.said
    expect(first.words).toBe('Moved right 1 ft.')
    hand.editor.nudge([foot, 0])
    expect(hand.state.said).not.toBe(first)
    expect(said(hand)).toBe('Moved right 1 ft.')
    hand.editor.nudge([0, -0.0254])
    expect(said(hand)).toBe('Moved down 1 in.')
  })

  it('of undo and redo, and of nothing else that changes the document', () => {
    const hand = patio()
    hand.store.undo()
    expect(said(hand)).toBe('Undone: slab.')
    hand.store.redo()
    expect(said(hand)).toBe('Done again: slab.')
    const before = hand.state.said
    hand.store.apply('slab', site => {
      const made = addSlab({ outline: { kind: 'circle', center: [20, 20], radiusM: 2 }, name: 'Round' })(site)
      return made.ok ? made.value : site
    })
    expect(hand.state.said).toBe(before)
  })

  it('of Esc: what was dropped, then the action, then the choice, then nothing', () => {
    const hand = patio()
    hand.choose('fence').type('0', '0')
    const words = [1, 2, 3, 4].map(() => {
      const was = hand.state.said
      hand.key('Escape')
      return hand.state.said === was ? null : said(hand)
    })
    expect(words).toEqual(['Dropped.', 'Select', 'Nothing is chosen.', null])
  })

  it('of a border or a part that no copy can be made of: refused, and not called copied', () => {
    const hand = patio()
    const [slab] = hand.site.slabs
    hand.view.setState({ selection: [slab!.outline.vertices[0]!.id] })
    expect(hand.editor.copy()).toBeNull()
    expect(hand.state.fault?.message).toContain('copied')
    expect(said(hand)).toBe('Slab done.')
    expect(hand.state.hasCopy).toBe(false)
  })
})

// 1440 × 900 at 200 % leaves the plan 430 × 302; WCAG 2.2, 1.4.4 wants nothing lost at that size.
it.each([
  { width: 430, height: 302 },
  { width: 1100, height: 752 },
])('the boxes stand whole on the plan before the first point, clear of the actions: $width × $height', size => {
  const [left, top] = placeEntry({ zoom: 20, x: 0, y: 0 }, size, [], undefined)
  expect(left).toBeGreaterThanOrEqual(82)
  expect(left + boxSize.width).toBeLessThanOrEqual(size.width)
  expect(top + boxSize.height + actsHeight).toBeLessThanOrEqual(size.height)
})

it('after three corners the boxes cover neither the first nor the one across from it', () => {
  const camera = { zoom: 18.5, x: 326, y: 272 }
  const size = { width: 652, height: 546 }
  const corners: readonly Pt[] = [
    [-12, -8],
    [12, -8],
    [12, 8],
    [-12, 8],
  ].map(([x, y]) => [x! * foot, y! * foot])
  for (let turned = 0; turned < 4; turned++) {
    const [first, second, third, next] = [0, 1, 2, 3].map(i => corners[(i + turned) % 4]!)
    const [left, top] = placeEntry(camera, size, [first!, second!, third!], undefined)
    for (const at of [first!, third!, next!]) {
      const [x, y] = toScreen(camera, at)
      const isUnder = x > left && x < left + boxSize.width && y > top && y < top + boxSize.height + actsHeight
      expect(isUnder, `turned ${turned}`).toBe(false)
    }
  }
})
