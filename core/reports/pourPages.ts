import type { Measures } from '../units/measures'
import { printDay } from '../units/printDay'
import { type PdfNode, pdfText } from './pdfNode'
import { pourJointLength } from './pourJointLength'
import type { SheetData } from './sheetData'

const right = { alignment: 'right' } as const
const headRight = { style: 'head', alignment: 'right' } as const

const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

function pourTable(data: SheetData, measures: Measures): PdfNode {
  const pours = [...data.pours].sort((p, q) => p.order - q.order)
  const manySlabs = data.slabs.length > 1
  const slabName = (id: string): string => data.slabs.find(s => s.id === id)?.name ?? ''
  const volume = (v: number | undefined): string => (v === undefined ? '' : measures.volume(v))
  const jointText = (lengthM: number): string => (lengthM > 0 ? measures.length(lengthM) : 'none')
  const total = pours.reduce((s, p) => s + (p.concreteM3 ?? 0), 0)
  return {
    layout: 'ruled',
    margin: [0, 0, 0, 16],
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: [38, ...(manySlabs ? ['*' as const] : []), '*', '*', '*', 44, 34, 82],
      body: [
        [
          pdfText('Pour', { style: 'head' }),
          ...(manySlabs ? [pdfText('Slab', { style: 'head' })] : []),
          pdfText('Area', headRight),
          pdfText('Concrete', headRight),
          pdfText('Joint', headRight),
          pdfText('Order', headRight),
          pdfText('Day', headRight),
          pdfText('Date', headRight),
        ],
        ...pours.map(p => [
          pdfText(p.number, { style: 'figure' }),
          ...(manySlabs ? [pdfText(slabName(p.slabId))] : []),
          pdfText(measures.area(p.areaM2), right),
          pdfText(volume(p.concreteM3), right),
          pdfText(jointText(pourJointLength(p, data.joints)), right),
          pdfText(String(p.order), right),
          pdfText(String(p.day), right),
          pdfText(p.date === null ? 'open' : printDay(p.date, 'short'), right),
        ]),
        [
          pdfText('All', { style: 'figure' }),
          ...(manySlabs ? [pdfText('')] : []),
          pdfText(measures.area(pours.reduce((s, p) => s + p.areaM2, 0)), { ...right, bold: true }),
          pdfText(total > 0 ? measures.volume(total) : '', { ...right, bold: true }),
          pdfText(''),
          pdfText(''),
          pdfText(''),
          pdfText(''),
        ],
      ],
    },
  }
}

function jointTable(data: SheetData, measures: Measures): PdfNode[] {
  const joints = data.joints.filter(j => j.kind === 'construction')
  if (joints.length === 0) return []
  const number = (id: string): string => data.pours.find(p => p.id === id)?.number ?? '?'
  return [
    pdfText('Construction joints', { style: 'heading', headlineLevel: 1 }),
    {
      layout: 'ruled',
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['*', 90],
        body: [
          [pdfText('Between pours', { style: 'head' }), pdfText('Length', headRight)],
          ...joints.map(j => [
            pdfText(joined(j.pourIds.map(number).sort((p, q) => p.localeCompare(q, 'en', { numeric: true })))),
            pdfText(measures.length(j.lengthM), { style: 'figure', alignment: 'right' }),
          ]),
          [
            pdfText('All', { bold: true }),
            pdfText(measures.length(joints.reduce((s, j) => s + j.lengthM, 0)), {
              style: 'figure',
              alignment: 'right',
            }),
          ],
        ],
      },
    },
  ]
}

/** Pours in their order with area, concrete, joint and day; then the joints one by one. */
export function pourPages(data: SheetData, measures: Measures): PdfNode[] {
  if (data.pours.length === 0) return []
  return [
    pdfText('Pours', { style: 'title' }),
    pdfText(
      data.pours.some(p => p.proposed)
        ? 'A proposal: nothing is decided until the pours are accepted. A joint counts for each of the two pours it parts.'
        : 'A joint counts for each of the two pours it parts.',
      { margin: [0, 0, 0, 10] },
    ),
    pourTable(data, measures),
    ...jointTable(data, measures),
  ]
}
