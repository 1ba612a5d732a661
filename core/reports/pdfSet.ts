/** The set of sheets as a plain description for the PDF writer: sections of pages, texts, tables and pictures. */
import { printMeasures } from '../units/printMeasures'
import { alternativeSheets } from './alternativeSheets'
import { cautionPages } from './cautionPages'
import { courtMaps } from './courtMaps'
import { papers } from './paper'
import type { Margin, PdfNode } from './pdfNode'
import { pictureSection } from './pictureSection'
import { planSheets } from './planSvg'
import { pourPages } from './pourPages'
import { quantityPages } from './quantityPages'
import { type Picture, shadeMaps } from './shadeMaps'
import { shadePages } from './shadePages'
import { chooseShadeTimes } from './shadeTimes'
import type { SheetData } from './sheetData'
import { sheetText } from './sheetText'

export interface PdfSection {
  /** What the sheet is called in a list of sheets; absent where it has pages of one sheet only. */
  readonly name?: string
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
  const pages = (name: string, letterPt: number, content: readonly PdfNode[]): PdfSection[] =>
    content.length === 0
      ? []
      : [
          {
            name,
            widthPt: tablePaper.widthPt,
            heightPt: tablePaper.heightPt,
            margin: [54, 54, 54, 54],
            foot: true,
            letterPt,
            content,
          },
        ]
  const named = (name: string, pictures: readonly Picture[]) => pictures.map(picture => ({ ...picture, name }))
  const [planTitle, edgesTitle] = [data.pours.length > 0 ? 'Plan and pours' : 'Plan', 'Edges of the shade']
  const plan = planSheets(data, {
    title: planTitle,
    layers: { pours: 'full', joints: true, finishes: true, casters: true, dimensions: true, shadeTimes: [] },
  })
  const edges = planSheets(data, {
    title: edgesTitle,
    layers: {
      pours: 'number',
      joints: false,
      finishes: false,
      casters: true,
      dimensions: false,
      shadeTimes: options.shadeTimes ?? chooseShadeTimes(data, 3),
    },
  })
  const pictures = [
    ...named(planTitle, plan),
    ...named(edgesTitle, edges),
    ...named('Ways to split', alternativeSheets(data)),
    ...named('Shade through the day', shadeMaps(data)),
    ...named('Ways in and out', courtMaps(data)),
  ]
  return {
    title: `${data.siteName}, sheets`,
    subject: `${data.siteName}, ${data.date}`,
    footText: sheetText(`${data.siteName}, ${data.date}. Planning estimate: check on site before work.`),
    sections: [
      ...pictures.map((picture): PdfSection => ({ name: picture.name, ...pictureSection(picture, 14) })),
      ...pages('Pours and shade, tables', 14, [...pourPages(data, measures), ...shadePages(data)]),
      ...pages('Figures, tables', 11.5, quantityPages(data)),
      ...pages('Cautions', 12.5, cautionPages(data)),
    ],
  }
}
