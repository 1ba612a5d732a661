import { sheetText } from './sheetText'

/** Advance widths in 1/1000 em of the sheets' letters (Barlow Semi Condensed 5.3, Zilla Slab 5.3), for placing labels. */
export type Face = 'plan' | 'planBold' | 'name'

/** U+0020 to U+007E. */
const ascii: Record<Face, readonly number[]> = {
  // biome-ignore format: a table
  plan: [200,295,286,634,495,808,619,141,272,272,379,468,227,360,238,395,507,309,480,471,505,471,472,431,478,463,291,260,468,468,468,438,791,533,540,530,544,515,487,535,560,240,507,541,488,623,587,542,522,516,533,507,507,559,529,762,526,514,476,355,395,355,432,445,202,471,492,470,492,478,326,483,487,233,227,467,213,742,487,490,497,497,341,437,322,485,445,659,449,432,408,313,169,313,492],
  // biome-ignore format: a table
  planBold: [200,311,352,651,508,795,654,169,329,329,380,462,238,370,247,444,511,319,499,487,544,488,488,451,490,482,319,274,462,462,462,479,786,577,545,536,547,511,490,540,554,246,518,558,499,631,590,547,531,527,543,520,526,554,555,783,553,546,485,381,444,381,448,472,226,487,505,486,505,492,342,498,497,237,235,491,227,755,497,503,508,508,354,457,335,496,478,698,488,464,416,360,194,360,512],
  // biome-ignore format: a table
  name: [187,261,387,574,491,738,702,208,289,289,416,401,222,321,228,376,576,404,537,533,570,522,536,495,539,535,248,249,397,545,395,481,894,687,622,644,698,593,567,682,761,352,486,674,558,900,760,712,598,718,638,557,651,719,685,989,666,646,589,299,421,299,469,502,440,506,551,471,570,483,343,568,581,299,265,553,285,876,593,523,571,551,441,459,398,585,527,760,537,530,477,299,244,299,568],
}

/** Letters outside the table are rare; a wide one is never under-measured. */
const otherWidth = 500
const narrow: Readonly<Record<string, number>> = {
  '′': 240,
  '″': 400,
  '€': 570,
  '²': 305,
  '³': 305,
  '°': 370,
  '·': 240,
  '\u00a0': 200,
}

/** Width of a line of text in points. */
export function textWidthPt(text: string, sizePt: number, face: Face): number {
  let sum = 0
  for (const letter of text) sum += ascii[face][letter.codePointAt(0)! - 32] ?? narrow[letter] ?? otherWidth
  return (sum * sizePt) / 1000
}

/** Breaks text at spaces into lines that are no wider than `widthPt` as drawn; a longer word stands alone. */
export function wrapText(text: string, sizePt: number, face: Face, widthPt: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidthPt(sheetText(longer), sizePt, face) > widthPt) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}
