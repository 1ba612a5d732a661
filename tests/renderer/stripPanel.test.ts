import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { changeBorder } from '../../core/document/commands/changeEntity'
import { addBorder } from '../../core/document/commands/slabParts'
import { type Session, SessionContext } from '../../renderer/app/session'
import { StripPanel } from '../../renderer/slab/chosen/StripPanel'
import type { Site } from '../../shared/document/site'
import { TestEditor } from '../editor/testEditor'

const done = (result: ReturnType<ReturnType<typeof addBorder>>): Site => {
  if (!result.ok) throw new Error('refused')
  return result.value
}

/** The summary of the edges, and each edge with whether it is ticked. */
function edgesTold({ store, view }: TestEditor, site: Site): readonly string[] {
  const owner = site.slabs[0]!
  const panel = createElement(StripPanel, {
    site,
    strip: { kind: 'border', row: owner.borders[0]!, list: owner.borders, owner },
  })
  const html = renderToString(
    createElement(SessionContext.Provider, { value: { site: store, view } as Session }, panel),
  ).replaceAll('<!-- -->', '')
  return [
    /<summary>(Runs along.*?)<\/summary>/.exec(html)![1]!,
    ...[...html.matchAll(/type="checkbox"( checked="")?\/>(edge \w to \w)/g)].map(
      ([, ticked, words]) => `${words}${ticked ? ' ✓' : ''}`,
    ),
  ]
}

describe('the edges of a border', () => {
  it('are listed in its form, ticked where it runs', () => {
    const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')
    const [slab] = hand.site.slabs
    const { id, outline } = slab!
    const border = { pathId: outline.id, widthM: 0.3, finishId: slab!.finishId, placed: 'withField' } as const
    const all = done(addBorder(id, { ...border, edges: 'all' })(hand.site))
    expect(edgesTold(hand, all)).toEqual([
      'Runs along all 4 edges',
      'edge A to B ✓',
      'edge B to C ✓',
      'edge C to D ✓',
      'edge D to A ✓',
    ])
    const two = [outline.edges[1]!.id, outline.edges[3]!.id]
    expect(edgesTold(hand, done(changeBorder(all.slabs[0]!.borders[0]!.id, { edges: two })(all)))).toEqual([
      'Runs along 2 of 4 edges',
      'edge A to B',
      'edge B to C ✓',
      'edge C to D',
      'edge D to A ✓',
    ])
  })
})
