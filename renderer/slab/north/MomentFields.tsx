import { useId, useState } from 'react'
import { instantOf } from '../../../core/sun/siteDay'
import type { Place, Site } from '../../../shared/document/site'
import type { Finding, Result } from '../../../shared/problem'
import { hasPlace } from '../../app/emptySite'
import { useSession } from '../../app/session'

/** A minute by the site's clock. */
export interface Moment {
  /** `YYYY-MM-DD` */
  readonly date: string
  /** `HH:MM` */
  readonly time: string
}

/** The day of the plan, and noon, until something else is typed. */
export function useMoment(): readonly [Moment, (moment: Moment) => void] {
  const { plan } = useSession()
  return useState<Moment>(() => ({ date: plan.getState().date, time: '12:00' }))
}

export function momentMs({ date, time }: Moment, { place }: Site): Result<number, readonly Finding[]> {
  const at = instantOf(date, time, undefined, place.zone)
  return at.ok ? { ok: true, value: at.value.ms } : at
}

/** When the shadow was looked at. */
export function MomentFields({
  moment,
  place,
  onSet,
}: {
  readonly moment: Moment
  readonly place: Place
  readonly onSet: (moment: Moment) => void
}) {
  const id = useId()
  return (
    <>
      <div className="measure">
        <label htmlFor={`${id}-date`}>Day</label>
        <input
          id={`${id}-date`}
          type="date"
          value={moment.date}
          onChange={event => onSet({ ...moment, date: event.target.value })}
        />
      </div>
      <div className="measure">
        <label htmlFor={`${id}-time`} title={place.zone}>
          Time by the site’s clock
        </label>
        <input
          id={`${id}-time`}
          type="time"
          value={moment.time}
          onChange={event => onSet({ ...moment, time: event.target.value })}
        />
      </div>
      {hasPlace(place) ? null : (
        <p className="told">
          No place is set yet: the sun is that of the middle of the United States. Set the place of the site first.
        </p>
      )}
    </>
  )
}
