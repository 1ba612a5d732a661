import { useId, useState } from 'react'
import type { Hours } from '../../shared/document/primitives'
import { Fault } from './Fault'
import { useDropOnChange } from './useDropOnChange'

type Span = Pick<Hours, 'from' | 'to'>

/** Why a span of the clock is none, in words; `null` where it is one. Both of a day, `HH:MM`. */
export const spanFault = ({ from, to }: Span): string | null =>
  from < to ? null : 'Until must be later than From. Hours past midnight go into a row of their own.'

/** From and until, on one day: what is no span is told and not set, and stays in the boxes to be mended. */
export function HourSpan({ span, onSet }: { readonly span: Span; readonly onSet: (span: Span) => void }) {
  const [typed, setTyped] = useState<Span | null>(null)
  const id = useId()
  useDropOnChange(`${span.from} ${span.to}`, () => setTyped(null))
  const shown = typed ?? span
  const fault = typed && spanFault(typed)
  const take = (next: Span) => {
    if (spanFault(next) === null && (next.from !== span.from || next.to !== span.to)) onSet(next)
    setTyped(spanFault(next) === null ? null : next)
  }
  return (
    <>
      {(['from', 'to'] as const).map(key => (
        <label className="measure" key={key}>
          <span>{key === 'from' ? 'From' : 'Until'}</span>
          <input
            type="time"
            value={shown[key]}
            aria-invalid={fault !== null || undefined}
            aria-describedby={fault ? id : undefined}
            onChange={event => {
              if (event.target.value) take({ ...shown, [key]: event.target.value })
            }}
          />
        </label>
      ))}
      <Fault words={fault} id={id} />
    </>
  )
}
