/** What is read beside the plan follows a moving hand at a reader's pace, and is exact once the hand rests. */
import { createStore, type StoreApi } from 'zustand/vanilla'

export type Shown<T> = Omit<StoreApi<T>, 'setState'>

/** While a hand moves, what is read beside the plan is written no more often. */
export const calmMs = 100

interface Timers {
  readonly setTimer: (call: () => void, ms: number) => unknown
}

/**
 * Follows a store: a change after a rest at once, those that come sooner after it together, `calmMs` after the last
 * one shown. What it shows was the state of the whole store at some time: never part of it.
 */
export function createCalmStore<T>(source: Shown<T>, { setTimer }: Timers): Shown<T> {
  const store = createStore<T>(() => source.getState())
  let isResting = true
  const show = () => {
    if (store.getState() === source.getState()) {
      isResting = true
      return
    }
    isResting = false
    setTimer(show, calmMs)
    store.setState(source.getState(), true)
  }
  source.subscribe(() => {
    if (isResting) show()
  })
  return store
}
