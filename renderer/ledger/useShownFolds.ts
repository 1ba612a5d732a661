import { type RefObject, useEffect } from 'react'

/** A form that is opened at the foot of the ledger comes into view with what stands in it. `page`: which ledger stands there. */
export function useShownFolds(ledger: RefObject<HTMLElement | null>, page: string | null): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: each page is an element of its own
  useEffect(() => {
    const element = ledger.current
    if (!element) return
    const show = ({ target }: Event) => {
      if (!(target instanceof HTMLDetailsElement) || !target.open) return
      // Its fields may be made only now.
      requestAnimationFrame(() => {
        target.scrollIntoView({ block: target.offsetHeight > element.clientHeight ? 'start' : 'nearest' })
      })
    }
    // The event does not rise: it is heard on its way down.
    element.addEventListener('toggle', show, true)
    return () => element.removeEventListener('toggle', show, true)
  }, [ledger, page])
}
