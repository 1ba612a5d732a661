/** The set of sheets in the terms of the PDF writer, which is the same in Node and in the browser. */
import type { PdfNode } from './pdfNode'
import type { PdfSection, PdfSet } from './pdfSet'

export interface PdfOptions {
  /** Plain streams and no object compression, for tests that read the file. */
  readonly compress?: boolean
  /** Written into the file; the same set and instant give the same bytes. */
  readonly createdAt: Date
}

interface TableNode {
  readonly table: { readonly body: readonly unknown[]; readonly headerRows?: number; readonly widths?: unknown }
}

const ink = '#1C2125'

const ruled = {
  hLineWidth: (i: number, node: TableNode) =>
    i === 0 || i === node.table.body.length ? 1.2 : i === node.table.headerRows ? 0.9 : 0.4,
  vLineWidth: () => 0,
  hLineColor: () => ink,
  paddingLeft: (i: number) => (i === 0 ? 0 : 5),
  paddingRight: (i: number, { table }: TableNode) =>
    i === (Array.isArray(table.widths) ? table.widths.length : 0) - 1 ? 0 : 5,
  paddingTop: () => 3.5,
  paddingBottom: () => 3.5,
}

const boxed = {
  hLineWidth: (i: number, node: TableNode) => (i === 0 || i === node.table.body.length ? 1.6 : 0.4),
  vLineWidth: () => 1.6,
  hLineColor: () => ink,
  vLineColor: () => ink,
  paddingLeft: () => 10,
  paddingRight: () => 10,
  paddingTop: () => 5,
  paddingBottom: () => 5,
}

export const tableLayouts = { ruled, boxed }

/** The writer notes positions on what it is given: each node is its own. */
const copy = (node: PdfNode): PdfNode => JSON.parse(JSON.stringify(node)) as PdfNode

export function pdfDefinition(set: PdfSet, options: PdfOptions) {
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
    content: sections,
    defaultStyle: { font: 'Barlow Semi Condensed', fontSize: 11.5, color: ink, lineHeight: 1.08 },
    styles: {
      title: { font: 'Zilla Slab', bold: true, fontSize: 24, margin: [0, 12, 0, 8] },
      heading: { font: 'Zilla Slab', bold: true, fontSize: 16, margin: [0, 12, 0, 5] },
      head: { bold: true },
      figure: { bold: true },
      small: { fontSize: 10, color: '#434A50' },
    },
    // A heading is not left alone at the foot of a page.
    pageBreakBefore: (
      current: { readonly headlineLevel?: number },
      following: { getFollowingNodesOnPage(): readonly unknown[] },
    ): boolean => current.headlineLevel === 1 && following.getFollowingNodesOnPage().length === 0,
  }
}
