/** The set of sheets as a plain description for the PDF writer: sections of pages, texts, tables and pictures. */
import { printMeasures } from '../units/printMeasures'
import { alternativeSheets } from './alternativeSheets'
import { cautionPages } from './cautionPages'
import { courtMaps } from './courtMaps'
import { papers } from './paper'
import type { Margin, PdfNode } from './pdfNode'
import { planSheets } from './planSvg'
import { pourPages } from './pourPages'
import { quantityPages } from './quantityPages'
import { shadeMaps } from './shadeMaps'
import { shadePages } from './shadePages'
import { chooseShadeTimes } from './shadeTimes'
import type { SheetData } from './sheetData'
import { sheetText } from './sheetText'

export interface PdfSection {
  readonly widthPt: number
  readonly heightPt: number
  readonly margin: Margin
  /** True where pages carry the running foot with page numbers; pictures that fill the page carry their own. */
  readonly foot: boolean
  /** Size of the running letters: 14 where it is read standing. */
  readonly letterPt: number
  readonly content: readonly PdfNode[]
}

export interface PdfSet {
  readonly title: string
  readonly subject: string
  readonly footText: string
  readonly sections: readonly PdfSection[]
}

export interface PdfSetOptions {
  /** ISO times of the plan's shade edges; default about 9, 12 and 3 o'clock. */
  readonly shadeTimes?: readonly string[]
}

/** Plan sheets, shade, figures, pours, problems and cautions of one site and date. */
export function pdfSet(data: SheetData, options: PdfSetOptions = {}): PdfSet {
  const measures = printMeasures(data.units)
  const tablePaper = data.units === 'ftin' ? papers.letter : papers.a4
  const pages = (letterPt: number, content: readonly PdfNode[]): PdfSection[] =>
    content.length === 0
      ? []
      : [
          {
            widthPt: tablePaper.widthPt,
            heightPt: tablePaper.heightPt,
            margin: [54, 54, 54, 54],
            foot: true,
            letterPt,
            content,
          },
        ]
  const pictures = [
    ...planSheets(data, {
      title: data.pours.length > 0 ? 'Plan and pours' : 'Plan',
      layers: { pours: 'full', joints: true, finishes: true, casters: true, dimensions: true, shadeTimes: [] },
    }),
    ...planSheets(data, {
      title: 'Edges of the shade',
      layers: {
        pours: 'number',
        joints: false,
        finishes: false,
        casters: true,
        dimensions: false,
        shadeTimes: options.shadeTimes ?? chooseShadeTimes(data, 3),
      },
    }),
    ...alternativeSheets(data),
    ...shadeMaps(data),
    ...courtMaps(data),
  ]
  return {
    title: `${data.siteName}, sheets`,
    subject: `${data.siteName}, ${data.date}`,
    footText: sheetText(`${data.siteName}, ${data.date}. Planning estimate: check on site before work.`),
    sections: [
      ...pictures.map(
        ({ svg, widthPt, heightPt }): PdfSection => ({
          widthPt,
          heightPt,
          margin: [0, 0, 0, 0],
          foot: false,
          letterPt: 14,
          content: [{ svg, width: widthPt, height: heightPt }],
        }),
      ),
      ...pages(14, [...pourPages(data, measures), ...shadePages(data)]),
      ...pages(11.5, quantityPages(data)),
      ...pages(12.5, cautionPages(data)),
    ],
  }
}
