import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { invariants } from '../../core/document/invariants'
import { serializeSite } from '../../core/document/serializeSite'
import { actionIds } from '../../renderer/editor/actions/actions'
import { mulberry32 } from '../geometry/mulberry32'
import { TestEditor } from './testEditor'

/** One thing a hand might do next. */
function act(hand: TestEditor, random: () => number): void {
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const spot = () => [Math.round(random() * 80) / 10, Math.round(random() * 60) / 10] as const
  const things = [
    ...hand.site.slabs,
    ...hand.site.casters,
    ...(hand.site.furnishings ?? []),
    ...(hand.site.tapes ?? []),
  ]
  const corners = hand.site.slabs.flatMap(({ outline }) => outline.vertices)
  switch (Math.floor(random() * 12)) {
    case 0:
    case 1:
      hand.choose(one(actionIds), {
        form: one(['corners', 'rectangle', 'base', 'circle', 'freehand'] as const),
        tape: one(['tie', 'dimension'] as const),
        strip: one(['border', 'band', 'inset'] as const),
        noteKind: one(['note', 'sunPoint'] as const),
      })
      break
    case 2:
    case 3:
    case 4:
      hand.click(spot())
      break
    case 5:
      hand.drag(spot(), spot())
      break
    case 6:
      hand.type(one(['', '4', `2' 6"`, 'nonsense', '0']), one(['', '90', 'up', '3']))
      break
    case 7:
      hand.key(one(['Enter', 'Escape', 'Backspace', 'Delete'] as const))
      break
    case 8:
      hand.choose('select')
      hand.view.setState({ selection: [one([...things, ...corners, { id: 'v0' }]).id] })
      break
    case 9:
      hand.editor.nudge([0.1, -0.2])
      break
    case 10:
      hand.editor.copy()
      hand.editor.paste()
      break
    case 11:
      for (const key of ['1', '2', 'Enter']) hand.editor.key(key)
  }
}

describe('whatever a hand does', () => {
  it('keeps every invariant; undone to empty it is the first document, done again the last', () => {
    let made = 0
    fc.assert(
      fc.property(fc.integer(), seed => {
        const random = mulberry32(seed)
        const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
        const names: string[] = []
        for (let i = 0; i < 30; i++) {
          const before = hand.site
          act(hand, random)
          if (hand.site === before) continue
          expect(invariants(hand.site)).toEqual([])
          names.push(hand.store.getState().history!.steps.at(-1)!.name)
        }
        made += names.length
        expect(names.every(name => name !== '')).toBe(true)
        hand.choose('select')
        const last = hand.site
        const text = serializeSite(last)
        for (let i = 0; i < 60; i++) hand.store.undo()
        expect(hand.site.slabs).toHaveLength(0)
        for (let i = 0; i < 60; i++) hand.store.redo()
        expect(hand.site).toBe(last)
        expect(serializeSite(hand.site)).toBe(text)
      }),
      { seed: 5, numRuns: 40 },
    )
    // Hands that change nothing would prove nothing.
    expect(made).toBeGreaterThan(200)
  })
})
