import { useEffect, useId, useState } from 'react'

/** A box that is read when it is left or Enter is pressed; what it cannot take is quoted under it. */
export function TypedField({
  label,
  text,
  type = 'text',
  isOnce = false,
  onText,
}: {
  readonly label: string
  readonly text: string
  readonly type?: 'text' | 'date' | 'number'
  /** What is typed is done once, as “3 ft to the left”: the box is empty again. */
  readonly isOnce?: boolean
  /** Null when taken, else why not. */
  readonly onText: (typed: string) => string | null
}) {
  const id = useId()
  const [typed, setTyped] = useState(text)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    setTyped(text)
    setFault(null)
  }, [text])
  const commit = (value: string) => {
    if (value === text) return
    const refused = onText(value)
    setFault(refused)
    if (isOnce && refused === null) setTyped(text)
  }
  return (
    <span className="typed-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={type}
        value={typed}
        aria-invalid={fault !== null}
        onChange={event => {
          setTyped(event.target.value)
          if (type === 'date') commit(event.target.value)
        }}
        onBlur={() => commit(typed)}
        onKeyDown={event => {
          if (event.key === 'Enter') commit(typed)
          else if (event.key === 'Escape') {
            setTyped(text)
            setFault(null)
          }
        }}
      />
      {fault ? <small role="alert">{fault}</small> : null}
    </span>
  )
}
