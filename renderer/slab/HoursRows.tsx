import { useRef } from 'react'
import type { Hours } from '../../shared/document/primitives'
import { ChoiceField } from './ChoiceField'
import { HourSpan } from './HourSpan'

/** 1 = Monday. */
const daySets = {
  every: [1, 2, 3, 4, 5, 6, 7],
  weekdays: [1, 2, 3, 4, 5],
  weekend: [6, 7],
  saturday: [6],
  sunday: [7],
} as const
type DaySet = keyof typeof daySets | 'other'
const dayChoices: readonly (readonly [DaySet, string])[] = [
  ['every', 'Every day'],
  ['weekdays', 'Monday to Friday'],
  ['weekend', 'Saturday and Sunday'],
  ['saturday', 'Saturday'],
  ['sunday', 'Sunday'],
]

const setOf = ({ weekdays }: Hours): DaySet =>
  (Object.keys(daySets) as (keyof typeof daySets)[]).find(
    key => daySets[key].length === weekdays.length && daySets[key].every(day => weekdays.includes(day)),
  ) ?? 'other'

/** Hours of the week: days and a span of the clock, row by row. */
export function HoursRows({
  name,
  rows,
  first,
  onSet,
}: {
  readonly name: string
  readonly rows: readonly Hours[]
  /** A new row. */
  readonly first: Hours
  readonly onSet: (rows: readonly Hours[]) => void
}) {
  const add = useRef<HTMLButtonElement>(null)
  const change = (i: number, part: Partial<Hours>) => onSet(rows.map((row, k) => (k === i ? { ...row, ...part } : row)))
  return (
    <>
      {rows.map((row, i) => {
        const days = setOf(row)
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no id; their order is all there is
          <fieldset className="finish" key={i}>
            <legend>
              {name} {i + 1}
            </legend>
            <ChoiceField
              label="Days"
              value={days}
              choices={days === 'other' ? [...dayChoices, ['other', `${row.weekdays.length} days`]] : dayChoices}
              onSet={to => {
                if (to !== 'other') change(i, { weekdays: [...daySets[to]] })
              }}
            />
            <button
              type="button"
              className="btn"
              onClick={() => {
                // The last row of the page goes, whichever was taken away.
                if (i === rows.length - 1) add.current?.focus()
                onSet(rows.filter((_, k) => k !== i))
              }}
            >
              Remove
            </button>
            <HourSpan span={row} onSet={({ from, to }) => change(i, { from, to })} />
          </fieldset>
        )
      })}
      <button type="button" className="btn" ref={add} onClick={() => onSet([...rows, first])}>
        Add {name.charAt(0).toLowerCase()}
        {name.slice(1)}
      </button>
    </>
  )
}
