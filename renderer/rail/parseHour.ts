/** A typed hour as minutes after midnight on the clock: `9:40`, `940`, `9`, `2pm`, `14:30`; null where it is none. */
export function parseHour(typed: string): number | null {
  const match = /^\s*(\d{1,2})(?:[:.h]?(\d{2}))?\s*(am?|pm?)?\s*$/i.exec(typed)
  if (!match) return null
  const minutes = Number(match[2] ?? 0)
  const half = match[3]?.[0]?.toLowerCase()
  let hours = Number(match[1])
  if (half !== undefined && (hours < 1 || hours > 12)) return null
  if (half === 'p' && hours < 12) hours += 12
  if (half === 'a' && hours === 12) hours = 0
  return hours > 23 || minutes > 59 ? null : hours * 60 + minutes
}
