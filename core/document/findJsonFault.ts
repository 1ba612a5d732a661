import { type PointerStep, toPointer } from './jsonPointer'

export interface JsonFault {
  /** From 1; a column counts characters. */
  readonly line: number
  readonly column: number
  /** The offending text, shortened; empty at the end of the file. */
  readonly found: string
  /** Where in the document, as far as it could be read. */
  readonly field: string
  /** A figure such as NaN, Infinity or +5 stands where a number should. */
  readonly notANumber: boolean
}

interface Frame {
  readonly list: boolean
  step: PointerStep
}

/** No site nests nearly as deep; a text that does is taken as damaged there. */
const deepest = 1000

const literal = /true|false|null/y
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y
const likeANumber = /[+-]?(?:NaN|Infinity|inf|\.?\d[\w.+-]*)/iy
const word = /"[^"\n]{0,22}"?|[^\s,:[\]{}"]{1,24}|./suy

/**
 * Where the string that opens at `start` ends; negative where it breaks off, the offset of the break less one, turned
 * round. By hand, as a picture's string is megabytes long.
 */
const stringEnd = (text: string, start: number): number => {
  for (let at = start + 1; at < text.length; at++) {
    const unit = text.charCodeAt(at)
    if (unit === 0x22) return at + 1
    if (unit < 0x20) return -at - 1
    if (unit !== 0x5c) continue
    escaped.lastIndex = at
    const pair = escaped.exec(text)
    if (pair === null) return -at - 1
    at += pair[0].length - 1
  }
  return -text.length - 1
}

/**
 * Finds where a text stops being JSON (RFC 8259), in one pass without recursion. Gives `undefined` for a text that
 * is JSON of at most 1,000 levels. JSON.parse says the same by throwing, but where it tells the place, each engine words it differently.
 */
export const findJsonFault = (text: string): JsonFault | undefined => {
  const frames: Frame[] = []
  let at = 0
  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at
    const match = pattern.exec(text)
    if (match === null) return undefined
    at += match[0].length
    return match[0]
  }
  const skipSpace = () => {
    for (let unit = text.charCodeAt(at); unit === 0x20 || unit === 0x0a || unit === 0x0d || unit === 0x09; )
      unit = text.charCodeAt(++at)
  }
  const takeString = (): string | undefined => {
    const start = at
    if (text[start] !== '"') return undefined
    const end = stringEnd(text, start)
    at = end < 0 ? -end - 1 : end
    return end < 0 ? undefined : text.slice(start, end)
  }
  const fault = (notANumber: boolean): JsonFault => {
    const before = text.slice(0, at)
    const line = before.split('\n').length
    word.lastIndex = at
    likeANumber.lastIndex = at
    const found = (notANumber ? likeANumber.exec(text) : word.exec(text))?.[0] ?? ''
    return {
      line,
      column: at - (before.lastIndexOf('\n') + 1) + 1,
      // A tab or a line break inside quotes would not show.
      found: /\s/.test(found.charAt(0)) ? `U+${found.charCodeAt(0).toString(16).padStart(4, '0')}` : found.slice(0, 24),
      field: toPointer(frames.map(frame => frame.step)),
      notANumber,
    }
  }
  let expects: 'value' | 'key' | 'after' = 'value'
  let mayClose = false
  for (;;) {
    skipSpace()
    const sign = text[at]
    if (expects === 'after') {
      const top = frames.at(-1)
      if (top === undefined) return at === text.length ? undefined : fault(false)
      if (sign === ',') {
        at++
        if (top.list) top.step = Number(top.step) + 1
        expects = top.list ? 'value' : 'key'
        mayClose = false
      } else if (sign === (top.list ? ']' : '}')) {
        at++
        frames.pop()
      } else return fault(false)
      continue
    }
    const top = frames.at(-1)
    if (mayClose && top !== undefined && sign === (top.list ? ']' : '}')) {
      at++
      frames.pop()
      expects = 'after'
      mayClose = false
      continue
    }
    mayClose = false
    if (expects === 'key') {
      const key = takeString()
      if (key === undefined || top === undefined) return fault(false)
      top.step = JSON.parse(key) as string
      skipSpace()
      if (text[at] !== ':') return fault(false)
      at++
      expects = 'value'
      continue
    }
    if (sign === '[' || sign === '{') {
      if (frames.length === deepest) return fault(false)
      at++
      frames.push({ list: sign === '[', step: sign === '[' ? 0 : '' })
      expects = sign === '[' ? 'value' : 'key'
      mayClose = true
      continue
    }
    if ((takeString() ?? take(literal) ?? take(number)) === undefined) {
      likeANumber.lastIndex = at
      return fault(likeANumber.test(text))
    }
    expects = 'after'
  }
}
