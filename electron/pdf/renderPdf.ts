/** Writes a set of sheets as PDF bytes, in Node. The PDF library is loaded only when a PDF is asked for. */
import { createRequire } from 'node:module'
import type { Content, CustomTableLayout, TDocumentDefinitions } from 'pdfmake/interfaces'
import type { PdfNode } from '../../core/reports/pdfNode'
import type { PdfSection, PdfSet } from '../../core/reports/pdfSet'

export interface RenderPdfOptions {
  /** Plain streams and no object compression, for tests that read the file. */
  readonly compress?: boolean
  /** Written into the file; the same set and instant give the same bytes. */
  readonly createdAt: Date
}

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

const ink = '#1C2125'

const ruled: CustomTableLayout = {
  hLineWidth: (i, node) => (i === 0 || i === node.table.body.length ? 1.2 : i === node.table.headerRows ? 0.9 : 0.4),
  vLineWidth: () => 0,
  hLineColor: () => ink,
  paddingLeft: i => (i === 0 ? 0 : 5),
  paddingRight: (i, node) => (i === (node.table.widths?.length ?? 0) - 1 ? 0 : 5),
  paddingTop: () => 3.5,
  paddingBottom: () => 3.5,
}

const boxed: CustomTableLayout = {
  hLineWidth: (i, node) => (i === 0 || i === node.table.body.length ? 1.6 : 0.4),
  vLineWidth: () => 1.6,
  hLineColor: () => ink,
  vLineColor: () => ink,
  paddingLeft: () => 10,
  paddingRight: () => 10,
  paddingTop: () => 5,
  paddingBottom: () => 5,
}

const copy = (node: PdfNode): Content => structuredClone(node) as Content

function definitionOf(set: PdfSet, options: RenderPdfOptions): TDocumentDefinitions {
  const sections = set.sections.map((section: PdfSection) => ({
    section: [{ stack: section.content.map(copy), fontSize: section.letterPt }],
    pageSize: { width: section.widthPt, height: section.heightPt },
    pageMargins: [...section.margin],
    ...(section.foot
      ? {
          footer: (page: number, pages: number) => ({
            columns: [set.footText, { text: `page ${page} of ${pages}`, alignment: 'right', width: 90 }],
            margin: [section.margin[0], 14, section.margin[2], 0],
            fontSize: 10,
          }),
        }
      : {}),
  }))
  return {
    info: {
      title: set.title,
      subject: set.subject,
      creator: 'Slabwright',
      producer: 'Slabwright',
      creationDate: options.createdAt,
    },
    compress: options.compress ?? true,
    content: sections as unknown as Content,
    defaultStyle: { font: 'Barlow Semi Condensed', fontSize: 11.5, color: ink, lineHeight: 1.08 },
    styles: {
      title: { font: 'Zilla Slab', bold: true, fontSize: 24, margin: [0, 12, 0, 8] },
      heading: { font: 'Zilla Slab', bold: true, fontSize: 16, margin: [0, 12, 0, 5] },
      head: { bold: true },
      figure: { bold: true },
      small: { fontSize: 10, color: '#434A50' },
    },
    // A heading is not left alone at the foot of a page.
    pageBreakBefore: (current, following) =>
      current.headlineLevel === 1 && following.getFollowingNodesOnPage().length === 0,
  }
}

/** The bytes of the PDF. */
export async function renderPdf(set: PdfSet, options: RenderPdfOptions): Promise<Uint8Array> {
  const { default: pdfmake } = await import('pdfmake')
  const fonts = fontFiles()
  const known = new Set(Object.values(fonts).flatMap(family => Object.values(family)))
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy(path => known.has(path))
  pdfmake.setFonts(fonts)
  pdfmake.setTableLayouts({ ruled, boxed })
  const buffer = await pdfmake.createPdf(definitionOf(set, options)).getBuffer()
  return new Uint8Array(buffer)
}
