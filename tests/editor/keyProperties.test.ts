/** Any keys in any order, over every drawing action: what is on the plan stays whole, and nobody is left stuck. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { invariants } from '../../core/document/invariants'
import { serializeSite } from '../../core/document/serializeSite'
import {
  type ActionId,
  actionIds,
  furnitureKinds,
  type Options,
  obstacleKinds,
  openingKinds,
} from '../../renderer/editor/actions/actions'
import { promptWords } from '../../renderer/editor/promptWords'
import type { Pt } from '../../shared/document/primitives'
import { mulberry32 } from '../geometry/mulberry32'
import { TestEditor } from './testEditor'

const keysOf = <K extends string>(record: Readonly<Record<K, unknown>>) => Object.keys(record) as K[]

/** All that can be chosen of what is drawn next. */
const choices = {
  form: ['corners', 'rectangle', 'base', 'circle', 'freehand'],
  edge: ['straight', 'arc'],
  inSlab: [...keysOf(openingKinds), ...keysOf(obstacleKinds)],
  pool: ['cantilevered', 'setCoping', 'existing'],
  strip: ['border', 'band', 'inset'],
  placed: ['withField', 'before', 'after', 'sawnLater'],
  stories: [1, 2, null],
  roof: ['flat', 'gable', 'hip'],
  density: ['open', 'medium', 'dense'],
  light: ['none', 'half', 'most'],
  evergreen: [true, false],
  wish: ['required', 'forbiddenLine', 'forbiddenArea', 'direction'],
  access: ['truck', 'pump', 'washout', 'noGo', 'way'],
  tape: ['tie', 'dimension'],
  furniture: ['chair', 'lounge', 'table', 'roundTable', 'grill', 'car'],
  noteKind: ['note', 'sunPoint'],
} as const satisfies { readonly [K in keyof Options]?: readonly Options[K][] }

const wordsOf = (record: Readonly<Record<string, string>>) => Object.values(record).map(word => word.toLowerCase())

/** The steps of undo that each action comes to. */
const steps: Readonly<Record<Exclude<ActionId, 'select'>, readonly string[]>> = {
  slab: ['slab'],
  opening: [...wordsOf(openingKinds), ...wordsOf(obstacleKinds)],
  border: ['border', 'band', 'inset'],
  building: ['building'],
  fence: ['fence'],
  tree: ['tree'],
  cover: ['cover'],
  tape: ['tape dimension'],
  joint: ['joint line', 'line without joints', 'area without joints', 'direction of the joints'],
  access: ['truck spot', 'pump spot', 'washout', 'area to keep off', 'way in and out'],
  furniture: wordsOf(furnitureKinds),
  note: ['note', 'marked point'],
}

/** What a hand types into two boxes: measures, ways to go, slips. */
const entries = [
  ['4', '2'],
  ['6', '5'],
  ['3', '90'],
  [`2' 6"`, '-90'],
  ['5', 'up'],
  ['8', 'right'],
  ['', '3'],
  ['-3', '\u22122'],
  ['1/2"', '45 left'],
  ['0', '4'],
  ['12', 'N 10 E'],
  ['nonsense', ''],
] as const

const ways: readonly Pt[] = [
  [0.3048, 0],
  [0, 0.3048],
  [-0.3048, 0],
  [0, -0.3048],
]

/** What the page makes of a key, wherever the focus is. */
function press({ editor, store }: TestEditor, key: string): void {
  if (editor.key(key)) return
  const { drawing, action } = editor.getState()
  if (key === 'Escape') editor.escape()
  else if (key === 'Enter') {
    if (drawing || action !== 'select') editor.enter()
  } else if (key === 'Backspace') {
    if (!editor.back()) editor.remove()
  } else if (key === 'undo') {
    if (!editor.back()) store.undo()
  } else if (key === 'redo') store.redo()
}

function enter(hand: TestEditor, texts: readonly string[]): void {
  for (const text of texts) {
    for (const key of text) press(hand, key)
    press(hand, 'Tab')
  }
  press(hand, 'Enter')
}

/** One thing that hands on the keys might do next. */
function act(hand: TestEditor, random: () => number): void {
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const { editor, site, view } = hand
  const { slabs, casters, access, furnishings = [], notes = [], tapes = [], wishes, points } = site
  const parts = slabs.flatMap(slab => [...slab.openings, ...slab.borders, ...slab.bands, ...slab.insets])
  const rows = [...slabs, ...parts, ...casters, ...wishes, ...points, ...furnishings, ...notes, ...tapes]
  const things = [...rows, ...(access?.ways ?? []), ...(access?.noGo ?? []), ...(access?.truckSpots ?? [])]
  const paths = slabs.flatMap(({ outline, openings }) => [outline, ...openings.map(({ path }) => path)])
  const { drawing, action } = hand.state
  switch (Math.floor(random() * 13)) {
    case 0:
    case 1: {
      hand.choose(one(actionIds))
      const names = keysOf(choices).filter(() => random() < 0.4)
      editor.setOptions(Object.fromEntries(names.map(name => [name, one<unknown>(choices[name])])))
      for (let i = 0; i < 2 + 3 * random(); i++) enter(hand, one(entries))
      if (hand.state.fault) press(hand, 'Escape')
      press(hand, 'Enter')
      break
    }
    case 2:
    case 3:
    case 4:
    case 5:
      enter(hand, one(entries))
      break
    case 6:
    case 7:
      for (let i = 0; i < 4; i++) {
        if (drawing) editor.carry(one(ways), [2, 2])
        else editor.nudge(one(ways))
      }
      press(hand, 'Enter')
      break
    case 8:
      press(hand, one(['Enter', 'Escape', 'Backspace', 'Backspace', 'Tab']))
      break
    case 9:
      press(hand, one(['undo', 'undo', 'redo']))
      break
    case 10:
      if (action === 'border') editor.chooseEdges(paths.length > 0 ? one(paths).edges.map(({ id }) => id) : [])
      else view.setState({ selection: things.length > 0 ? [one(things).id] : [] })
      break
    case 11:
      editor.copy()
      editor.paste()
      break
    case 12:
      editor.setOptions({ edge: one(choices.edge) })
  }
}

/** What holds after every key. */
function expectSound({ site, state, store, shown }: TestEditor): void {
  expect(invariants(site)).toEqual([])
  const { action, picking, drawing, box, typed: inBoxes, fault } = state
  // Whoever has something in hand is told what comes next.
  if (action !== 'select' || picking) expect(promptWords(state)).not.toBe('')
  if (fault) expect(fault.message).not.toBe('')
  // Keys never go to a box that is not there, and nothing typed is kept for one.
  const fields = drawing?.fields.map(({ id }) => id) ?? []
  if (box !== null) expect(fields.length).toBeGreaterThan(box)
  for (const id of Object.keys(inBoxes)) expect(fields).toContain(id)
  // The plan shows what is in hand or what is kept, never what was let go.
  if (!drawing && state.edges.length === 0) expect(store.getState().preview).toBeNull()
  else if (shown !== site) expect(invariants(shown)).toEqual([])
}

describe('whatever keys are pressed', () => {
  it('the site stays whole, Esc leads out of everything, undo to the empty sheet and redo to the very same site', () => {
    const made = new Set<string>()
    fc.assert(
      fc.property(fc.integer(), seed => {
        const random = mulberry32(seed)
        const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('24', '14')
        for (let i = 0; i < 30; i++) {
          act(hand, random)
          expectSound(hand)
          for (const { name } of hand.store.getState().history!.steps.slice(1)) made.add(name)
        }
        // What is typed, what is drawn, the action, the choice: four times at most.
        for (let i = 0; i < 4; i++) press(hand, 'Escape')
        expect(hand.state).toMatchObject({ action: 'select', drawing: null, picking: null, edges: [], box: null })
        expect(hand.selection).toEqual([])
        const { steps: kept, at } = hand.store.getState().history!
        for (let i = at; i < kept.length; i++) hand.store.redo()
        const last = hand.site
        const text = serializeSite(last)
        for (const _ of kept) hand.store.undo()
        expect(hand.site.slabs).toHaveLength(0)
        expect(hand.store.getState().history!.at).toBe(0)
        for (const _ of kept) hand.store.redo()
        expect(hand.site).toBe(last)
        expect(serializeSite(hand.site)).toBe(text)
      }),
      { seed: 7, numRuns: 60 },
    )
    // Hands that make little would prove little: every action has come to something.
    for (const names of Object.values(steps))
      expect(
        names.some(name => made.has(name)),
        names.join(),
      ).toBe(true)
  })
})
