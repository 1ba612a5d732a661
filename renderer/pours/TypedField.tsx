import { type KeyboardEvent, useId, useState } from 'react'
import { useDropOnChange } from '../slab/useDropOnChange'

/** A box that is read when it is left or Enter is pressed; what it cannot take is quoted under it. */
export function TypedField({
  label,
  text,
  type = 'text',
  isLong = false,
  onText,
}: {
  readonly label: string
  readonly text: string
  readonly type?: 'text' | 'date' | 'number'
  /** Words of several lines: Enter begins another, and what is typed is taken when the box is left or with Ctrl+Enter. */
  readonly isLong?: boolean
  /** Null when taken, else why not. */
  readonly onText: (typed: string) => string | null
}) {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const drop = () => {
    setTyped(null)
    setFault(null)
  }
  useDropOnChange(text, drop)
  const commit = (value: string | null) => {
    const refused = value === null || value === text ? null : onText(value)
    setFault(refused)
    // A date is typed part by part: what stands in the box stays until the date is another one.
    if (refused === null && type !== 'date') setTyped(null)
  }
  const box = {
    id,
    value: typed ?? text,
    'data-set': typed === null || undefined,
    'aria-invalid': fault !== null,
    'aria-describedby': fault === null ? undefined : `${id}-fault`,
    onBlur: () => commit(typed),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter' && (!isLong || event.ctrlKey || event.metaKey)) commit(typed)
      else if (event.key === 'Escape') drop()
    },
  }
  return (
    <span className="typed-field">
      <label htmlFor={id}>{label}</label>
      {isLong ? (
        <textarea {...box} rows={rowsOf(box.value)} onChange={event => setTyped(event.target.value)} />
      ) : (
        <input
          {...box}
          type={type}
          onChange={event => {
            setTyped(event.target.value)
            if (type === 'date') commit(event.target.value)
          }}
        />
      )}
      {fault ? (
        <small id={`${id}-fault`} role="alert">
          {fault}
        </small>
      ) : null}
    </span>
  )
}

/** Letters of a line in the narrowest ledger. */
const lineLetters = 60

/** Lines that show all words, up to a dozen. */
const rowsOf = (words: string): number =>
  Math.min(
    12,
    words.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / lineLetters)), 0),
  )
