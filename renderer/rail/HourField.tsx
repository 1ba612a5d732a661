import { useState } from 'react'
import type { UnitSystem } from '../../shared/document/site'
import { parseHour } from './parseHour'

/** The hour shown, to be typed over. */
export function HourField({
  text,
  units,
  onHour,
}: {
  readonly text: string
  readonly units: UnitSystem
  /** What is wrong with that hour, or null. */
  readonly onHour: (minutes: number) => string | null
}) {
  // Null while nothing is being typed: the box follows the hour.
  const [typed, setTyped] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const minutes = parseHour(typed ?? text)
  const commit = () => {
    setTyped(null)
    if (typed === null || typed === text) return
    if (minutes === null) {
      setFault(`“${typed}” is no hour of the day.`)
      return
    }
    // Between one and five on a working day means the afternoon, unless the morning is written out.
    const isAfternoon = units === 'ftin' && /^\s*[1-5](\D|$)/.test(typed) && !/[ap]m?\s*$/i.test(typed)
    setFault(onHour(isAfternoon ? minutes + 720 : minutes))
  }
  return (
    <>
      <input
        className="hour-field"
        aria-label="Hour"
        inputMode="numeric"
        value={typed ?? text}
        aria-invalid={minutes === null}
        onChange={event => {
          setFault(null)
          setTyped(event.target.value)
        }}
        onBlur={() => {
          if (typed !== null) commit()
          else setFault(null)
        }}
        onFocus={event => event.target.select()}
        onKeyDown={event => {
          if (event.key === 'Enter') commit()
          else if (event.key === 'Escape') {
            setFault(null)
            setTyped(null)
          }
        }}
      />
      {fault ? (
        <span className="rail-fault" role="alert">
          {fault}
        </span>
      ) : null}
    </>
  )
}
