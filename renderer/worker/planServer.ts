/** The worker's side of the protocol, without the worker: messages in, messages out. */
import { applyPatches, enablePatches, type Patch } from 'immer'
import type { Plan } from '../../core/plan/plan'
import type { Site } from '../../shared/document/site'
import type { Problem, Result } from '../../shared/problem'
import { type FromWorker, type PartName, ToWorker } from './protocol'

enablePatches()

export interface Derivation {
  readonly date: string
  readonly stepMin?: number
}

export interface PlanServerOf {
  readonly post: (message: FromWorker) => void
  /** Calls back when messages that wait have been let in. */
  readonly later: (work: () => void) => void
  readonly derive: (site: Site, asked: Derivation) => Result<Plan>
}

interface Replica {
  readonly rev: number
  readonly site: Site
}

type Want = Extract<ToWorker, { kind: 'want' }>

/** Takes raw messages; a message that is none of the protocol is a bug of ours and throws. */
export function createPlanServer({ post, later, derive }: PlanServerOf): (raw: unknown) => void {
  let committed: Replica | null = null
  let preview: Replica | null = null
  let want: Want | null = null
  let isQueued = false
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

  function work(): void {
    isQueued = false
    const asked = want
    want = null
    if (asked === null) return
    const replica = [preview, committed].find(each => each?.rev === asked.rev)
    // A want that is behind the replica is stale; one ahead of it waits for the document that was asked for.
    if (!replica) return
    post({ kind: 'progress', rev: asked.rev, doing: 'plan', share: 0 })
    try {
      const plan = derive(replica.site, {
        date: asked.date,
        ...(asked.stepMin === undefined ? {} : { stepMin: asked.stepMin }),
      })
      const parts: Partial<Plan> = plan.ok ? plan.value : { problems: plan.error satisfies readonly Problem[] }
      const names = asked.parts.filter(name => parts[name] !== undefined)
      for (const name of names) {
        const value = parts[name]
        if (sent.has(name) && sent.get(name) === value) continue
        post({ kind: 'part', rev: asked.rev, name, entityId: 'site', value })
        sent.set(name, value)
      }
      post({ kind: 'settled', rev: asked.rev, names })
    } catch (error) {
      post({ kind: 'failed', rev: asked.rev, message: error instanceof Error ? error.message : String(error) })
    }
  }

  return raw => {
    const message = ToWorker.parse(raw) as ToWorker
    if (message.kind === 'sync') sync(message)
    else if (message.kind === 'cancel') want = null
    else {
      want = message
      queue()
    }
  }
}
