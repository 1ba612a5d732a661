import type { Quantity } from '../../shared/planJson'
import { isBidFigure } from '../quantities/priceFigures'
import { formulaWords } from './formulaWords'
import { nameEntities } from './nameEntities'
import { type PdfNode, pdfText } from './pdfNode'
import { shownUnits } from './printAsPriced'
import { printQuantity } from './printQuantity'
import type { SheetData } from './sheetData'

interface Group {
  readonly title: string
  readonly quantities: readonly Quantity[]
}

function groups(data: SheetData): Group[] {
  const { quantities } = data
  return [
    {
      title: 'Whole site',
      quantities: quantities.filter(q => q.slabId === undefined && q.pourId === undefined && !isBidFigure(q)),
    },
    { title: 'Price list', quantities: quantities.filter(isBidFigure) },
    ...data.slabs.map(slab => ({
      title: slab.name,
      quantities: quantities.filter(q => q.slabId === slab.id && q.pourId === undefined),
    })),
    ...data.pours.map(pour => ({
      title: `Pour ${pour.number}`,
      quantities: quantities.filter(q => q.pourId === pour.id),
    })),
  ].filter(group => group.quantities.length > 0)
}

function working(quantity: Quantity, data: SheetData): PdfNode {
  const units = shownUnits(quantity, data.units)
  const inputs = Object.entries(quantity.inputs).map(
    ([name, { value, unit }]) => `${nameEntities(name, data.names)} ${printQuantity(value, unit, units)}`,
  )
  // Where the formula is the name of its only input, that is the figure itself.
  const plain = inputs.length === 1 && Object.keys(quantity.inputs)[0] === quantity.formula
  return {
    stack: [
      pdfText(nameEntities(formulaWords(quantity.formula), data.names)),
      ...(inputs.length > 0 && !plain ? [pdfText(`with ${inputs.join(', ')}`, { style: 'small' })] : []),
      ...(quantity.source === 'geometry' ? [] : [pdfText(`Source: ${quantity.source}`, { style: 'small' })]),
    ],
  }
}

/** Every figure with its formula, what went into it, and where it comes from. */
export function quantityPages(data: SheetData): PdfNode[] {
  if (data.quantities.length === 0) return []
  return [
    pdfText('Figures and how they were computed', { style: 'title' }),
    pdfText('Where no source is named, the figure is measured on the drawing.', { margin: [0, 0, 0, 2] }),
    ...groups(data).flatMap((group): PdfNode[] => [
      pdfText(group.title, { style: 'heading', headlineLevel: 1 }),
      {
        layout: 'ruled',
        table: {
          headerRows: 1,
          dontBreakRows: true,
          widths: [150, 86, '*'],
          body: [
            [
              pdfText('Figure', { style: 'head' }),
              pdfText('Value', { style: 'head', alignment: 'right' }),
              pdfText('How it was computed', { style: 'head' }),
            ],
            ...group.quantities.map(q => [
              pdfText(q.label),
              pdfText(printQuantity(q.value, q.unit, shownUnits(q, data.units)), {
                style: 'figure',
                alignment: 'right',
              }),
              working(q, data),
            ]),
          ],
        },
      },
    ]),
  ]
}
