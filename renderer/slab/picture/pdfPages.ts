/**
 * The pages of a PDF: counted, and one of them drawn. The reader and its worker are loaded when the first is asked for:
 * those that make up for what browsers of last year lack.
 */
import type { PDFDocumentProxy } from 'pdfjs-dist'
import { limits } from '../../../shared/limits'
import { err, ok, type Result } from '../../../shared/problem'
import { pdfFault } from './pdfFault'
import { pdfPageScale } from './pdfPageScale'

export const isPdf = async (file: File): Promise<boolean> =>
  file.type === 'application/pdf' || (await file.slice(0, 5).text()) === '%PDF-'

async function readPdf<T>(file: File, use: (pdf: PDFDocumentProxy) => Promise<T>): Promise<Result<T, string>> {
  const [{ getDocument, PDFWorker }, { default: Thread }] = await Promise.all([
    import('pdfjs-dist/legacy/build/pdf.mjs'),
    import('pdfjs-dist/legacy/build/pdf.worker.mjs?worker'),
  ])
  const thread = new Thread()
  const worker = PDFWorker.create({ port: thread })
  const data = new Uint8Array(await file.arrayBuffer())
  // Nothing is compiled from text and nothing fetched but the page's own decoder of JPEG 2000: the page's policy.
  const wasmUrl = new URL('pdf/', document.baseURI).href
  const task = getDocument({ data, worker, wasmUrl, isEvalSupported: false, useWasm: false, enableXfa: false })
  try {
    return ok(await use(await task.promise))
  } catch (fault) {
    return err(pdfFault(file.name, fault))
  } finally {
    await task.destroy()
    worker.destroy()
    thread.terminate()
  }
}

/** How many pages there are, at least one. Fails with a sentence. */
export async function countPdfPages(file: File): Promise<Result<number, string>> {
  if (file.size > limits.fileBytes)
    return err(`“${file.name}” is larger than 64 MB. Save only the page you need, and take that.`)
  const count = await readPdf(file, async pdf => pdf.numPages)
  return count.ok && count.value < 1 ? err(`“${file.name}” has no page.`) : count
}

/** Page `number` (the first is 1) as a PNG file, its longer side as long as a picture may be. Fails with a sentence. */
export const drawPdfPage = (file: File, number: number): Promise<Result<File, string>> =>
  readPdf(file, async pdf => {
    const page = await pdf.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const viewport = page.getViewport({ scale: pdfPageScale(width, height) })
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(viewport.width))
    canvas.height = Math.max(1, Math.round(viewport.height))
    await page.render({ canvas, viewport, intent: 'print', background: '#ffffff' }).promise
    const blob = await new Promise<Blob | null>(done => canvas.toBlob(done, 'image/png'))
    if (blob === null) throw new Error('no picture of the canvas')
    return new File([blob], file.name, { type: 'image/png' })
  })
