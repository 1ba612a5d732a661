/** Parts of a page that the PDF writer knows how to set. */
import { sheetText } from './sheetText'

export type PdfNode =
  | string
  | PdfText
  | { readonly stack: readonly PdfNode[]; readonly margin?: Margin; readonly unbreakable?: boolean }
  | { readonly svg: string; readonly width: number; readonly height: number }
  | {
      readonly table: {
        readonly headerRows: number
        readonly widths: readonly (number | 'auto' | '*')[]
        readonly body: readonly (readonly PdfNode[])[]
        readonly dontBreakRows?: boolean
      }
      readonly layout: 'ruled' | 'boxed'
      readonly margin?: Margin
    }

export type Margin = readonly [left: number, top: number, right: number, bottom: number]

export interface PdfText {
  readonly text: string | readonly (string | PdfText)[]
  readonly style?: 'title' | 'heading' | 'figure' | 'small' | 'head'
  readonly bold?: boolean
  readonly alignment?: 'left' | 'right' | 'center'
  readonly margin?: Margin
  readonly colSpan?: number
  readonly pageBreak?: 'before'
  readonly headlineLevel?: number
}

/** Text with only letters the sheet fonts have. */
export const pdfText = (text: string, rest: Omit<PdfText, 'text'> = {}): PdfText => ({ text: sheetText(text), ...rest })
