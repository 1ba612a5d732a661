/** Hours and minutes, `2:45` or `2 h 45 min`, or minutes alone, `165`. */
const forms = /^(?:(\d{1,2})\s*(?::|h)\s*([0-5]?\d)?\s*(?:min|m)?|(\d{1,3})\s*(?:min)?)$/i

/** Minutes; undefined for an empty text; null for one that is no time of this kind. */
export function parseSpan(text: string): number | undefined | null {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  const found = forms.exec(trimmed)
  if (!found) return null
  const min = found[3] === undefined ? Number(found[1]) * 60 + Number(found[2] ?? 0) : Number(found[3])
  return min > 0 ? min : null
}

/** As `parseSpan` reads it. */
export const spanText = (min: number | undefined): string =>
  min === undefined ? '' : `${Math.floor(min / 60)}:${String(Math.round(min) % 60).padStart(2, '0')}`
