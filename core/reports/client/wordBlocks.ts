/** Blocks of words in a column of the client's sheets, one under the other. */
import { type Face, wrapText } from '../letterWidths'
import { drawPath, drawText, ink, num, softInk, widthOf } from '../svgPen'

export interface Column {
  readonly x: number
  readonly width: number
  readonly k: number
}

/** Draws from `y` down and tells where it ended. */
export type Block = (column: Column, y: number) => { readonly svg: string; readonly bottom: number }

/** Lines of a column; a word wider than the column, as an address, goes on in the next line. */
const columnLines = (text: string, sizePt: number, face: Face, width: number): string[] =>
  wrapText(text, sizePt, face, width).flatMap(line => {
    const parts: string[] = []
    let rest = line
    while (widthOf(rest, sizePt, face) > width) {
      let fits = 1
      while (widthOf(rest.slice(0, fits + 1), sizePt, face) <= width) fits++
      parts.push(rest.slice(0, fits))
      rest = rest.slice(fits)
    }
    return [...parts, rest]
  })

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
    const texts = columnLines(label, 12 * k, heavy ? 'planBold' : 'plan', room)
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

/**
 * A note line by line, so that a long one goes on over a page, but never with its first or last line alone; its own line
 * breaks are kept.
 */
export function noteLines(text: string, { width, k }: Column): readonly Block[] {
  const lines = text
    .split(/\r?\n/)
    .flatMap(part => (part.trim() === '' ? [''] : columnLines(part, 10.5 * k, 'plan', width)))
  const blocks = lines.map(
    (line, i): Block =>
      ({ x }, y) => ({
        svg: line === '' ? '' : drawText(line, x, y + 12.5 * k, { sizePt: 10.5 * k, fill: softInk }),
        bottom: y + 12.5 * k + (i === lines.length - 1 ? 8 * k : 0),
      }),
  )
  const together =
    (some: readonly Block[]): Block =>
    (column, y) =>
      stackBlocks(some, column, y)
  return blocks.length < 4
    ? [together(blocks)]
    : [together(blocks.slice(0, 2)), ...blocks.slice(2, -2), together(blocks.slice(-2))]
}

export const noteBlock =
  (text: string): Block =>
  (column, y) =>
    stackBlocks(noteLines(text, column), column, y)

/** Lines to sign on, each with a day. */
export const signBlock: Block = ({ x, width, k }, y) => {
  const lines = ['Approved', 'Contractor'].map((who, i) => {
    const at = y + 26 * k + i * 36 * k
    return (
      drawPath(`M${num(x)} ${num(at)}h${num(width * 0.66)}M${num(x + width * 0.72)} ${num(at)}H${num(x + width)}`, {
        stroke: ink,
        width: 0.9,
      }) +
      drawText(who, x, at + 11 * k, { sizePt: 10 * k, fill: softInk }) +
      drawText('Date', x + width * 0.72, at + 11 * k, { sizePt: 10 * k, fill: softInk })
    )
  })
  return { svg: lines.join(''), bottom: y + 76 * k }
}

export const stackBlocks = (blocks: readonly Block[], column: Column, y: number): { svg: string; bottom: number } =>
  blocks.reduce(
    (done, block) => {
      const next = block(column, done.bottom)
      return { svg: done.svg + next.svg, bottom: next.bottom }
    },
    { svg: '', bottom: y },
  )
