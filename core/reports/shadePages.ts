import { printDay } from '../units/printDay'
import { compassPoint } from './compassPoint'
import { type PdfNode, pdfText } from './pdfNode'
import type { SheetData } from './sheetData'

interface Column {
  readonly title: string
  readonly sunShare: readonly (number | null)[]
}

/** More columns than this go on in a further table. */
const columnsPerTable = 6

const percent = (share: number | null | undefined): string =>
  share === null || share === undefined ? '-' : `${Math.round(share * 100)} %`

function columnsOf(data: SheetData): Column[] {
  const shares = (id: string, of: SheetData['slabShares']): readonly (number | null)[] =>
    of.find(row => row.id === id)?.sunShare ?? []
  return [
    ...data.slabs.map(slab => ({ title: slab.name, sunShare: shares(slab.id, data.slabShares) })),
    ...data.pours.map(pour => ({ title: `Pour ${pour.number}`, sunShare: shares(pour.id, data.pourShares) })),
  ]
}

/** Share of each slab and pour in direct sun at every whole hour, with the sun's height and bearing. */
export function shadePages(data: SheetData): PdfNode[] {
  if (data.hours.length === 0) return []
  const columns = columnsOf(data)
  const tables: PdfNode[] = []
  for (let first = 0; first < columns.length; first += columnsPerTable) {
    const some = columns.slice(first, first + columnsPerTable)
    tables.push({
      layout: 'ruled',
      margin: [0, 0, 0, 18],
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: [52, 44, 58, ...some.map(() => '*' as const)],
        body: [
          [
            pdfText('Time', { style: 'head' }),
            pdfText('Sun up', { style: 'head', alignment: 'right' }),
            pdfText('Bearing', { style: 'head', alignment: 'right' }),
            ...some.map(c => pdfText(c.title, { style: 'head', alignment: 'right' })),
          ],
          ...data.hours.map((hour, i) => [
            pdfText(hour.label, { bold: true }),
            pdfText(`${Math.round(hour.altitudeDeg)}°`, { alignment: 'right' }),
            pdfText(`${Math.round(hour.azimuthDeg)}° ${compassPoint(hour.azimuthDeg)}`, { alignment: 'right' }),
            ...some.map(c => pdfText(percent(c.sunShare[i]), { alignment: 'right' })),
          ]),
        ],
      },
    })
  }
  return [
    pdfText('Sun by the hour', { style: 'title' }),
    pdfText(
      `${printDay(data.date, 'long')}, ${data.zone.replaceAll('_', ' ')} time. Share of the area in direct sun at the hour; the rest lies in shade. Sun up: its height above the horizon. Light through leaves and slats counts as the part that comes through. Bearing is clockwise from true north. A dash: the sun is too low to count.`,
      { margin: [0, 0, 0, 10] },
    ),
    ...tables,
  ]
}
