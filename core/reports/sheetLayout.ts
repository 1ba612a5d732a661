/** How a plan sheet is divided: the drawing's window, a column (or band) of words, a foot with bar and cautions. */
import type { PageRect } from './layer'
import { type Orientation, type PageSize, type Paper, turnPaper } from './paper'

export interface SheetLayout {
  readonly page: PageSize
  /** Size of the words relative to a Letter sheet. */
  readonly wordScale: number
  readonly window: PageRect
  readonly words: PageRect
  readonly foot: PageRect
  readonly orientation: Orientation
}

/** Printers leave at least 1/4 in blank; binders want more. */
const edgePt = 30

export function sheetLayout(paper: Paper, orientation: Orientation): SheetLayout {
  const page = turnPaper(paper, orientation)
  const shortSide = Math.min(page.widthPt, page.heightPt)
  const wordScale = shortSide > 1500 ? 1.7 : shortSide > 1100 ? 1.4 : shortSide > 750 ? 1.15 : 1
  const gap = 12
  const footHeight = 66 * wordScale
  const inner: PageRect = {
    x: edgePt,
    y: edgePt,
    width: page.widthPt - 2 * edgePt,
    height: page.heightPt - 2 * edgePt,
  }
  const foot: PageRect = { ...inner, y: inner.y + inner.height - footHeight, height: footHeight }
  const above = inner.height - footHeight - gap
  if (orientation === 'landscape') {
    const column = 178 * wordScale
    return {
      page,
      wordScale,
      orientation,
      foot,
      window: { x: inner.x, y: inner.y, width: inner.width - column - gap, height: above },
      words: { x: inner.x + inner.width - column, y: inner.y, width: column, height: above },
    }
  }
  const band = 172 * wordScale
  return {
    page,
    wordScale,
    orientation,
    foot,
    window: { x: inner.x, y: inner.y, width: inner.width, height: above - band - gap },
    words: { x: inner.x, y: inner.y + above - band, width: inner.width, height: band },
  }
}
