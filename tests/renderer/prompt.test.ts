import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { createMemo } from '../../core/plan/memo'
import { type Session, SessionContext } from '../../renderer/app/session'
import { Prompt } from '../../renderer/editor/Prompt'
import { deriveLive } from '../../renderer/store/livePlan'
import type { Site } from '../../shared/document/site'
import { TestEditor } from '../editor/testEditor'
import { planOf } from '../plan/sampleSite'

/** What stands over the plan while one thing is chosen. */
function said(site: Site, chosen: string): string {
  const { problems } = planOf(site)
  const view = { stage: 'slab', clientView: false, selection: [chosen] }
  const store = <T>(state: T) => ({ getState: () => state, getInitialState: () => state, subscribe: () => () => {} })
  const hand = new TestEditor(site)
  const session = { site: hand.store, view: { ...hand.view, ...store(view) }, calmPlan: store({ parts: { problems } }) }
  const prompt = createElement(Prompt, { live: deriveLive(site, '2026-07-21', createMemo()) })
  return renderToString(createElement(SessionContext.Provider, { value: session as unknown as Session }, prompt))
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

const patio = () => new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')

describe('over the plan it is said what is amiss with the chosen thing', () => {
  it('where two slabs claim the same ground', () => {
    const hand = patio().choose('slab', { form: 'rectangle' }).type('30', '10').type('20', '10')
    const [first, second] = hand.site.slabs.map(({ id }) => id)
    expect(said(hand.site, second!)).toBe('Patio 2 and Patio share 100 ft² of ground: that concrete is counted twice.')
    expect(said(hand.site, first!)).toBe('')
  })

  it('where an opening of the chosen slab leaves no concrete beside it', () => {
    const hand = patio().choose('opening', { form: 'rectangle' }).type('34', '4').type('6', '6')
    const words = 'The planter touches the slab'
    expect(said(hand.site, hand.site.slabs[0]!.id)).toContain(words)
    expect(said(hand.site, hand.site.slabs[0]!.openings[0]!.id)).toContain(words)
  })

  it('where a required joint lies off its slab', () => {
    const hand = patio().choose('joint').type('60', '0').type('24', 'up').key('Enter')
    expect(said(hand.site, hand.site.wishes[0]!.id)).toBe(
      'A required joint does not cross the slab: it divides nothing.',
    )
    const across = patio().choose('joint').type('20', '0').type('24', 'up').key('Enter')
    expect(said(across.site, across.site.wishes[0]!.id)).toBe('')
  })
})
