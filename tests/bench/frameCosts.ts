/** What each frame of a page cost its own thread, read from a trace of the browser. */
import type { Browser, Page } from 'playwright'

export interface FrameCost {
  /** Script, style and layout, in ms of the thread's own time. */
  readonly ownMs: number
  /** Paint and hand-over to the compositor, likewise. */
  readonly paintMs: number
  /** Since the frame before, in ms of the clock. */
  readonly intervalMs: number
  /** Most own time of one task within it. */
  readonly longestMs: number
}

interface TraceEvent {
  readonly name: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  readonly dur?: number
  /** The thread's own time, in µs. */
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

const own: ReadonlySet<string> = new Set([
  'EvaluateScript',
  'EventDispatch',
  'FireAnimationFrame',
  'FireIdleCallback',
  'FunctionCall',
  'HandlePostMessage',
  'HitTest',
  'Layout',
  'RunMicrotasks',
  'TimerFire',
  'UpdateLayoutTree',
])
const paint: ReadonlySet<string> = new Set(['PrePaint', 'Paint', 'Layerize', 'Commit'])

/** The frames the page drew during the work, each ending as it is handed to the compositor. */
export async function traceFrames(page: Page, work: () => Promise<void>): Promise<readonly FrameCost[]> {
  const browser = page.context().browser() as Browser
  await browser.startTracing(page, {
    categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'toplevel'],
  })
  await work()
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] }
  return framesOf(onPageThread(traceEvents))
}

/** Whole events of the thread that ran most of a page's script, in order, the outer before the inner. */
function onPageThread(events: readonly TraceEvent[]): readonly TraceEvent[] {
  const threadOf = ({ pid, tid }: TraceEvent) => `${pid} ${tid}`
  const pages = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(threadOf),
  )
  const scripts = new Map<string, number>()
  for (const event of events)
    if (event.name === 'FunctionCall' && pages.has(threadOf(event)))
      scripts.set(threadOf(event), (scripts.get(threadOf(event)) ?? 0) + (event.dur ?? 0))
  const [thread] = [...scripts].sort((a, b) => b[1] - a[1])[0] ?? ['']
  return events
    .filter(event => event.ph === 'X' && event.dur !== undefined && threadOf(event) === thread)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))
}

function framesOf(events: readonly TraceEvent[]): readonly FrameCost[] {
  const frames: FrameCost[] = []
  let [ownUs, paintUs, taskUs, longestUs] = [0, 0, 0, 0]
  let [taskEnd, outerEnd] = [0, 0]
  let before: number | null = null
  for (const { name, ts, dur = 0, tdur = 0 } of events) {
    if (name === 'RunTask' && ts >= taskEnd) {
      taskEnd = ts + dur
      taskUs = 0
    }
    // What runs inside something counted is counted with it.
    if (own.has(name) && ts >= outerEnd) {
      outerEnd = ts + dur
      ownUs += tdur
      taskUs += tdur
      longestUs = Math.max(longestUs, taskUs)
    }
    if (paint.has(name)) paintUs += tdur
    if (name !== 'Commit') continue
    if (before !== null)
      frames.push({
        ownMs: ownUs / 1000,
        paintMs: paintUs / 1000,
        intervalMs: (ts - before) / 1000,
        longestMs: longestUs / 1000,
      })
    before = ts
    ownUs = paintUs = longestUs = 0
  }
  return frames
}
