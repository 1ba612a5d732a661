import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { deriveScreen } from '../../core/plan/deriveScreen'
import { createMemo } from '../../core/plan/memo'
import { createPlanClient, type PlanAsk, type PlanState } from '../../renderer/worker/planClient'
import { createPlanServer, type PlanServerOf } from '../../renderer/worker/planServer'
import type { FromWorker, ToWorker } from '../../renderer/worker/protocol'
import { lPatio } from '../../samples/sites/lPatio'
import { Site } from '../../shared/document/site'

const ask: PlanAsk = { date: '2026-07-21', focus: null, extras: [] }

const deriveWith = (memo = createMemo()): PlanServerOf['derive'] => {
  const otherMemo = createMemo()
  return (site, asked) => deriveScreen(site, asked, memo, otherMemo)
}

/** Page and worker in one process: messages are cloned as they would be, and wait until they are let through. */
function bench(derive: PlanServerOf['derive'] = deriveWith(), now: () => number = () => 0) {
  const states: PlanState[] = []
  const toPage: { from: number; message: FromWorker }[] = []
  const toWorker: ToWorker[] = []
  const timers: { call: () => void; ms: number }[] = []
  let work: (() => void)[] = []
  let receive: (raw: unknown) => void = () => {}
  let crash: (message: string) => void = () => {}
  let started = 0
  let undrawn: (() => void)[] | null = null
  const client = createPlanClient({
    startWorker: (onMessage, onCrash) => {
      started += 1
      const number = started
      crash = onCrash
      const server = createPlanServer({
        post: message => toPage.push({ from: number, message: structuredClone(message) }),
        later: job => work.push(job),
        derive,
        now,
      })
      receive = raw => {
        if (number === started) onMessage(raw)
      }
      return {
        post: message => {
          toWorker.push(structuredClone(message))
          server(structuredClone(message))
        },
        stop: () => {
          work = []
          toPage.length = 0
        },
      }
    },
    setTimer: (call, ms) => {
      const timer = { call, ms }
      timers.push(timer)
      return timer
    },
    clearTimer: timer => {
      timers.splice(timers.indexOf(timer as never), 1)
    },
    afterFrame: call => {
      if (undrawn) undrawn.push(call)
      else call()
    },
    onChange: state => states.push(state),
  })
  return {
    /** From here on frames are drawn by `drawFrame` alone; else each is drawn at once. */
    holdFrames: () => {
      undrawn = []
    },
    drawFrame: () => {
      for (const call of undrawn?.splice(0) ?? []) call()
    },
    client,
    toWorker,
    timers,
    started: () => started,
    crash: (message: string) => crash(message),
    state: () => states.at(-1)!,
    states,
    restHand: () => {
      const [timer] = timers.splice(
        timers.findIndex(({ ms }) => ms === 60),
        1,
      )
      timer?.call()
    },
    runWorker: () => {
      const jobs = work
      work = []
      for (const job of jobs) job()
    },
    deliver: () => {
      for (const { message } of toPage.splice(0)) receive(message)
    },
  }
}

const renamed = (site: Site, name: string): Site => ({ ...site, name })

describe('the plan of a document', () => {
  it('comes in parts that equal what is derived in process', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    expect(b.state().isRenewing).toBe(true)
    b.runWorker()
    b.deliver()
    const plan = derivePlan(site, ask)
    if (!plan.ok) throw new Error('no plan')
    expect(b.state().isRenewing).toBe(false)
    expect(b.state().parts.quantities).toEqual(plan.value.quantities)
    expect(b.state().parts.pours).toEqual(plan.value.pours)
    expect(b.state().parts.shade).toEqual(plan.value.shade)
  })

  it('is asked for once the change is drawn: of several in one frame the last, of stopped work nothing', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.holdFrames()
    const asked = b.toWorker.length
    b.client.update(renamed(site, 'First'), ask, false)
    b.client.update(renamed(site, 'Second'), ask, false)
    expect(b.toWorker.length).toBe(asked)
    expect(b.state()).toMatchObject({ rev: 3, isRenewing: true })
    b.drawFrame()
    expect(b.toWorker.slice(asked).map(({ kind }) => kind)).toEqual(['sync', 'want'])
    expect(b.toWorker.at(-1)).toMatchObject({ rev: 3 })
    b.client.update(renamed(site, 'Third'), ask, false)
    b.client.cancel()
    b.drawFrame()
    expect(b.toWorker.at(-1)?.kind).toBe('cancel')
  })

  it('is sent whole once, then by patches on the last committed revision', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.client.update(renamed(site, 'B'), ask, false)
    b.client.update(renamed(site, 'C'), ask, true)
    b.client.update(renamed(site, 'D'), ask, true)
    b.restHand()
    const syncs = b.toWorker.filter(m => m.kind === 'sync')
    expect(syncs.map(m => [m.baseRev, m.preview, m.whole !== undefined])).toEqual([
      [null, false, true],
      [1, false, false],
      [2, true, false],
      [2, true, false],
    ])
    expect(syncs[3]?.patches).toEqual([{ op: 'replace', path: ['name'], value: 'D' }])
  })

  it('is not asked for while a hand moves, and is once it rests or lets go', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    const asked = () => b.toWorker.filter(m => m.kind === 'want').length
    for (const name of ['B', 'C', 'D']) b.client.update(renamed(site, name), ask, true)
    expect(asked()).toBe(2)
    expect(b.timers.map(({ ms }) => ms)).toEqual([60])
    expect(b.state().isRenewing).toBe(true)
    b.runWorker()
    b.deliver()
    expect(b.state().isRenewing).toBe(true)
    b.restHand()
    expect(asked()).toBe(3)
    b.client.update(renamed(site, 'E'), ask, true)
    b.client.update(renamed(site, 'E'), ask, false)
    expect(asked()).toBe(4)
    expect(b.timers.some(({ ms }) => ms === 60)).toBe(false)
  })

  it('of an older revision is never shown', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.client.update({ ...site, casters: [] }, ask, false)
    b.deliver()
    expect(b.state().parts).toEqual({})
    expect(b.state().isRenewing).toBe(true)
    b.runWorker()
    b.deliver()
    const plan = derivePlan({ ...site, casters: [] }, ask)
    expect(plan.ok && b.state().parts.shade).toEqual(plan.ok && plan.value.shade)
    expect(b.state().isRenewing).toBe(false)
  })

  it('sends a part again only when it changed', () => {
    const site = lPatio()
    const memo = createMemo()
    const b = bench(deriveWith(memo))
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    const { day } = b.state().parts
    b.client.update(renamed(site, 'B'), ask, false)
    b.runWorker()
    b.deliver()
    expect(b.state().parts.day).toBe(day)
    expect(b.state().revs.day).toBe(2)
  })

  it('stops between two steps when a newer one is asked for, and tells how far it is', () => {
    const site = lPatio()
    let ms = 0
    // Every look at the clock finds a slice over: one step at a time.
    const b = bench(deriveWith(), () => (ms += 5))
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    expect(b.state().progress?.share).toBeGreaterThanOrEqual(0)
    expect(b.state().isRenewing).toBe(true)
    b.client.update({ ...site, casters: [] }, ask, false)
    for (let i = 0; i < 200 && b.state().isRenewing; i++) {
      b.runWorker()
      b.deliver()
    }
    const plan = derivePlan({ ...site, casters: [] }, ask)
    expect(plan.ok && b.state().parts.shade).toEqual(plan.ok && plan.value.shade)
    expect(b.state().progress).toBeNull()
  })

  it('is looked for in earnest a quarter of a second after a gesture', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    const moved = { ...site, capacity: { capM2: 50 } }
    b.client.update(moved, ask, true)
    b.client.update(moved, ask, false)
    const budgets = () => b.toWorker.flatMap(m => (m.kind === 'want' ? [m.budget] : []))
    expect(budgets()).toEqual(['full', 'small', 'small'])
    b.runWorker()
    b.deliver()
    expect(b.state().isRenewing).toBe(true)
    const rest = b.timers.find(t => t.ms === 250)!
    b.timers.splice(b.timers.indexOf(rest), 1)
    rest.call()
    expect(budgets()).toEqual(['full', 'small', 'small', 'full'])
    b.runWorker()
    b.deliver()
    expect(b.state().isRenewing).toBe(false)
    const plan = derivePlan(moved, ask)
    expect(plan.ok && b.state().parts.pours).toEqual(plan.ok && plan.value.pours)
  })

  it('that is stopped stays as far as it is, and goes on when asked', () => {
    let ms = 0
    const b = bench(deriveWith(), () => (ms += 5))
    b.client.update(lPatio(), ask, false)
    b.runWorker()
    b.deliver()
    b.client.cancel()
    b.runWorker()
    b.deliver()
    expect(b.state()).toMatchObject({ isRenewing: false, isStopped: true, progress: null })
    expect(b.timers).toEqual([])
    b.client.goOn()
    for (let i = 0; i < 200 && b.state().isRenewing; i++) {
      b.runWorker()
      b.deliver()
    }
    expect(b.state().isStopped).toBe(false)
    expect(b.state().parts.quantities?.length).toBeGreaterThan(0)
  })

  it('brings the extras asked for: sun hours by cell, other splits, another day', () => {
    const b = bench()
    const other = { date: '2026-12-21', leaves: 'off' } as const
    b.client.update(lPatio(), { ...ask, extras: ['sunMaps', 'proposals'], other }, false)
    b.runWorker()
    b.deliver()
    const { sunMaps, offers, compared, shadeLines, pours } = b.state().parts
    expect(sunMaps?.[0]?.minutes.length).toBe(sunMaps?.[0]?.weights.length)
    expect(offers?.map(({ proposal }) => proposal.pours.length)).toEqual([pours!.length, pours!.length + 1])
    expect(shadeLines?.map(({ slabId }) => slabId)).toEqual(lPatio().slabs.map(({ id }) => id))
    expect(compared).toMatchObject(other)
  })

  it('of a site with crew and weather can be sent, day plans and all', () => {
    const site = Site.parse(JSON.parse(readFileSync('samples/l-patio-accepted.slabwright.json', 'utf8')))
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    expect(b.state().failure).toBeNull()
    expect(b.state().parts.dayPlans?.length).toBe(b.state().parts.pours?.length)
  })

  it('of a dropped gesture gives way to that of the committed document', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    const before = b.state().parts.quantities
    b.client.update({ ...site, units: 'metric' }, ask, true)
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    expect(b.state().parts.quantities).toEqual(before)
    b.timers
      .splice(0)
      .find(t => t.ms === 250)!
      .call()
    b.runWorker()
    b.deliver()
    expect(b.state().parts.quantities).toEqual(before)
    expect(b.state().isRenewing).toBe(false)
  })
})

describe('a worker', () => {
  it('that crashes is started again from the whole document', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.crash('out of memory')
    expect(b.started()).toBe(2)
    b.runWorker()
    b.deliver()
    expect(b.state().parts.pours?.length).toBeGreaterThan(0)
    expect(b.state().failure).toBeNull()
  })

  it('silent for ten seconds is started again, and its last parts stay on screen', () => {
    const site = lPatio()
    const b = bench()
    b.client.update(site, ask, false)
    b.runWorker()
    b.deliver()
    const { pours } = b.state().parts
    b.client.update(renamed(site, 'B'), ask, false)
    expect(b.timers.map(t => t.ms)).toEqual([10_000])
    b.timers[0]!.call()
    expect(b.started()).toBe(2)
    expect(b.state().parts.pours).toBe(pours)
    expect(b.state().isRenewing).toBe(true)
    b.runWorker()
    b.deliver()
    expect(b.state().isRenewing).toBe(false)
  })

  it('that has nothing to do is not watched', () => {
    const b = bench()
    b.client.update(lPatio(), ask, false)
    b.runWorker()
    b.deliver()
    expect(b.timers).toEqual([])
  })

  it('that throws on the same document twice is not asked a third time; the next edit asks again', () => {
    const site = lPatio()
    let isBroken = true
    const b = bench((each, asked) => {
      if (isBroken) throw new Error('broken')
      return deriveWith()(each, asked)
    })
    b.client.update(site, ask, false)
    for (let i = 0; i < 4; i++) {
      b.runWorker()
      b.deliver()
    }
    expect(b.state().failure).toBe('broken')
    expect(b.state().isRenewing).toBe(false)
    isBroken = false
    b.client.update(renamed(site, 'B'), ask, false)
    b.runWorker()
    b.deliver()
    expect(b.state().failure).toBeNull()
    expect(b.state().parts.pours?.length).toBeGreaterThan(0)
  })

  it('that failed is asked again when the user says so', () => {
    let isBroken = true
    const b = bench((each, asked) => {
      if (isBroken) throw new Error('broken')
      return deriveWith()(each, asked)
    })
    b.client.update(lPatio(), ask, false)
    for (let i = 0; i < 4; i++) {
      b.runWorker()
      b.deliver()
    }
    expect(b.state().failure).toBe('broken')
    isBroken = false
    b.client.goOn()
    expect(b.state()).toMatchObject({ failure: null, isRenewing: true })
    b.runWorker()
    b.deliver()
    expect(b.state().parts.pours?.length).toBeGreaterThan(0)
  })

  it('asks for the whole document where it does not know the base', () => {
    const posted: FromWorker[] = []
    const receive = createPlanServer({
      post: message => posted.push(message),
      later: () => {},
      derive: deriveWith(),
      now: () => 0,
    })
    receive({ kind: 'sync', rev: 4, baseRev: 3, preview: false, patches: [] })
    expect(posted).toEqual([{ kind: 'needWhole', rev: 4 }])
  })

  it('throws on a message that is none of the protocol', () => {
    const receive = createPlanServer({
      post: () => {},
      later: () => {},
      derive: deriveWith(),
      now: () => 0,
    })
    expect(() => receive({ kind: 'hello' })).toThrow()
    expect(() => receive({ kind: 'sync', rev: 1, baseRev: null, preview: false, whole: { name: 1 } })).toThrow()
  })
})
