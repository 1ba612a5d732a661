import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findRow, type ListState, pressKey, pressRow, rowForTab } from '../../renderer/outline/moveInList'

const rows = ['Patio', 'Pool', 'Border 1', 'Border 2', 'Maple', 'Oak'].map((name, i) => ({ id: `e${i}`, name }))
const fresh: ListState = { selection: [], active: null, anchor: null }
const key = (key: string, held: { shiftKey?: boolean; ctrlKey?: boolean } = {}) => ({
  ...{ key, shiftKey: false, ctrlKey: false, metaKey: false },
  ...held,
})
const pressed = (...keys: ReturnType<typeof key>[]): ListState =>
  keys.reduce<ListState>((state, each) => pressKey(rows, state, each) ?? state, fresh)

// Keys and choosing follow the listbox pattern of the WAI-ARIA Authoring Practices, W3C: focus in a list in which many
// rows may be chosen.
describe('keys in the outline', () => {
  it('choose the row they go to, and take a run of rows with Shift', () => {
    expect(pressed(key('ArrowDown'))).toEqual({ selection: ['e1'], active: 'e1', anchor: 'e1' })
    expect(pressed(key('End')).selection).toEqual(['e5'])
    expect(pressed(key('End'), key('PageUp')).selection).toEqual(['e0'])
    const run = pressed(key('ArrowDown'), key('ArrowDown', { shiftKey: true }), key('ArrowDown', { shiftKey: true }))
    expect(run).toEqual({ selection: ['e1', 'e2', 'e3'], active: 'e3', anchor: 'e1' })
    const back = pressKey(rows, run, key('Home', { shiftKey: true }))!
    expect(back).toEqual({ selection: ['e1', 'e0'], active: 'e0', anchor: 'e1' })
  })

  it('with Control only go there; Space then adds and takes away', () => {
    const there = pressed(key(' '), key('ArrowDown', { ctrlKey: true }), key('ArrowDown', { ctrlKey: true }))
    expect(there).toEqual({ selection: ['e0'], active: 'e2', anchor: 'e0' })
    const added = pressKey(rows, there, key(' ', { ctrlKey: true }))!
    expect(added.selection).toEqual(['e0', 'e2'])
    expect(pressKey(rows, added, key(' ', { ctrlKey: true }))!.selection).toEqual(['e0'])
  })

  it('choose all and none; an Escape with nothing chosen is left to the page', () => {
    expect(pressed(key('a', { ctrlKey: true })).selection).toHaveLength(rows.length)
    expect(pressed(key('a', { ctrlKey: true }), key('Escape')).selection).toEqual([])
    expect(pressKey(rows, fresh, key('Escape'))).toBeNull()
    expect(pressKey(rows, fresh, key('Tab'))).toBeNull()
    expect(pressKey([], fresh, key('ArrowDown'))).toBeNull()
  })

  it('find a row by the letters of its name, the same letter again the next one', () => {
    expect(findRow(rows, 'e0', 'p')).toBe('e1')
    expect(findRow(rows, 'e1', 'p')).toBe('e0')
    expect(findRow(rows, 'e0', 'bor')).toBe('e2')
    expect(findRow(rows, 'e2', 'bor')).toBe('e2')
    expect(findRow(rows, null, 'OAK')).toBe('e5')
    expect(findRow(rows, 'e0', 'x')).toBeNull()
  })

  it('come by Tab to the row last left, else to the first chosen', () => {
    expect(rowForTab(rows, fresh)).toBe('e0')
    expect(rowForTab(rows, { ...fresh, selection: ['gone', 'e3'] })).toBe('e3')
    expect(rowForTab(rows, { ...fresh, selection: ['e3'], active: 'e4' })).toBe('e4')
    expect(rowForTab(rows, { ...fresh, active: 'gone' })).toBe('e0')
  })

  it('whatever is pressed, every chosen row is of the list, once, and the row with the focus stands in it', () => {
    const presses = fc.array(
      fc.oneof(
        fc
          .tuple(
            fc.constantFrom('ArrowDown', 'ArrowUp', 'Home', 'End', 'PageUp', 'PageDown', ' ', 'a', 'Escape'),
            fc.boolean(),
            fc.boolean(),
          )
          .map(
            ([name, shiftKey, ctrlKey]) =>
              (state: ListState) =>
                pressKey(rows, state, key(name, { shiftKey, ctrlKey })) ?? state,
          ),
        fc.tuple(fc.constantFrom(...rows), fc.boolean(), fc.boolean()).map(
          ([{ id }, adds, runs]) =>
            (state: ListState) =>
              pressRow(rows, state, id, { adds, runs }),
        ),
      ),
      { maxLength: 30 },
    )
    fc.assert(
      fc.property(presses, all => {
        const { selection, active } = all.reduce((state, press) => press(state), fresh)
        const ids = rows.map(({ id }) => id)
        expect(new Set(selection).size).toBe(selection.length)
        for (const id of selection) expect(ids).toContain(id)
        if (active !== null) expect(ids).toContain(active)
      }),
      { seed: 20260721, numRuns: 300 },
    )
  })
})
