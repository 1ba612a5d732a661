import { useId, useState } from 'react'
import { Fault } from './Fault'
import { useDropOnChange } from './useDropOnChange'

export interface NumberFieldOf {
  readonly label: string
  readonly value: number
  readonly unit?: string
  readonly min: number
  readonly max: number
  readonly step?: number
  readonly onSet: (value: number) => void
}

/** A plain number; outside its range it is refused where it stands. */
export function NumberField({ label, value, unit, min, max, step = 1, onSet }: NumberFieldOf) {
  const [text, setText] = useState<string | null>(null)
  const id = useId()
  const typed = text === null ? value : Number(text)
  const isRefused = text !== null && (text.trim() === '' || !Number.isFinite(typed) || typed < min || typed > max)
  useDropOnChange(value, () => setText(null))
  const commit = () => {
    if (text !== null && !isRefused && typed !== value) onSet(typed)
    if (!isRefused) setText(null)
  }
  return (
    <div className="measure">
      <label htmlFor={id}>
        {label}
        {/* A degree sign never ends a line. */}
        {unit ? ` (${unit.replace(/^° /, '°\u00a0')})` : ''}
      </label>
      <input
        id={id}
        type="number"
        min={min}
        max={max}
        step={step}
        data-set={text === null || undefined}
        value={text ?? value}
        aria-invalid={isRefused || undefined}
        aria-describedby={isRefused ? `${id}-fault` : undefined}
        onChange={event => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') commit()
          else if (event.key === 'Escape' && text !== null) {
            setText(null)
            event.preventDefault()
          }
        }}
      />
      <Fault words={isRefused ? `Between ${min} and ${max}.` : null} id={`${id}-fault`} />
    </div>
  )
}
