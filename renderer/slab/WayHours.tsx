import { setWayHours } from '../../core/document/commands/addAccess'
import type { Way } from '../../shared/document/day'
import type { Hours } from '../../shared/document/primitives'
import { ChoiceField } from './ChoiceField'
import { useRun } from './useRun'

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

/** When a door or gate must be usable. */
export function WayHours({ way: { id, open } }: { readonly way: Way }) {
  const run = useRun()
  const set = (rows: readonly Hours[]) => run('hours of the way', setWayHours(id, rows))
  const change = (i: number, part: Partial<Hours>) => set(open.map((row, k) => (k === i ? { ...row, ...part } : row)))
  return (
    <>
      <h3>Must be usable</h3>
      <div className="fields">
        {open.map((row, i) => {
          const days = setOf(row)
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no id; their order is all there is
            <fieldset className="finish" key={i}>
              <legend>Hours {i + 1}</legend>
              <ChoiceField
                label="Days"
                value={days}
                choices={days === 'other' ? [...dayChoices, ['other', `${row.weekdays.length} days`]] : dayChoices}
                onSet={to => {
                  if (to !== 'other') change(i, { weekdays: [...daySets[to]] })
                }}
              />
              <button type="button" className="btn" onClick={() => set(open.filter((_, k) => k !== i))}>
                Take away
              </button>
              {(['from', 'to'] as const).map(key => (
                <label className="measure" key={key}>
                  <span>{key === 'from' ? 'From' : 'Until'}</span>
                  <input
                    type="time"
                    value={row[key]}
                    onChange={event => {
                      if (event.target.value) change(i, { [key]: event.target.value })
                    }}
                  />
                </label>
              ))}
            </fieldset>
          )
        })}
        <button
          type="button"
          className="btn"
          onClick={() => set([...open, { weekdays: [...daySets.every], from: '07:00', to: '22:00' }])}
        >
          Add hours
        </button>
      </div>
    </>
  )
}
