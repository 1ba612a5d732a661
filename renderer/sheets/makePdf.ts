import type { PdfSet } from '../../core/reports/pdfSet'
import type { PdfAnswer, PdfAsk } from './pdfWorker'

/** The bytes of a PDF, set in a worker of its own that ends with it. */
export function makePdf(set: PdfSet, signal: AbortSignal): Promise<Uint8Array> {
  const worker = new Worker(new URL('./pdfWorker.ts', import.meta.url), { type: 'module' })
  return new Promise<Uint8Array>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(new Error('stopped')))
    worker.onmessage = ({ data }: MessageEvent<PdfAnswer>) =>
      data.ok ? resolve(data.bytes) : reject(new Error(data.message))
    worker.onerror = event => reject(new Error(event.message))
    worker.postMessage({ set, createdMs: Date.now() } satisfies PdfAsk)
  }).finally(() => worker.terminate())
}
