import type { ReactNode } from 'react'
import { focusBefore } from '../focusBefore'

/** One answer to an offer, which goes with it: the focus goes to what stands before. */
export function OfferAct({
  children,
  onAct,
  isMain = false,
  takesFocus = false,
}: {
  readonly children: ReactNode
  readonly onAct: () => void
  readonly isMain?: boolean
  /** It stands in place of what had the focus. */
  readonly takesFocus?: boolean
}) {
  return (
    <button
      type="button"
      className={isMain ? 'btn main' : 'btn'}
      // biome-ignore lint/a11y/noAutofocus: only where what was pressed has gone
      autoFocus={takesFocus}
      onClick={event => {
        focusBefore(event.currentTarget.closest('.offer'))
        onAct()
      }}
    >
      {children}
    </button>
  )
}
