import { type Ref, useId } from 'react'

export interface ChoiceFieldOf<T extends string> {
  readonly label: string
  readonly value: T
  readonly choices: readonly (readonly [T, string])[]
  readonly onSet: (value: T) => void
  readonly ref?: Ref<HTMLSelectElement>
}

/** Words longer than this are cut in half the width of the ledger. */
const mostLetters = 13

/** One of a few, by its word. */
export function ChoiceField<T extends string>({ label, value, choices, onSet, ref }: ChoiceFieldOf<T>) {
  const id = useId()
  const isWide = choices.some(([, words]) => words.length > mostLetters)
  return (
    <div className={isWide ? 'measure wide' : 'measure'}>
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
