/** Letters the sheet fonts lack, in letters they have; halves and quarters as the eighths they stand beside. */
const spelled: Readonly<Record<string, string>> = {
  '⅛': '1/8',
  '¼': '1/4',
  '⅜': '3/8',
  '½': '1/2',
  '⅝': '5/8',
  '¾': '3/4',
  '⅞': '7/8',
  '≤': 'at most ',
  '≥': 'at least ',
  '≈': 'about ',
  π: 'pi',
  Σ: 'sum of ',
  '√': 'root of ',
  θ: 'angle',
  φ: 'latitude',
  '→': 'to',
  '\u00a0': ' ',
  '\u202f': ' ',
}

/** A space at which no line is broken: inches and their eighths stay together. */
const glue = '\u00a0'

/** True for a letter that Barlow Semi Condensed (latin subset) draws. */
const drawn = (letter: string): boolean =>
  /[\u0020-\u007e\u00a1-\u00ff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u2032\u2033\u2044\u20ac\u2212]/u.test(
    letter,
  )

/** Text for paper: `12′ 6⅜″` reads `12′6 3/8″`; a letter without a picture becomes `?`, never a blank box. */
export function sheetText(text: string): string {
  let out = ''
  for (const letter of text) {
    const words = spelled[letter]
    if (words === undefined) out += drawn(letter) ? letter : '?'
    else out += /\d$/.test(out) && /^\d/.test(words) ? `${glue}${words}` : words
  }
  // The prime of these faces is wide enough to part feet from inches.
  return out.replace(/′ (?=\d)/g, '′')
}
