import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createStore } from 'zustand/vanilla'
import { calmMs, createCalmStore } from '../../renderer/store/calmStore'

/** A clock moved by hand; timers ring in the order of their times. */
function bench() {
  let nowMs = 0
  const timers: { readonly atMs: number; readonly call: () => void }[] = []
  const source = createStore<{ readonly n: number; readonly twice: number }>(() => ({ n: 0, twice: 0 }))
  const calm = createCalmStore(source, { setTimer: (call, ms) => timers.push({ atMs: nowMs + ms, call }) })
  const shownAt: number[] = []
  calm.subscribe(() => shownAt.push(nowMs))
  return {
    source,
    calm,
    shownAt,
    timers,
    pass(ms: number) {
      const endMs = nowMs + ms
      for (;;) {
        const next = timers.filter(({ atMs }) => atMs <= endMs).sort((a, b) => a.atMs - b.atMs)[0]
        if (!next) break
        timers.splice(timers.indexOf(next), 1)
        nowMs = next.atMs
        next.call()
      }
      nowMs = endMs
    },
  }
}

describe('what is read beside the plan', () => {
  it('shows a single change at once, and sets no timer that rings for ever', () => {
    const { source, calm, pass, timers } = bench()
    source.setState({ n: 1, twice: 2 })
    expect(calm.getState()).toEqual({ n: 1, twice: 2 })
    pass(2 * calmMs)
    expect(timers).toEqual([])
    source.setState({ n: 2, twice: 4 })
    expect(calm.getState()).toEqual({ n: 2, twice: 4 })
  })

  it('is written at most once in a while however fast the hand moves, whole each time, exact once it rests', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 260 }), { minLength: 1, maxLength: 60 }), waits => {
        const { source, calm, shownAt, pass } = bench()
        waits.forEach((ms, i) => {
          pass(ms)
          source.setState({ n: i + 1, twice: 2 * (i + 1) })
          expect(calm.getState().twice).toBe(2 * calm.getState().n)
        })
        pass(calmMs)
        expect(calm.getState()).toBe(source.getState())
        shownAt.slice(1).forEach((atMs, i) => {
          expect(atMs - shownAt[i]!).toBeGreaterThanOrEqual(calmMs)
        })
      }),
      { seed: 41, numRuns: 200 },
    )
  })
})
