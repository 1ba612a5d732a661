/** The local day of an instant, as YYYY-MM-DD. */
export function localDay(at: Date): string {
  const two = (value: number) => String(value).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}

/** The IANA zone of this machine. */
export function localZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone
}
