import { type Ref, useId } from 'react'

export interface ChoiceFieldOf<T extends string> {
  readonly label: string
  readonly value: T
  readonly choices: readonly (readonly [T, string])[]
  readonly onSet: (value: T) => void
  readonly ref?: Ref<HTMLSelectElement>
}

/** One of a few, by its word. */
export function ChoiceField<T extends string>({ label, value, choices, onSet, ref }: ChoiceFieldOf<T>) {
  const id = useId()
  return (
    <div className="measure">
      <label htmlFor={id}>{label}</label>
      <select id={id} ref={ref} value={value} onChange={event => onSet(event.target.value as T)}>
        {choices.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </div>
  )
}
