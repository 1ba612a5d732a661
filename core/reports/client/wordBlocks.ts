/** Blocks of words in a column of the client's sheets, one under the other. */
import { wrapText } from '../letterWidths'
import { drawPath, drawText, ink, num, softInk, widthOf } from '../svgPen'

export interface Column {
  readonly x: number
  readonly width: number
  readonly k: number
}

/** Draws from `y` down and tells where it ended. */
export type Block = (column: Column, y: number) => { readonly svg: string; readonly bottom: number }

export const heading =
  (text: string): Block =>
  ({ x, k }, y) => ({
    svg: drawText(text, x, y + 14 * k, { sizePt: 15 * k, face: 'name' }),
    bottom: y + 22 * k,
  })

export type Row = readonly [label: string, value: string]

/** One ruled row, the figure on the right, in bold where it is a sum. */
export const ruledRow =
  ([label, value]: Row, heavy = false): Block =>
  ({ x, width, k }, y) => {
    const room = width - widthOf(value, 13 * k, 'planBold') - 8
    const texts = wrapText(label, 12 * k, heavy ? 'planBold' : 'plan', room)
    const svg =
      rule(x, y, width, heavy) +
      texts
        .map((text, i) =>
          drawText(text, x, y + (i + 1) * 14 * k, { sizePt: 12 * k, ...(heavy ? { face: 'planBold' } : {}) }),
        )
        .join('') +
      drawText(value, x + width, y + 14 * k, { sizePt: (heavy ? 15 : 13) * k, face: 'planBold', anchor: 'end' })
    return { svg, bottom: y + texts.length * 14 * k + 5 * k }
  }

/** The line under the last row. */
export const closingRule =
  (heavy: boolean): Block =>
  ({ x, width, k }, y) => ({ svg: rule(x, y, width, heavy), bottom: y + 10 * k })

const rule = (x: number, y: number, width: number, heavy: boolean): string =>
  drawPath(`M${num(x)} ${num(y)}h${num(width)}`, { stroke: ink, width: heavy ? 1.2 : 0.4 })

/** Ruled rows; the last in bold where it is a sum. */
export const rowBlock =
  (rows: readonly Row[], sum?: Row): Block =>
  (column, y) =>
    stackBlocks(
      [
        ...rows.map(row => ruledRow(row)),
        ...(sum === undefined ? [] : [ruledRow(sum, true)]),
        closingRule(sum !== undefined),
      ],
      column,
      y,
    )

export const noteBlock =
  (text: string): Block =>
  ({ x, width, k }, y) => {
    const lines = wrapText(text, 10.5 * k, 'plan', width)
    return {
      svg: lines
        .map((line, i) => drawText(line, x, y + (i + 1) * 12.5 * k, { sizePt: 10.5 * k, fill: softInk }))
        .join(''),
      bottom: y + lines.length * 12.5 * k + 8 * k,
    }
  }

export const stackBlocks = (blocks: readonly Block[], column: Column, y: number): { svg: string; bottom: number } =>
  blocks.reduce(
    (done, block) => {
      const next = block(column, done.bottom)
      return { svg: done.svg + next.svg, bottom: next.bottom }
    },
    { svg: '', bottom: y },
  )
