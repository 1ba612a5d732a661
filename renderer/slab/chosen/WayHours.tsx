import { setWayHours } from '../../../core/document/commands/addAccess'
import type { Way } from '../../../shared/document/day'
import { HoursRows } from '../HoursRows'
import { useRun } from '../useRun'

/** When a door or gate must be usable. */
export function WayHours({ way: { id, open } }: { readonly way: Way }) {
  const run = useRun()
  return (
    <>
      <h3>Must be usable</h3>
      <div className="fields">
        <HoursRows
          name="Hours"
          rows={open}
          first={{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '07:00', to: '22:00' }}
          onSet={rows => run('hours of the way', setWayHours(id, rows))}
        />
      </div>
    </>
  )
}
