/** The page's side of the protocol: keeps the worker's copy in step, drops stale replies, restarts a worker that died. */
import type { OtherDay, OtherPour } from '../../core/plan/deriveScreen'
import type { TriedStart } from '../../core/plan/planDayPlans'
import type { ScreenExtra } from '../../core/plan/screenExtras'
import type { Site } from '../../shared/document/site'
import { patchesBetween } from './patchesBetween'
import { FromWorker, type PartName, type PartValue, partNames, type ToWorker } from './protocol'

/** A worker silent for this long while something is asked of it is given up. */
const silenceMs = 10_000
/** A revision whose plan made the worker throw this often is not asked for again. */
const attempts = 2
/** How long after a gesture the splits are looked for in earnest. */
const restMs = 250
/** While the hand moves faster than this nothing is asked: the answer would be behind it before it came. */
const handMs = 60

export interface WorkerHandle {
  post(message: ToWorker): void
  stop(): void
}

export interface PlanClientOf {
  readonly startWorker: (onMessage: (raw: unknown) => void, onCrash: (message: string) => void) => WorkerHandle
  readonly setTimer: (call: () => void, ms: number) => unknown
  readonly clearTimer: (timer: unknown) => void
  /** Calls once the frame that shows the change has been handed over. */
  readonly afterFrame: (call: () => void) => void
  readonly onChange: (state: PlanState) => void
}

export interface PlanState {
  readonly parts: { readonly [N in PartName]?: PartValue<N> }
  /** The revision each part is as of. */
  readonly revs: Readonly<Partial<Record<PartName, number>>>
  /** The revision on screen. */
  readonly rev: number
  /** Parts on screen are of an older revision and on their way. */
  readonly isRenewing: boolean
  /** What the worker is at, and how far; null when it rests. */
  readonly progress: { readonly doing: string; readonly share: number } | null
  /** The user stopped the work: what is on screen may be of an older revision until it goes on. */
  readonly isStopped: boolean
  /** Why the plan of this revision will not come. */
  readonly failure: string | null
}

export interface PlanAsk {
  readonly date: string
  readonly focus: string | null
  readonly stepMin?: number
  readonly extras: readonly ScreenExtra[]
  readonly other?: OtherDay | undefined
  readonly otherPour?: OtherPour | undefined
  readonly triedStart?: TriedStart | undefined
}

export interface PlanClient {
  /** The document on screen and what is asked of it. */
  update(site: Site, ask: PlanAsk, isPreview: boolean): void
  /** Forgets the site, its parts and the work on it. */
  reset(): void
  /** Stops the work on the plan; the next change starts it again. */
  cancel(): void
  /** Goes on after `cancel`, tries again after a failure. */
  goOn(): void
  stop(): void
}

const empty: PlanState = {
  parts: {},
  revs: {},
  rev: 0,
  isRenewing: false,
  progress: null,
  isStopped: false,
  failure: null,
}

const isSameAsk = (a: PlanAsk, b: PlanAsk): boolean =>
  a.date === b.date &&
  a.stepMin === b.stepMin &&
  a.extras.join() === b.extras.join() &&
  a.other?.date === b.other?.date &&
  a.other?.leaves === b.other?.leaves &&
  a.otherPour === b.otherPour &&
  a.triedStart === b.triedStart

export function createPlanClient({
  startWorker,
  setTimer,
  clearTimer,
  afterFrame,
  onChange,
}: PlanClientOf): PlanClient {
  let worker: WorkerHandle | null = null
  let state = empty
  let committed: { rev: number; site: Site } | null = null
  let shown: { rev: number; site: Site; ask: PlanAsk; isPreview: boolean } | null = null
  const alarm = () => {
    let set: unknown = null
    const stop = () => {
      if (set !== null) clearTimer(set)
      set = null
    }
    const start = (call: () => void, ms: number) => {
      stop()
      set = setTimer(() => {
        set = null
        call()
      }, ms)
    }
    return { start, stop, isSet: () => set !== null }
  }
  const silence = alarm()
  /** From the end of a gesture until the splits are looked for in earnest. */
  const rest = alarm()
  /** From a move of the hand until it is taken to rest. */
  const hand = alarm()
  const stopAlarms = () => {
    for (const each of [silence, rest, hand]) each.stop()
  }
  let failures = 0
  const latest = new Map<PartName, unknown>()

  const publish = (next: Partial<PlanState>) => {
    state = { ...state, ...next }
    onChange(state)
  }
  const show = (names: readonly PartName[], rev: number, next: Partial<PlanState>) => {
    const known = names.filter(name => latest.has(name))
    publish({
      parts: { ...state.parts, ...Object.fromEntries(known.map(name => [name, latest.get(name)])) },
      revs: { ...state.revs, ...Object.fromEntries(known.map(name => [name, rev])) },
      ...next,
    })
  }
  const listen = () => silence.start(() => fail('The plan stopped answering.'), silenceMs)

  const stopWorker = () => {
    worker?.stop()
    worker = null
    committed = null
    latest.clear()
  }

  function fail(message: string): void {
    silence.stop()
    stopWorker()
    failures += 1
    if (failures >= attempts || shown === null) publish({ isRenewing: false, failure: message })
    else send()
  }

  function receive(raw: unknown): void {
    const message = FromWorker.parse(raw)
    if (message.kind === 'needWhole') {
      committed = null
      if (shown) send()
      return
    }
    // A part the worker has sent is not sent again while it stays the same: kept, whichever revision it came with.
    if (message.kind === 'part') latest.set(message.name, message.value)
    // Another revision's answer is never shown: this one's is on its way.
    if (message.rev !== shown?.rev) return
    if (message.kind === 'failed') fail(message.message)
    else if (message.kind === 'part') {
      listen()
      show([message.name], message.rev, {})
    } else if (message.kind === 'settled') {
      silence.stop()
      failures = 0
      // After a gesture the full answer is still to come.
      const isLast = !rest.isSet() && (message.budget === 'full' || shown.isPreview)
      show(message.names, message.rev, { isRenewing: !isLast, progress: null, failure: null })
    } else if (message.kind === 'progress') {
      listen()
      const { doing, share } = message
      publish({ progress: { doing, share: share ?? 0 } })
    }
  }

  function followHand(): void {
    // The answer to an older preview is of no use; whatever it is, it is not waited for.
    silence.stop()
    hand.start(send, handMs)
    publish({ rev: shown?.rev ?? 0, isRenewing: true })
  }

  function want(budget: 'small' | 'full'): void {
    if (shown === null) return
    const { rev, ask } = shown
    const { extras, other, otherPour, triedStart, date, focus, stepMin } = ask
    worker?.post({
      kind: 'want',
      rev,
      parts: [...partNames],
      budget,
      extras: [...extras],
      ...(other === undefined ? {} : { other }),
      ...(otherPour === undefined ? {} : { otherPour }),
      ...(triedStart === undefined ? {} : { triedStart }),
      date,
      focus,
      ...(stepMin === undefined ? {} : { stepMin }),
    })
    listen()
  }

  function send(isAfterGesture = false): void {
    rest.stop()
    hand.stop()
    if (shown === null) return
    const { rev, site, isPreview } = shown
    worker ??= startWorker(receive, message => fail(message))
    if (committed === null) {
      worker.post({ kind: 'sync', rev, baseRev: null, preview: false, whole: site })
      // A preview sent whole stands in for a committed copy until the next committed one is sent whole.
      committed = { rev, site }
    } else if (committed.rev !== rev) {
      const patches = patchesBetween(committed.site, site)
      worker.post({ kind: 'sync', rev, baseRev: committed.rev, preview: isPreview, patches })
      if (!isPreview) committed = { rev, site }
    }
    want(isPreview || isAfterGesture ? 'small' : 'full')
    if (isAfterGesture) {
      rest.start(() => want('full'), restMs)
    }
    publish({ rev, isRenewing: true, isStopped: false, failure: null })
  }

  return {
    update(site, ask, isPreview) {
      const sameSite = shown?.site === site
      if (sameSite && shown !== null && shown.isPreview === isPreview && isSameAsk(shown.ask, ask)) return
      const wasPreview = shown?.isPreview ?? false
      // Another date is another answer, though the document is the same: it takes a revision of its own.
      const rev = (shown?.rev ?? 0) + 1
      shown = { rev, site, ask, isPreview }
      failures = 0
      if (isPreview && wasPreview) followHand()
      else if (committed === null) send(wasPreview)
      else {
        publish({ rev, isRenewing: true, isStopped: false, failure: null })
        afterFrame(() => {
          if (shown?.rev === rev && !state.isStopped) send(wasPreview)
        })
      }
    },
    reset() {
      worker?.post({ kind: 'cancel' })
      stopAlarms()
      committed = null
      shown = null
      state = empty
      onChange(state)
    },
    cancel() {
      worker?.post({ kind: 'cancel' })
      stopAlarms()
      publish({ isRenewing: false, progress: null, isStopped: true })
    },
    goOn() {
      if (!state.isStopped && state.failure === null) return
      failures = 0
      publish({ isStopped: false, isRenewing: true, failure: null })
      send()
    },
    stop() {
      stopAlarms()
      stopWorker()
    },
  }
}
