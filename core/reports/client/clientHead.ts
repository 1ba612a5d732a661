/** What stands above a sheet for the client: its title, the day, and whom it is for. */
import type { Site } from '../../../shared/document/site'
import { printDay } from '../../units/printDay'
import { wrapText } from '../letterWidths'
import type { PageSize } from '../paper'
import { drawPath, drawText, ink, num, softInk, widthOf } from '../svgPen'

/** Margin of the client's sheets, in points. */
export const edgePt = 34

/** Large paper carries larger words. */
export const wordScale = (paper: PageSize): number => (Math.min(paper.widthPt, paper.heightPt) > 700 ? 1.2 : 1)

export interface HeadWords {
  /** The site's name where empty. */
  readonly title: string
  /** "for …"; left out where empty. */
  readonly client: string
}

export function drawHead(site: Site, date: string, { title, client }: HeadWords, page: PageSize): string {
  const k = wordScale(page)
  const right = page.widthPt - edgePt
  const size = 25 * k
  const y = edgePt + 24 * k
  const words = [`Drawn ${printDay(date, 'long')}`, ...(client === '' ? [] : [`for ${client}`])]
  const most = words.reduce((width, text) => Math.max(width, widthOf(text, 12 * k)), 0)
  const [name = ''] = wrapText(title === '' ? site.name : title, size, 'name', right - edgePt - most - 20)
  return (
    drawText(name, edgePt, y, { sizePt: size, face: 'name' }) +
    words
      .map((text, i) =>
        drawText(text, right, y - (words.length - 1 - i) * 14 * k, { sizePt: 12 * k, anchor: 'end', fill: softInk }),
      )
      .join('') +
    drawPath(`M${num(edgePt)} ${num(y + 10 * k)}h${num(right - edgePt)}`, { stroke: ink, width: 1.8 })
  )
}
