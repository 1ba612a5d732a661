const known = new Map<string, boolean>()

/** True for a name of the IANA time zone database, as the host's Intl knows it; a bare offset is no zone. */
export const isKnownZone = (zone: string): boolean => {
  const told = known.get(zone)
  if (told !== undefined) return told
  const answer = isOfIntl(zone)
  // Making a format takes longer than the rest of a check; files that name ever other zones must not fill the memory.
  if (known.size < 1_000) known.set(zone, answer)
  return answer
}

const isOfIntl = (zone: string): boolean => {
  if (!/^[A-Za-z]/.test(zone)) return false
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: zone }) !== undefined
  } catch {
    return false
  }
}
