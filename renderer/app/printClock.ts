const clock = { hour: 'numeric', minute: '2-digit' } as const
const minutes = new Intl.DateTimeFormat('en-US', clock)
const seconds = new Intl.DateTimeFormat('en-US', { ...clock, second: '2-digit' })

/** A time by the machine's own clock: "4:00 pm", or "4:00:09 pm" where several may fall in one minute. */
export const printClock = (at: Date, to: 'minute' | 'second' = 'minute'): string =>
  (to === 'minute' ? minutes : seconds).format(at).toLowerCase()
