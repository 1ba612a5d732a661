import type { ReactNode } from 'react'

/** A line of the ledger that is looked up, not computed from the drawing. */
export function PlainRow({
  name,
  figure,
  unit = '',
  kind = '',
  isWaiting = false,
  swatch,
}: {
  readonly name: string
  readonly figure: string
  readonly unit?: string
  readonly kind?: string
  readonly isWaiting?: boolean
  readonly swatch?: ReactNode
}) {
  return (
    <div className={['row', kind, isWaiting ? 'waiting' : ''].join(' ')}>
      <span />
      <span>
        {swatch}
        {name}
      </span>
      <span className="v">
        {figure} <small>{unit}</small>
      </span>
    </div>
  )
}
