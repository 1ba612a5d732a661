import { inNextFrame } from '../app/frames'
import { type PackedShade, unpackShade } from './packShade'
import type { PlanClientOf } from './planClient'
import type { FromWorker } from './protocol'

const unpacked = (message: FromWorker): FromWorker =>
  message.kind === 'part' && message.name === 'shade'
    ? { ...message, value: unpackShade(message.value as PackedShade) }
    : message

/** The plan's worker of this page, as the client wants it. */
export const startPlanWorker: PlanClientOf['startWorker'] = (onMessage, onCrash) => {
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' })
  const inFrames = gatherInFrames(onMessage)
  worker.onmessage = (event: MessageEvent<FromWorker>) => inFrames.add(unpacked(event.data))
  worker.onerror = event => onCrash(event.message)
  worker.onmessageerror = () => onCrash('a message could not be read')
  return {
    post: message => worker.postMessage(message),
    stop: () => {
      worker.terminate()
      inFrames.stop()
    },
  }
}

/** A page that is out of sight has no frames. */
const unseenMs = 100

/** Hands messages on in order, those of one frame together: parts of a plan come by the dozen, and the page draws once. */
function gatherInFrames(onMessage: (message: FromWorker) => void) {
  let waiting: FromWorker[] = []
  let clear: (() => void) | null = null
  const handOn = () => {
    clear?.()
    clear = null
    const messages = waiting
    waiting = []
    for (const message of messages) onMessage(message)
  }
  return {
    add(message: FromWorker) {
      waiting.push(message)
      if (clear) return
      const [frame, timer] = [inNextFrame(handOn), setTimeout(handOn, unseenMs)]
      clear = () => {
        cancelAnimationFrame(frame)
        clearTimeout(timer)
      }
    },
    stop() {
      clear?.()
      clear = null
      waiting = []
    },
  }
}
