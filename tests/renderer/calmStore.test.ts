import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createStore } from 'zustand/vanilla'
import { busyFrames, calmMs, createCalmStore } from '../../renderer/store/calmStore'

const frameMs = 16
/** A change waits for the frame after its own, or for the pause since the last one shown, and for one without a move. */
const latestMs = calmMs + (busyFrames + 2) * frameMs

/** A clock moved by hand; timers ring in the order of their times, frames are drawn every `frameMs`. */
function bench() {
  let nowMs = 0
  const timers: { readonly atMs: number; readonly call: () => void }[] = []
  const source = createStore<{ readonly site: string; readonly n: number; readonly twice: number }>(() => ({
    site: 'a',
    n: 0,
    twice: 0,
  }))
  const calm = createCalmStore(source, {
    setTimer: (call, ms) => timers.push({ atMs: nowMs + ms, call }),
    afterFrame: call => timers.push({ atMs: Math.ceil(nowMs / frameMs) * frameMs + 1, call }),
    inNextFrame: call => timers.push({ atMs: (Math.floor(nowMs / frameMs) + 1) * frameMs, call }),
  })
  const shownAt: number[] = []
  calm.subscribe(() => shownAt.push(nowMs))
  return {
    source,
    calm,
    shownAt,
    timers,
    now: () => nowMs,
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
  it('shows a single change in the frame after its own, and sets no timer that rings for ever', () => {
    const { source, calm, pass, timers } = bench()
    for (const n of [1, 2]) {
      source.setState({ n, twice: 2 * n })
      expect(calm.getState().n).toBe(n - 1)
      pass(2 * frameMs)
      expect(calm.getState()).toBe(source.getState())
      pass(2 * calmMs)
      expect(timers).toEqual([])
    }
  })

  it('shows another document at once', () => {
    const { source, calm, pass } = bench()
    source.setState({ site: 'b', n: 1, twice: 2 })
    calm.catchUp()
    expect(calm.getState()).toBe(source.getState())
    source.setState({ n: 2, twice: 4 })
    source.setState({ site: 'c' })
    calm.catchUp()
    expect(calm.getState()).toBe(source.getState())
    pass(latestMs)
    expect(calm.getState()).toBe(source.getState())
  })

  it('waits for a frame without a move, but not for ever', () => {
    const { source, shownAt, pass, now } = bench()
    pass(frameMs / 2)
    const move = () => source.setState(({ n }) => ({ n: n + 1, twice: 2 * (n + 1) }))
    // Every second frame carries none.
    for (let i = 0; i < 40; i++) {
      pass(frameMs)
      if (i % 2 === 0) move()
    }
    expect(shownAt.length).toBeGreaterThan(4)
    for (const atMs of shownAt) expect((atMs / frameMs) % 2).toBe(1)
    const free = shownAt.length
    const fromMs = now()
    for (let i = 0; i < 40; i++) {
      move()
      pass(frameMs)
    }
    expect(shownAt.length - free).toBeGreaterThanOrEqual(Math.floor((now() - fromMs) / latestMs))
  })

  it('takes the first frame without a move, whatever came before that frame', () => {
    const { source, shownAt, pass } = bench()
    const move = () => source.setState(({ n }) => ({ n: n + 1, twice: 2 * (n + 1) }))
    move()
    pass(2 * frameMs)
    move()
    const lookedMs = shownAt[0]! + calmMs
    pass(lookedMs + 1 - 2 * frameMs)
    move()
    pass(3 * frameMs)
    expect(shownAt[1]).toBe((Math.ceil(lookedMs / frameMs) + 1) * frameMs)
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
        pass(latestMs)
        expect(calm.getState()).toBe(source.getState())
        shownAt.slice(1).forEach((atMs, i) => {
          expect(atMs - shownAt[i]!).toBeGreaterThanOrEqual(calmMs)
        })
      }),
      { seed: 41, numRuns: 200 },
    )
  })
})
