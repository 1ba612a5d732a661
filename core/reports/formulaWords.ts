const step = (text: string): string => {
  const whole = /^(?:one|1) (?<thing>.+)$/.exec(text)?.groups?.thing
  if (whole !== undefined) return `a whole ${whole}`
  return /^[\p{L}]/u.test(text) ? `the ${text}` : `a multiple of ${text}`
}

/** Where the parenthesis that was opened before `from` closes, and the last comma at its own depth. */
function argumentsEnd(formula: string, from: number): { comma: number; end: number } | undefined {
  let [depth, comma] = [0, -1]
  for (let i = from; i < formula.length; i++) {
    if (formula[i] === '(') depth++
    else if (formula[i] === ')') {
      if (depth === 0) return comma < 0 ? undefined : { comma, end: i }
      depth--
    } else if (depth === 0 && formula.startsWith(', ', i)) comma = i
  }
  return undefined
}

/**
 * A figure's formula, or the same with numbers put in, as people read it: `roundUp(x, step)` and `round(x, step)` in
 * words, in parentheses where more of the formula follows.
 */
export function formulaWords(formula: string): string {
  const call = /\bround(?<up>Up)?\(/.exec(formula)
  if (!call) return formula
  const start = call.index + call[0].length
  const found = argumentsEnd(formula, start)
  if (!found) return formula
  const before = formula.slice(0, call.index)
  const after = formula.slice(found.end + 1)
  const verb = call.groups?.up ? 'rounded up to' : 'rounded to'
  const rounded = `${formulaWords(formula.slice(start, found.comma))}, ${verb} ${step(formula.slice(found.comma + 2, found.end))}`
  return formulaWords(`${before}${before === '' && after === '' ? rounded : `(${rounded})`}${after}`)
}
