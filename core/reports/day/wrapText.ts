import type { Face } from '../letterWidths'
import { widthOf } from '../svgPen'

/** Lines no wider than `widthPt`, broken between words; a word that is wider stands alone. */
export function wrapText(text: string, sizePt: number, widthPt: number, face: Face = 'plan'): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && widthOf(longer, sizePt, face) > widthPt) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}
