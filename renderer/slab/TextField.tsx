import { useId, useState } from 'react'

/** A name: kept when the field is left or Enter is pressed. */
export function TextField({
  label,
  value,
  onSet,
}: {
  readonly label: string
  readonly value: string
  readonly onSet: (value: string) => void
}) {
  const [text, setText] = useState<string | null>(null)
  const id = useId()
  const commit = () => {
    if (text !== null && text !== value) onSet(text)
    setText(null)
  }
  return (
    <div className="measure wide">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={text ?? value}
        onChange={event => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') commit()
          else if (event.key === 'Escape') setText(null)
        }}
      />
    </div>
  )
}
