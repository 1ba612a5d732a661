import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { type Session, SessionContext } from '../../renderer/app/session'
import { SelectionPanel } from '../../renderer/slab/chosen/SelectionPanel'
import type { Id } from '../../shared/document/primitives'
import { TestEditor } from '../editor/testEditor'

/** What is said and offered in the panel of what is chosen. */
function panelOf({ store, view, site }: TestEditor, selection: readonly Id[]): string {
  const state = { ...view.getState(), selection }
  const session = { site: store, view: { ...view, getState: () => state, getInitialState: () => state } }
  const panel = createElement(SelectionPanel, { site })
  return renderToString(createElement(SessionContext.Provider, { value: session as unknown as Session }, panel))
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

describe('the panel of what is chosen', () => {
  // A browser that keeps its clipboard to itself.
  beforeAll(() => {
    vi.stubGlobal('navigator', {})
  })
  afterAll(() => {
    vi.unstubAllGlobals()
  })
  const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')
  hand.choose('border', { strip: 'border' }).click([2, 0]).key('Enter')
  hand.choose('tree').type('60', '5')
  const [slab] = hand.site.slabs
  const [tree] = hand.site.casters

  it('offers no copy of what follows an edge and is nothing without it', () => {
    expect(panelOf(hand, [slab!.id])).toContain('Copy beside')
    const border = panelOf(hand, [slab!.borders[0]!.id])
    expect(border).toContain('Delete')
    expect(border).not.toContain('Copy')
  })

  it('has fields that move several things together', () => {
    expect(panelOf(hand, [slab!.id])).not.toContain('Move all of them by')
    expect(panelOf(hand, [slab!.id, tree!.id])).toContain('2 chosen Move all of them by Right Up')
  })

  it('places a circle by its middle, another shape by its first corner', () => {
    const planter = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')
    planter.choose('opening', { inSlab: 'planter', form: 'circle' }).click([6, 3]).type('2')
    const [patio] = planter.site.slabs
    expect(panelOf(planter, [patio!.openings[0]!.id])).toContain('Middle, from corner A of Patio')
    planter.choose('opening', { inSlab: 'pool', form: 'rectangle' }).click([1, 1]).type('6', '4')
    expect(panelOf(planter, [planter.site.slabs[0]!.openings[1]!.id])).toContain('Corner A, from corner A of Patio')
  })
})
