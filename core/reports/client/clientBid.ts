/** The bid behind the client's drawing: price, tax, how long it holds, payments and notes, on as many pages as it takes. */
import type { Site } from '../../../shared/document/site'
import { dateOf, dayNumber } from '../../pours/order/workCalendar'
import { printDay } from '../../units/printDay'
import { type PageSize, type Paper, turnPaper } from '../paper'
import { drawRect, drawText, openSvg, softInk } from '../svgPen'
import { drawHead, edgePt, type HeadWords, wordScale } from './clientHead'
import { type ClientPrice, totalWords } from './clientPrice'
import {
  type Block,
  type Column,
  closingRule,
  heading,
  noteBlock,
  noteLines,
  type Row,
  ruledRow,
  signBlock,
  stackBlocks,
} from './wordBlocks'

export interface BidPage extends PageSize {
  readonly svg: string
}

export interface BidOptions extends HeadWords {
  readonly paper: Paper
  /** Null: the client is not shown a price, so no bid either. */
  readonly price: ClientPrice | null
  /** Lines to sign on, under all that is agreed. */
  readonly signed: boolean
}

/** The last day that a price holds, from the day of the sheet YYYY-MM-DD. */
export const holdsUntil = (date: string, days: number): string => dateOf(dayNumber(date) + days)

const taxNote = 'Tax by local rules: they say what is taxed, and at what rate on the day of the bill.'

/** A heading stays with what follows it. */
const headed =
  (text: string, first: Block): Block =>
  (column, y) =>
    stackBlocks([heading(text), first], column, y + 8 * column.k)

const rowsUnder = (text: string, rows: readonly Row[], sum?: Row): readonly Block[] => {
  const blocks: Block[] = [...rows.map(row => ruledRow(row)), ...(sum === undefined ? [] : [ruledRow(sum, true)])]
  const last = blocks.pop()
  if (last === undefined) return []
  // The rule under the last row stays with it.
  const closed: Block = (column, y) => stackBlocks([last, closingRule(sum !== undefined)], column, y)
  const [first = closed, ...rest] = [...blocks, closed]
  return [headed(text, first), ...rest]
}

function blocksOf({ bid = {} }: Site, date: string, price: ClientPrice, column: Column): readonly Block[] {
  const { holdsDays, notes = [] } = bid
  const rows = [...price.lines, ...price.tax].map(({ label, value }): Row => [label, value])
  const [firstNote, ...moreNotes] = notes.flatMap(note => noteLines(note, column))
  return [
    ...rowsUnder('Price', rows, [totalWords(price), price.total]),
    ...(price.open.length === 0 ? [] : [noteBlock(`Not in this price: ${price.open.join(', ')}.`)]),
    ...(price.tax.length === 0 ? [] : [noteBlock(taxNote)]),
    ...(holdsDays === undefined
      ? []
      : [noteBlock(`This price holds until ${printDay(holdsUntil(date, holdsDays), 'long')}.`)]),
    ...rowsUnder(
      'Payments',
      price.payments.map(({ label, value }): Row => [label, value]),
    ),
    ...(firstNote === undefined ? [] : [headed('Notes', firstNote), ...moreNotes]),
  ]
}

/** Room above the lines for the hands that sign. */
const signSpace: Block = (column, y) => signBlock(column, y + 20 * column.k)

/** Pages of the bid; none where no price is shown, or the site's bid says nothing beside its price list. */
export function clientBid(
  site: Site,
  date: string,
  { price, paper, signed, ...words }: BidOptions,
): readonly BidPage[] {
  if (price === null || site.bid === undefined) return []
  const page = turnPaper(paper, 'portrait')
  const k = wordScale(page) * 1.1
  const column = { x: edgePt, width: page.widthPt - 2 * edgePt, k }
  const [top, bottom] = [edgePt + 52 * k, page.heightPt - edgePt - 20 * k]
  const pages = [{ svg: '', y: top }]
  for (const block of [...blocksOf(site, date, price, column), ...(signed ? [signSpace] : [])]) {
    const last = pages.at(-1)!
    const here = block(column, last.y)
    if (here.bottom <= bottom || last.y === top) pages[pages.length - 1] = { svg: last.svg + here.svg, y: here.bottom }
    else {
      const next = block(column, top)
      pages.push({ svg: next.svg, y: next.bottom })
    }
  }
  return pages.map(({ svg }, i) => ({
    svg: [
      openSvg(page.widthPt, page.heightPt),
      drawRect(0, 0, page.widthPt, page.heightPt, { fill: '#FFFFFF' }),
      drawHead(site, date, words, page),
      svg,
      drawText(`Bid, page ${i + 1} of ${pages.length}`, page.widthPt - edgePt, page.heightPt - edgePt, {
        ...{ sizePt: 10.5 * k, anchor: 'end', fill: softInk },
      }),
      '</svg>',
      '',
    ].join('\n'),
    widthPt: page.widthPt,
    heightPt: page.heightPt,
  }))
}
