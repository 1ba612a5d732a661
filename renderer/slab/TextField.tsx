import { useId, useState } from 'react'
import { useToldHere } from '../editor/useToldHere'
import { Fault } from './Fault'
import { useDropOnChange } from './useDropOnChange'

/** A name: kept when the field is left or Enter is pressed. */
export function TextField({
  label,
  value,
  onSet,
}: {
  readonly label: string
  readonly value: string
  /** Returns why the words were refused, if they were. */
  readonly onSet: (value: string) => string | null
}) {
  const [text, setText] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const toldHere = useToldHere()
  const id = useId()
  useDropOnChange(value, () => {
    setText(null)
    setFault(null)
  })
  const commit = () => {
    setFault(text === null || text === value ? null : toldHere(onSet(text)))
    setText(null)
  }
  return (
    <div className="measure wide">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        data-set={text === null || undefined}
        value={text ?? value}
        aria-invalid={fault !== null || undefined}
        aria-describedby={fault ? `${id}-fault` : undefined}
        onChange={event => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') commit()
          else if (event.key === 'Escape' && (text !== null || fault !== null)) {
            setText(null)
            setFault(null)
            event.preventDefault()
          }
        }}
      />
      <Fault words={fault} id={`${id}-fault`} />
    </div>
  )
}
