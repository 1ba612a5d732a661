import { useEffect, useState } from 'react'

const tickMs = 1_000

/** The clock of this machine, UTC ms, renewed every second. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = window.setInterval(() => setNow(Date.now()), tickMs)
    return () => window.clearInterval(timer)
  }, [])
  return now
}
