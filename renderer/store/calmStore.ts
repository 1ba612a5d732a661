/** What is read beside the plan follows a moving hand at a reader's pace, and is exact once the hand rests. */
import { createStore, type StoreApi } from 'zustand/vanilla'

export type Shown<T> = Omit<StoreApi<T>, 'setState'>

export type CalmStore<T> = Shown<T> & {
  /** Shows what is so now, without waiting. */
  readonly catchUp: () => void
}

/** While a hand moves, what is read beside the plan is not written again sooner. */
export const calmMs = 50
/** For so many frames that carried a move the writing waits for one that carries none. */
export const busyFrames = 2

export interface CalmOf {
  readonly setTimer: (call: () => void, ms: number) => unknown
  /** Calls once the frame that shows what is being done now has been handed over. */
  readonly afterFrame: (call: () => void) => void
  /** Calls in the next frame, once a key pressed in it has done its work. */
  readonly inNextFrame: (call: () => void) => void
}

/**
 * Follows a store: a change after a rest in the frame after its own, those that come sooner after it together, in a
 * frame without a move if one comes in time. What it shows was the state of the whole store at some time: never part
 * of it.
 */
export function createCalmStore<T>(source: Shown<T>, { setTimer, afterFrame, inNextFrame }: CalmOf): CalmStore<T> {
  const store = createStore<T>(() => source.getState())
  let isResting = true
  const show = () => {
    if (store.getState() !== source.getState()) store.setState(source.getState(), true)
  }
  const look = () => {
    if (store.getState() === source.getState()) {
      isResting = true
      return
    }
    const showInFreeFrame = (waited: number) =>
      afterFrame(() => {
        const before = source.getState()
        inNextFrame(() => {
          if (source.getState() !== before && waited < busyFrames) {
            showInFreeFrame(waited + 1)
            return
          }
          show()
          setTimer(look, calmMs)
        })
      })
    showInFreeFrame(0)
  }
  source.subscribe(() => {
    if (!isResting) return
    isResting = false
    look()
  })
  return Object.assign(store, { catchUp: show })
}
