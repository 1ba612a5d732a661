import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { type Session, SessionContext } from '../../renderer/app/session'
import { EdgePanel } from '../../renderer/slab/chosen/EdgePanel'
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { TestEditor } from '../editor/testEditor'

/** What is chosen in the box about the side of an arc, with its label. */
function bulgeWords({ store, view }: TestEditor, site: Site, edgeId: Id): string {
  const panel = createElement(EdgePanel, { site, edgeIds: [edgeId] })
  const value = { site: store, view } as Session
  const html = renderToString(createElement(SessionContext.Provider, { value }, panel))
  return /(?:An|From \w an) arc bulges.*?<\/select>/
    .exec(html)![0]
    .replace(/<option (?!value="\w+" selected)[^>]*>[^<]*<\/option>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

describe('the side an arc bulges to', () => {
  it('is told as out of its shape and into it, of an opening as of a slab', () => {
    const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')
    hand.choose('opening', { inSlab: 'pool', form: 'rectangle' }).type('10', '6').type('16', '10')
    const slab = hand.site.slabs[0]!
    for (const edge of [slab.outline.edges[0]!, slab.openings[0]!.path.edges[0]!]) {
      expect(bulgeWords(hand, hand.site, edge.id)).toBe('An arc bulges Out')
      for (const riseM of [0.3, -0.3]) {
        const bent = setEdgeRise(edge.id, riseM)(hand.site)
        if (!bent.ok) throw new Error('not bent')
        const [was, is] = [resolveSlab(slab), resolveSlab(bent.value.slabs[0]!)]
        const isOutline = edge === slab.outline.edges[0]
        const isLarger = isOutline ? is.netAreaM2 > was.netAreaM2 : is.netAreaM2 < was.netAreaM2
        expect(bulgeWords(hand, bent.value, edge.id)).toBe(`An arc bulges ${isLarger ? 'Out' : 'In'}`)
      }
    }
  })

  it('of a line with two ends is its right or its left', () => {
    const hand = new TestEditor().choose('slab', { form: 'rectangle' }).type('40', '24')
    hand.choose('border', { strip: 'band' }).type('0', '8').type('20', 'right').key('Enter')
    const [edge] = hand.site.slabs[0]!.bands[0]!.line.edges
    expect(bulgeWords(hand, hand.site, edge!.id)).toBe('From A an arc bulges To the right')
  })
})
