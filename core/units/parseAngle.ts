/** `45`, `45.5°`, `43°36′54.5″`, `43° 36.9′`, `43-36-54`, `43 36 54`: degrees, minutes, seconds. */
const parts =
  /^(\d+(?:\.\d+)?)(?:\s*°\s*|\s*-\s*|\s+|$)(?:(\d+(?:\.\d+)?)(?:\s*['′’]\s*|\s*-\s*|\s+|$)(?:(\d+(?:\.\d+)?)\s*(?:["″”]|''|$))?)?$/

/**
 * An angle in degrees as it is read off an instrument or a deed: decimal, or degrees, minutes and seconds by their marks,
 * by hyphens or by spaces. Undefined for anything else, for minutes or seconds of 60 and more, and for a fraction of what
 * is followed by smaller parts. Without a sign.
 */
export function parseAngle(text: string): number | undefined {
  const read = parts.exec(text.trim())
  if (!read) return undefined
  const [, degrees = '', minutes, seconds] = read
  if (minutes !== undefined && (degrees.includes('.') || Number(minutes) >= 60)) return undefined
  if (seconds !== undefined && (minutes!.includes('.') || Number(seconds) >= 60)) return undefined
  return Number(degrees) + Number(minutes ?? 0) / 60 + Number(seconds ?? 0) / 3600
}
