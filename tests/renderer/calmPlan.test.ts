import { describe, expect, it } from 'vitest'
import { createStore } from 'zustand/vanilla'
import { moveSelection } from '../../core/document/commands/moveSelection'
import { createMemo } from '../../core/plan/memo'
import { createCalmPlan } from '../../renderer/store/calmPlan'
import { deriveLive } from '../../renderer/store/livePlan'
import type { DerivedState } from '../../renderer/store/planStore'
import { createSiteStore, shownDocument } from '../../renderer/store/siteStore'
import { lPatio } from '../../samples/sites/lPatio'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'

const pushed = (document: Site): Site => {
  const result = moveSelection([document.slabs[0]!.id], [0.0254, 0])(document)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** A page whose next frame comes when it is asked for. */
function page() {
  const site = createSiteStore()
  const memo = createMemo()
  const plan = createStore(() => ({ live: null }) as unknown as DerivedState)
  site.subscribe(state => {
    const shown = shownDocument(state)
    const live = shown && deriveLive(shown, '2026-07-21', memo)
    if (live !== plan.getState().live) plan.setState({ live })
  })
  const waiting: (() => void)[] = []
  const later = (call: () => void) => waiting.push(call)
  const afterFrame = (call: () => void) => call()
  const calm = createCalmPlan(plan, site, { setTimer: later, afterFrame, inNextFrame: later })
  site.open(schoolCourt())
  return {
    site,
    isRead: () => calm.getState().live === plan.getState().live,
    nextFrame: () => {
      for (const call of waiting.splice(0)) call()
    },
  }
}

describe('what is read beside the plan', () => {
  it('waits for the frame after while a hand pushes or drags, and no longer', () => {
    const { site, isRead, nextFrame } = page()
    const moves = [
      () => site.push('move', pushed),
      () => site.push('move', pushed),
      () => site.show(pushed),
      () => site.show(document => pushed(pushed(document))),
    ]
    for (const move of moves) {
      nextFrame()
      nextFrame()
      move()
      expect(isRead()).toBe(false)
      nextFrame()
      expect(isRead()).toBe(true)
    }
  })

  it('stands with what was done at one stroke, whatever a hand did before it', () => {
    const { site, isRead } = page()
    const strokes = [
      () => site.apply('move', pushed),
      () => site.edit('name', draft => void (draft.name = 'Court again')),
      () => site.undo(),
      () => site.redo(),
      () => site.keep('move'),
      () => site.drop(),
      () => site.open(lPatio()),
      () => site.close(),
    ]
    for (const stroke of strokes) {
      site.show(pushed)
      stroke()
      expect(isRead()).toBe(true)
    }
  })
})
