/** True for a name of the IANA time zone database, as the host's Intl knows it; a bare offset is no zone. */
export const isKnownZone = (zone: string): boolean => {
  if (!/^[A-Za-z]/.test(zone)) return false
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: zone }) !== undefined
  } catch {
    return false
  }
}
