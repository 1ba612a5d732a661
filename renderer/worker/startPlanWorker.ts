import type { PlanClientOf } from './planClient'

/** The plan's worker of this page, as the client wants it. */
export const startPlanWorker: PlanClientOf['startWorker'] = (onMessage, onCrash) => {
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = event => onMessage(event.data)
  worker.onerror = event => onCrash(event.message)
  worker.onmessageerror = () => onCrash('a message could not be read')
  return { post: message => worker.postMessage(message), stop: () => worker.terminate() }
}
