import { deriveScreen } from '../../core/plan/deriveScreen'
import { createMemo } from '../../core/plan/memo'
import type { PlanShade } from '../../core/plan/plan'
import { packShade } from './packShade'
import { createPlanServer } from './planServer'
import type { FromWorker } from './protocol'

interface WorkerScope {
  postMessage(message: FromWorker): void
  onmessage: ((event: MessageEvent<unknown>) => void) | null
}

const scope = self as unknown as WorkerScope
const memo = createMemo()
const otherMemo = createMemo()

const packed = (message: FromWorker): FromWorker =>
  message.kind === 'part' && message.name === 'shade'
    ? { ...message, value: packShade(message.value as PlanShade) }
    : message

scope.onmessage = (() => {
  const receive = createPlanServer({
    post: message => scope.postMessage(packed(message)),
    later: work => setTimeout(work, 0),
    derive: (site, asked) => deriveScreen(site, asked, memo, otherMemo),
    now: () => performance.now(),
  })
  return event => receive(event.data)
})()
