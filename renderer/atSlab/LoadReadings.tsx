import { useState } from 'react'
import type { SlabLoad } from '../../core/pours/slab/planAtSlab'
import type { LogLoad } from '../../shared/document/day'
import type { UnitSystem } from '../../shared/document/site'
import { type Reading, readings } from './readings'

/** What is measured of a load, stepped to with large targets; each is written into the log by itself. */
export function LoadReadings({
  load,
  seen,
  guess,
  units,
  onLog,
}: {
  readonly load: SlabLoad
  readonly seen: LogLoad | undefined
  /** Where the steps begin. */
  readonly guess: Readonly<Record<Reading, number>>
  readonly units: UnitSystem
  readonly onLog: (no: number, of: Reading, value: number) => void
}) {
  const [isOpen, setIsOpen] = useState(false)
  const known = readings.flatMap(({ of, name, print }) => {
    const value = seen?.[of]
    return value === undefined ? [] : [`${name.toLowerCase()} ${print(value, units)}`]
  })
  return (
    <li>
      <p>
        <b className="slab-name">Load {load.no} measured</b>
        <span className="slab-times">{known.length === 0 ? 'nothing yet' : known.join(', ')}</span>
      </p>
      <button
        type="button"
        className="slab-btn"
        aria-expanded={isOpen}
        aria-label={isOpen ? `Done measuring load ${load.no}` : `Measure load ${load.no}`}
        onClick={() => setIsOpen(!isOpen)}
      >
        {isOpen ? 'Done' : 'Measure'}
      </button>
      {isOpen
        ? readings.map(reading => (
            <Stepper
              key={reading.of}
              no={load.no}
              from={seen?.[reading.of] ?? guess[reading.of]}
              isLogged={seen?.[reading.of] !== undefined}
              {...{ reading, units }}
              onLog={value => onLog(load.no, reading.of, value)}
            />
          ))
        : null}
    </li>
  )
}

function Stepper({
  no,
  reading,
  from,
  isLogged,
  units,
  onLog,
}: {
  readonly no: number
  readonly reading: (typeof readings)[number]
  readonly from: number
  readonly isLogged: boolean
  readonly units: UnitSystem
  readonly onLog: (value: number) => void
}) {
  const { name, step, print, least, most } = reading
  const [value, setValue] = useState(() => reading.round(from, units))
  const [logged, setLogged] = useState<number | null>(isLogged ? value : null)
  const words = print(value, units)
  const [lower, higher] = [-1, 1].map(steps => reading.round(value + steps * step[units], units)) as [number, number]
  return (
    <fieldset className="slab-reading" aria-label={`${name} of load ${no}`}>
      <button
        type="button"
        className="slab-btn"
        aria-label={`${name} lower`}
        disabled={lower < least}
        onClick={() => setValue(lower)}
      >
        −
      </button>
      <output aria-live="polite">
        {name}
        <b>{words}</b>
      </output>
      <button
        type="button"
        className="slab-btn"
        aria-label={`${name} higher`}
        disabled={higher > most}
        onClick={() => setValue(higher)}
      >
        +
      </button>
      <button
        type="button"
        className={logged === value ? 'slab-btn' : 'slab-btn main'}
        aria-label={logged === value ? `${name} ${words} is logged` : `Log ${name.toLowerCase()} ${words}`}
        onClick={() => {
          setLogged(value)
          onLog(value)
        }}
      >
        {logged === value ? 'Logged' : 'Log'}
      </button>
    </fieldset>
  )
}
