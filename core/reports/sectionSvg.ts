/** Pages of texts and tables as one picture, as long as it needs to be: for the screen and for a phone. */

import type { Face } from './letterWidths'
import type { Margin, PdfNode, PdfText } from './pdfNode'
import type { PdfSection } from './pdfSet'
import { drawRect, drawText, ink, num, openSvg, softInk, widthOf } from './svgPen'
import { type Run, wrapRuns } from './wrapRuns'

export interface SectionPicture {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
}

/** What a piece takes of the page, and how it is drawn with its upper left corner somewhere. */
interface Piece {
  readonly heightPt: number
  draw(x: number, y: number): string
}

interface Letters {
  readonly sizePt: number
  readonly face: Face
  readonly fill: string
  readonly align: 'left' | 'right' | 'center'
}

/** From line to line, in sizes: the writer of the PDF sets these faces 1.2 × 1.08 apart. */
const lead = 1.296
/** Where letters stand in their line, from its top, in sizes. */
const baseline = 1.02

const none: Margin = [0, 0, 0, 0]
const styleMargins: Readonly<Record<string, Margin>> = { title: [0, 12, 0, 8], heading: [0, 12, 0, 5] }

function lettersOf(node: PdfText, around: Letters): Letters {
  const { style, bold, alignment } = node
  const own: Letters =
    style === 'title'
      ? { ...around, sizePt: 24, face: 'name' }
      : style === 'heading'
        ? { ...around, sizePt: 16, face: 'name' }
        : style === 'small'
          ? { ...around, sizePt: 10, fill: softInk }
          : style === 'head' || style === 'figure' || bold
            ? { ...around, face: 'planBold' }
            : around
  return alignment === undefined ? own : { ...own, align: alignment }
}

function runsOf(text: PdfText['text'], letters: Letters): readonly Run[] {
  const { sizePt, face, fill } = letters
  if (typeof text === 'string') return [{ text, sizePt, face, fill }]
  return text.flatMap(part =>
    typeof part === 'string' ? [{ text: part, sizePt, face, fill }] : runsOf(part.text, lettersOf(part, letters)),
  )
}

function within(piece: Piece, [left, top, , bottom]: Margin): Piece {
  return { heightPt: piece.heightPt + top + bottom, draw: (x, y) => piece.draw(x + left, y + top) }
}

function stackOf(pieces: readonly Piece[]): Piece {
  return {
    heightPt: pieces.reduce((sum, { heightPt }) => sum + heightPt, 0),
    draw(x, y) {
      let at = y
      return pieces
        .map(piece => {
          const drawn = piece.draw(x, at)
          at += piece.heightPt
          return drawn
        })
        .join('')
    },
  }
}

function setText(node: PdfText, widthPt: number, around: Letters): Piece {
  const margin = node.margin ?? styleMargins[node.style ?? ''] ?? none
  const letters = lettersOf(node, around)
  const lines = wrapRuns(runsOf(node.text, letters), widthPt - margin[0] - margin[2])
  const inner = widthPt - margin[0] - margin[2]
  const step = letters.sizePt * lead
  return within(
    {
      heightPt: lines.length * step,
      draw: (x, y) =>
        lines
          .map((line, i) => {
            const top = y + i * step + letters.sizePt * baseline
            const [only] = line.runs
            // Set by its end, a single run stands right whatever the letters' own widths are.
            if (only && line.runs.length === 1 && letters.align !== 'left') {
              const { text, sizePt, face, fill } = only
              const isRight = letters.align === 'right'
              const anchor = isRight ? 'end' : 'middle'
              return drawText(text, x + (isRight ? inner : inner / 2), top, { sizePt, face, fill, anchor })
            }
            const free = inner - line.widthPt
            const from = x + (letters.align === 'right' ? free : letters.align === 'center' ? free / 2 : 0)
            return line.runs
              .map(({ text, sizePt, face, fill, atPt }) => drawText(text, from + atPt, top, { sizePt, face, fill }))
              .join('')
          })
          .join(''),
    },
    margin,
  )
}

/** Inside another picture a unit is a point already: `612pt` would be taken for a third more. */
const inPoints = ({ svg, width, height }: Extract<PdfNode, { readonly svg: string }>): string =>
  svg.replace(/ width="[^"]*" height="[^"]*"/, ` width="${num(width)}" height="${num(height)}"`)

type TableNode = Extract<PdfNode, { readonly table: unknown }>

/** The widest line of a cell that is not broken, in points. */
const naturalPt = (node: PdfNode, letters: Letters): number => {
  if (typeof node === 'string') return widthOf(node, letters.sizePt, letters.face)
  if (!('text' in node)) return 0
  return runsOf(node.text, lettersOf(node, letters)).reduce((sum, r) => sum + widthOf(r.text, r.sizePt, r.face), 0)
}

const paddings = {
  ruled: (i: number, last: number) => ({ left: i === 0 ? 0 : 5, right: i === last ? 0 : 5, up: 3.5 }),
  boxed: () => ({ left: 10, right: 10, up: 5 }),
} as const

/** Fixed columns as asked where there is room, else all narrower alike; what is left goes to the starred ones. */
function columnWidths({ table, layout }: TableNode, widthPt: number, letters: Letters): readonly number[] {
  const last = table.widths.length - 1
  const roomOf = (i: number) => {
    const { left, right } = paddings[layout](i, last)
    return left + right
  }
  const asked = table.widths.map((width, i) =>
    typeof width === 'number'
      ? width + roomOf(i)
      : width === 'auto'
        ? roomOf(i) + Math.max(0, ...table.body.map(row => naturalPt(row[i] ?? '', letters)))
        : 0,
  )
  const stars = table.widths.filter(width => width === '*').length
  const fixed = asked.reduce((sum, width) => sum + width, 0)
  const most = stars > 0 ? 0.65 * widthPt : widthPt
  const scale = fixed > most ? most / fixed : 1
  const star = stars === 0 ? 0 : (widthPt - fixed * scale) / stars
  return table.widths.map((width, i) => (width === '*' ? star : asked[i]! * scale))
}

function setTable(node: TableNode, widthPt: number, letters: Letters): Piece {
  const { table, layout } = node
  const margin = node.margin ?? none
  const widths = columnWidths(node, widthPt - margin[0] - margin[2], letters)
  const last = widths.length - 1
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, 0))
  const totalPt = lefts[last]! + widths[last]!
  const rows = table.body.map(row => {
    const cells: { readonly piece: Piece; readonly left: number; readonly up: number }[] = []
    for (let i = 0; i < row.length; ) {
      const cell = row[i]!
      const span = typeof cell === 'object' && 'text' in cell ? (cell.colSpan ?? 1) : 1
      const { left, up } = paddings[layout](i, last)
      const { right } = paddings[layout](i + span - 1, last)
      const room = widths.slice(i, i + span).reduce((sum, width) => sum + width, 0) - left - right
      cells.push({ piece: setNode(cell, room, letters), left: lefts[i]! + left, up })
      i += span
    }
    return { cells, heightPt: Math.max(...cells.map(({ piece, up }) => piece.heightPt + 2 * up)) }
  })
  const heightPt = rows.reduce((sum, row) => sum + row.heightPt, 0)
  const lineWidth = (i: number): number =>
    i === 0 || i === rows.length
      ? layout === 'ruled'
        ? 1.2
        : 1.6
      : layout === 'ruled' && i === table.headerRows
        ? 0.9
        : 0.4
  return within(
    {
      heightPt: heightPt + 6,
      draw(x, y) {
        let at = y
        const parts: string[] = []
        rows.forEach((row, i) => {
          parts.push(drawRect(x, at - lineWidth(i) / 2, totalPt, lineWidth(i), { fill: ink }))
          for (const { piece, left, up } of row.cells) parts.push(piece.draw(x + left, at + up))
          at += row.heightPt
        })
        parts.push(drawRect(x, at - lineWidth(rows.length) / 2, totalPt, lineWidth(rows.length), { fill: ink }))
        if (layout === 'boxed') parts.push(drawRect(x, y, totalPt, heightPt, { stroke: ink, width: 1.6 }))
        return parts.join('')
      },
    },
    margin,
  )
}

function setNode(node: PdfNode, widthPt: number, letters: Letters): Piece {
  if (typeof node === 'string') return setText({ text: node }, widthPt, letters)
  if ('text' in node) return setText(node, widthPt, letters)
  if ('stack' in node) {
    const margin = node.margin ?? none
    const inner = widthPt - margin[0] - margin[2]
    return within(stackOf(node.stack.map(each => setNode(each, inner, letters))), margin)
  }
  if ('svg' in node) {
    const scale = Math.min(1, widthPt / node.width)
    return {
      heightPt: node.height * scale,
      draw: (x, y) => `<g transform="translate(${num(x)} ${num(y)}) scale(${num(scale)})">${inPoints(node)}</g>`,
    }
  }
  return setTable(node, widthPt, letters)
}

/** Narrow margins for a narrow picture (pt). */
const narrowMarginPt = 18

/** The section as one picture; narrower than its paper where `widthPt` says so. Page breaks and running feet are left out. */
export function sectionSvg(section: PdfSection, widthPt: number = section.widthPt): SectionPicture {
  const isNarrow = widthPt < section.widthPt
  const [left, top, right, bottom] = isNarrow
    ? [narrowMarginPt, narrowMarginPt, narrowMarginPt, narrowMarginPt]
    : section.margin
  const letters: Letters = { sizePt: section.letterPt, face: 'plan', fill: ink, align: 'left' }
  const page = stackOf(section.content.map(node => setNode(node, widthPt - left - right, letters)))
  const heightPt = Math.ceil(page.heightPt + top + bottom)
  return {
    widthPt,
    heightPt,
    svg:
      openSvg(widthPt, heightPt) +
      `${drawRect(0, 0, widthPt, heightPt, { fill: '#FFFFFF' })}${page.draw(left, top)}</svg>`,
  }
}
