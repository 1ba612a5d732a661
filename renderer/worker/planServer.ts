/** The worker's side of the protocol, without the worker: messages in, messages out. */
import { applyPatches, enablePatches, type Patch } from 'immer'
import type { ScreenParts, ScreenRequest, ScreenStep } from '../../core/plan/deriveScreen'
import type { Site } from '../../shared/document/site'
import type { Problem, Result } from '../../shared/problem'
import { type FromWorker, type PartName, ToWorker } from './protocol'

enablePatches()

export type Derivation = Generator<ScreenStep, Result<ScreenParts, readonly Problem[]>>

export interface PlanServerOf {
  readonly post: (message: FromWorker) => void
  /** Calls back when messages that wait have been let in. */
  readonly later: (work: () => void) => void
  readonly derive: (site: Site, asked: ScreenRequest) => Derivation
  /** Milliseconds of a clock that only goes forward. */
  readonly now: () => number
}

/** Work goes on for this long before messages are let in. */
const sliceMs = 8
/** How far it is, is told no more often: every telling draws on the page. */
const tellMs = 100

interface Replica {
  readonly rev: number
  readonly site: Site
}

type Want = Extract<ToWorker, { kind: 'want' }>

/** Takes raw messages; a message that is none of the protocol is a bug of ours and throws. */
export function createPlanServer({ post, later, derive, now }: PlanServerOf): (raw: unknown) => void {
  let committed: Replica | null = null
  let preview: Replica | null = null
  let want: Want | null = null
  let running: { want: Want; steps: Derivation } | null = null
  let isQueued = false
  let toldMs = Number.NEGATIVE_INFINITY
  const sent = new Map<PartName, unknown>()

  const queue = () => {
    if (isQueued) return
    isQueued = true
    later(work)
  }

  function sync(message: Extract<ToWorker, { kind: 'sync' }>): void {
    const { rev, baseRev, patches, whole } = message
    preview = null
    if (whole !== undefined) {
      committed = { rev, site: whole }
      return
    }
    if (committed === null || baseRev !== committed.rev || patches === undefined) {
      post({ kind: 'needWhole', rev })
      return
    }
    const site = applyPatches(committed.site, patches as Patch[])
    if (message.preview) preview = { rev, site }
    else committed = { rev, site }
  }

  /** Sends what is ready and differs from what the page has. */
  function send(rev: number, names: readonly PartName[], ready: Partial<ScreenParts>): void {
    for (const name of names) {
      const value = ready[name]
      if (value === undefined || (sent.has(name) && sent.get(name) === value)) continue
      post({ kind: 'part', rev, name, entityId: 'site', value })
      sent.set(name, value)
    }
  }

  function start(asked: Want): void {
    running = null
    const replica = [preview, committed].find(each => each?.rev === asked.rev)
    // A want that is behind the replica is stale; one ahead of it waits for the document that was asked for.
    if (!replica) return
    const { date, stepMin, extras, other, otherPour, triedStart, budget } = asked
    const steps = derive(replica.site, {
      date,
      extras,
      other,
      otherPour,
      triedStart,
      budget,
      ...(stepMin === undefined ? {} : { stepMin }),
    })
    running = { want: asked, steps }
    post({ kind: 'progress', rev: asked.rev, doing: 'areas', share: 0 })
  }

  function work(): void {
    isQueued = false
    const asked = want
    want = null
    try {
      // A newer want changes what is asked or what it is asked of: the work on the older one is dropped.
      if (asked !== null) start(asked)
      if (running === null) return
      const { want: own, steps } = running
      let reached: ScreenStep | null = null
      for (const begin = now(); now() - begin < sliceMs; ) {
        const step = steps.next()
        if (step.done) {
          const parts: Partial<ScreenParts> = step.value.ok ? step.value.value : { problems: step.value.error }
          const names = own.parts.filter(name => parts[name] !== undefined)
          send(own.rev, names, parts)
          running = null
          post({ kind: 'settled', rev: own.rev, names, budget: own.budget })
          return
        }
        send(own.rev, own.parts, step.value.ready)
        reached = step.value
      }
      if (reached !== null && now() - toldMs >= tellMs) {
        toldMs = now()
        post({ kind: 'progress', rev: own.rev, doing: reached.doing, share: reached.share })
      }
      queue()
    } catch (error) {
      const rev = (running ?? { want: asked }).want?.rev ?? 0
      running = null
      post({ kind: 'failed', rev, message: error instanceof Error ? error.message : String(error) })
    }
  }

  return raw => {
    const message = ToWorker.parse(raw) as ToWorker
    if (message.kind === 'sync') sync(message)
    else if (message.kind === 'cancel') {
      want = null
      running = null
    } else {
      want = message
      queue()
    }
  }
}
