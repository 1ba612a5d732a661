/** Words after which a slash begins a regular expression rather than a division. */
const regexAfterWord = /(?:^|[^\w$.])(?:return|typeof|case|in|of|do|else|void|delete|instanceof|new|throw|await|yield)$/

/**
 * Blanks comments out of TypeScript source, keeping every line where it was; with `strings: 'blank'` also what stands
 * in quotes, in template text and in regular expressions. Code inside `${…}` stays in both forms.
 */
export function stripSource(source: string, strings: 'keep' | 'blank'): string {
  const out: string[] = []
  // One entry per open template literal: the depth of braces at which its `${` ends.
  const templates: number[] = []
  let depth = 0
  let at = 0
  const blank = (text: string) => text.replace(/[^\n]/g, ' ')
  const put = (end: number, keep: boolean) => {
    const text = source.slice(at, end)
    out.push(keep ? text : blank(text))
    at = end
  }
  const putTemplate = (from: number) => {
    let end = from
    while (end < source.length) {
      if (source[end] === '\\') end += 2
      else if (source[end] === '`') {
        put(end + 1, strings === 'keep')
        return
      } else if (source.startsWith('${', end)) {
        put(end + 2, strings === 'keep')
        templates.push(depth)
        return
      } else end += 1
    }
    put(source.length, strings === 'keep')
  }
  while (at < source.length) {
    const char = source[at]!
    if (source.startsWith('//', at)) {
      const end = source.indexOf('\n', at)
      put(end < 0 ? source.length : end, false)
    } else if (source.startsWith('/*', at)) {
      const end = source.indexOf('*/', at + 2)
      put(end < 0 ? source.length : end + 2, false)
    } else if (char === '"' || char === "'") {
      const close = closingQuote(source, at, char)
      // An apostrophe in markup text closes on no later quote of its line: it is not a string.
      put(close === null ? at + 1 : close, close === null || strings === 'keep')
    } else if (char === '`') putTemplate(at + 1)
    else if (char === '/' && beginsRegex(out)) put(regexEnd(source, at), strings === 'keep')
    else {
      if (char === '{') depth += 1
      if (char === '}') {
        if (templates.length > 0 && templates[templates.length - 1] === depth) {
          templates.pop()
          putTemplate(at + 1)
          continue
        }
        depth -= 1
      }
      put(at + 1, true)
    }
  }
  return out.join('')
}

function closingQuote(source: string, from: number, quote: string): number | null {
  for (let end = from + 1; end < source.length && source[end] !== '\n'; end++) {
    if (source[end] === '\\') end += 1
    else if (source[end] === quote) return end + 1
  }
  return null
}

function beginsRegex(before: readonly string[]): boolean {
  const tail = before.slice(-200).join('').trimEnd()
  return tail === '' || /[(,=:[!&|?{};+\-*%~^<>]$/.test(tail) || regexAfterWord.test(tail)
}

function regexEnd(source: string, from: number): number {
  let inClass = false
  for (let end = from + 1; end < source.length && source[end] !== '\n'; end++) {
    const char = source[end]
    if (char === '\\') end += 1
    else if (char === '[') inClass = true
    else if (char === ']') inClass = false
    else if (char === '/' && !inClass) return end + 1
  }
  return from + 1
}
