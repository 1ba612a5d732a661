/** Sheet sizes in points (1/72 in), portrait: ASME Y14.1 / ARCH series and ISO 216. */
import type { UnitSystem } from '../../shared/document/site'

export interface Paper {
  readonly name: string
  readonly widthPt: number
  readonly heightPt: number
}

const inches = (name: string, widthIn: number, heightIn: number): Paper => ({
  name,
  widthPt: widthIn * 72,
  heightPt: heightIn * 72,
})
const millimeters = (name: string, widthMm: number, heightMm: number): Paper =>
  inches(name, widthMm / 25.4, heightMm / 25.4)

export const papers = {
  letter: inches('Letter', 8.5, 11),
  tabloid: inches('Tabloid 11 × 17', 11, 17),
  archC: inches('ARCH C', 18, 24),
  archD: inches('ARCH D', 24, 36),
  a4: millimeters('A4', 210, 297),
  a3: millimeters('A3', 297, 420),
  a2: millimeters('A2', 420, 594),
  a1: millimeters('A1', 594, 841),
} as const

/** From the smallest to the largest. */
export const papersOf = (units: UnitSystem): readonly Paper[] =>
  units === 'ftin'
    ? [papers.letter, papers.tabloid, papers.archC, papers.archD]
    : [papers.a4, papers.a3, papers.a2, papers.a1]

export type Orientation = 'landscape' | 'portrait'

export interface PageSize {
  readonly widthPt: number
  readonly heightPt: number
}

export const turnPaper = (paper: Paper, orientation: Orientation): PageSize =>
  orientation === 'portrait'
    ? { widthPt: paper.widthPt, heightPt: paper.heightPt }
    : { widthPt: paper.heightPt, heightPt: paper.widthPt }
