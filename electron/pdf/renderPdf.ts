/** Writes a set of sheets as PDF bytes, in Node. The PDF library is loaded only when a PDF is asked for. */
import { createRequire } from 'node:module'
import type { CustomTableLayout, TDocumentDefinitions } from 'pdfmake/interfaces'
import { type PdfOptions, pdfDefinition, tableLayouts } from '../../core/reports/pdfDefinition'
import type { PdfSet } from '../../core/reports/pdfSet'

const resolve = createRequire(import.meta.url).resolve
const barlow = (weight: number): string =>
  resolve(`@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-${weight}-normal.woff`)
const zilla = (weight: number): string => resolve(`@fontsource/zilla-slab/files/zilla-slab-latin-${weight}-normal.woff`)

function fontFiles(): Record<string, { normal: string; bold: string; italics: string; bolditalics: string }> {
  const family = (normal: string, bold: string) => ({ normal, bold, italics: normal, bolditalics: bold })
  return {
    'Barlow Semi Condensed': family(barlow(500), barlow(700)),
    'Zilla Slab': family(zilla(700), zilla(700)),
  }
}

/** The bytes of the PDF. */
export async function renderPdf(set: PdfSet, options: PdfOptions): Promise<Uint8Array> {
  const { default: pdfmake } = await import('pdfmake')
  const fonts = fontFiles()
  const known = new Set(Object.values(fonts).flatMap(family => Object.values(family)))
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy(path => known.has(path))
  pdfmake.setFonts(fonts)
  pdfmake.setTableLayouts(tableLayouts as Record<string, CustomTableLayout>)
  const buffer = await pdfmake.createPdf(pdfDefinition(set, options) as unknown as TDocumentDefinitions).getBuffer()
  return new Uint8Array(buffer)
}
