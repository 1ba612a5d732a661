import type { Severity } from '../../shared/problem'
import { cautions, notice } from './cautions'
import { type PdfNode, pdfText } from './pdfNode'
import type { SheetData } from './sheetData'

const severityWords: Record<Severity, string> = { stop: 'Stop', check: 'Check', note: 'Note' }
const severityOrder: Record<Severity, number> = { stop: 0, check: 1, note: 2 }

function problemTable(data: SheetData): PdfNode[] {
  if (data.problems.length === 0) return [pdfText('Nothing to report.', { margin: [0, 0, 0, 14] })]
  const problems = [...data.problems].sort((p, q) => severityOrder[p.severity] - severityOrder[q.severity])
  return [
    {
      layout: 'ruled',
      margin: [0, 0, 0, 18],
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: [44, '*'],
        body: [
          [pdfText('Kind', { style: 'head' }), pdfText('What, where, and what to do', { style: 'head' })],
          ...problems.map(p => [
            pdfText(severityWords[p.severity], { bold: true }),
            pdfText(p.hint === undefined ? p.message : `${p.message} ${p.hint}`),
          ]),
        ],
      },
    },
  ]
}

/** What the plan could not settle, then the cautions of the work. */
export function cautionPages(data: SheetData): PdfNode[] {
  return [
    pdfText('To settle before the pour', { style: 'title' }),
    ...problemTable(data),
    pdfText('Cautions', { style: 'heading', headlineLevel: 1 }),
    {
      layout: 'boxed',
      table: {
        headerRows: 0,
        dontBreakRows: true,
        widths: ['*'],
        body: [
          ...cautions.map(c => [
            {
              stack: [
                { text: [pdfText(`${c.title} `, { bold: true }), pdfText(c.text)] },
                pdfText(`Source: ${c.source}`, { style: 'small' }),
              ],
            },
          ]),
          [pdfText(notice, { bold: true })],
        ],
      },
    },
  ]
}
