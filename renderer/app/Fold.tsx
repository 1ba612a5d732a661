import { useState } from 'react'

/** A form under its name, with what stands in it told beside; its fields are made when they are asked for. */
export function Fold({
  name,
  told,
  children,
}: {
  readonly name: string
  readonly told: string
  readonly children: React.ReactNode
}) {
  const [isOpen, setOpen] = useState(false)
  return (
    <details onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>
        {name}
        {told === '' ? null : <small>: {told}</small>}
      </summary>
      {isOpen ? children : null}
    </details>
  )
}
