import { useRef } from 'react'
import { inNextFrame } from '../../app/frames'

export interface NextFrame {
  /** Runs in the next frame; of several asked for before it, only the last. */
  later(run: () => void): void
  /** Runs at once what waits. */
  flush(): void
}

/** Takes the moves of a hand together, once a frame. */
export function useNextFrame(): NextFrame {
  const frame = useRef<{ id: number; run: () => void } | null>(null)
  return {
    later(run) {
      if (frame.current) {
        frame.current.run = run
        return
      }
      const waiting = {
        run,
        id: inNextFrame(() => {
          frame.current = null
          waiting.run()
        }),
      }
      frame.current = waiting
    },
    flush() {
      const waiting = frame.current
      if (!waiting) return
      cancelAnimationFrame(waiting.id)
      frame.current = null
      waiting.run()
    },
  }
}
