/** The text of an uncompressed PDF, one shown string a line, through the fonts' ToUnicode maps (ISO 32000-1, §9.10.3). */

type Letters = ReadonlyMap<string, string>

function lettersOf(map: string): Letters {
  const letters = new Map<string, string>()
  const text = (hex: string): string =>
    (hex.match(/.{4}/g) ?? []).map(unit => String.fromCharCode(Number.parseInt(unit, 16))).join('')
  for (const [, from = '', to = '', list = ''] of map.matchAll(/<(\w+)> <(\w+)> \[([^\]]*)\]/g)) {
    const first = Number.parseInt(from, 16)
    for (const [i, item] of [...list.matchAll(/<([^>]*)>/g)].entries())
      if (first + i <= Number.parseInt(to, 16))
        letters.set((first + i).toString(16).padStart(4, '0'), text((item[1] ?? '').replaceAll(' ', '')))
  }
  return letters
}

export function pdfTexts(bytes: Uint8Array): string {
  const pdf = Buffer.from(bytes).toString('latin1')
  const objects = new Map<string, string>()
  for (const [, id = '', body = ''] of pdf.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(id, body)
  const fonts = new Map<string, Letters>()
  for (const body of objects.values())
    for (const [, name = '', id = ''] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? '')?.[1]
      if (map !== undefined) fonts.set(name, lettersOf(objects.get(map) ?? ''))
    }
  const lines: string[] = []
  for (const body of objects.values()) {
    if (!body.includes('\nBT\n')) continue
    let letters: Letters = new Map()
    for (const [, font, shown] of body.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
      if (font !== undefined) letters = fonts.get(font) ?? new Map()
      else
        lines.push(
          [...(shown ?? '').matchAll(/<([0-9a-fA-F]+)>/g)]
            .flatMap(m => m[1]!.match(/.{4}/g) ?? [])
            .map(code => letters.get(code.toLowerCase()) ?? '?')
            .join(''),
        )
    }
  }
  return `${lines.filter(line => line.trim() !== '').join('\n')}\n`
}
