/** Text of several faces broken into lines between its words. */
import type { Face } from './letterWidths'
import { widthOf } from './svgPen'

export interface Run {
  readonly text: string
  readonly sizePt: number
  readonly face: Face
  readonly fill: string
}

export interface WrappedLine {
  readonly runs: readonly (Run & { readonly atPt: number })[]
  readonly widthPt: number
}

/** Lines no wider than `widthPt`; a word that is wider stands alone. A line end in the text stays one. */
export function wrapRuns(runs: readonly Run[], widthPt: number): readonly WrappedLine[] {
  const lines: WrappedLine[] = []
  let line: (Run & { atPt: number })[] = []
  let at = 0
  const end = () => {
    lines.push({ runs: line, widthPt: at })
    line = []
    at = 0
  }
  for (const run of runs) {
    const space = widthOf(' ', run.sizePt, run.face)
    run.text.split('\n').forEach((paragraph, p) => {
      if (p > 0) end()
      paragraph.split(' ').forEach((word, w) => {
        const gap = w > 0 && line.length > 0 ? space : 0
        const own = widthOf(word, run.sizePt, run.face)
        if (line.length > 0 && at + gap + own > widthPt) end()
        const from = line.length === 0 ? 0 : at + gap
        const before = line.at(-1)
        if (before && gap > 0 && before.face === run.face && before.sizePt === run.sizePt && before.fill === run.fill)
          line[line.length - 1] = { ...before, text: `${before.text} ${word}` }
        else if (word !== '' || line.length === 0) line.push({ ...run, text: word, atPt: from })
        at = from + own
      })
    })
  }
  end()
  return lines
}
