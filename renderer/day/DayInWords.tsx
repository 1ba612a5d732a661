import { useState } from 'react'
import type { Conditions } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { useSession } from '../app/session'
import { ChoiceField } from '../slab/ChoiceField'
import { Fault } from '../slab/Fault'
import { amountText, parseAmount, type Scale } from './AmountField'
import { percentScale, tempScale, windScale } from './scales'
import { takeWeather } from './takeWeather'

type Day = Extract<Conditions, { kind: 'day' }>
type Amount = 'highC' | 'lowC' | 'dewPointC' | 'windMs' | 'rainChance'

const names: Readonly<Record<Amount, string>> = {
  highC: 'High',
  lowC: 'Low',
  dewPointC: 'Dew point',
  windMs: 'Wind, as forecast',
  rainChance: 'Chance of rain',
}
const skyWords: readonly (readonly [Day['sky'], string])[] = [
  ['sunny', 'Sunny'],
  ['some', 'Some clouds'],
  ['mostly', 'Mostly cloudy'],
  ['overcast', 'Overcast'],
]

/** High, low, dew point, wind and sky: the hours follow a published daily curve. */
export function DayInWords({ site, date }: { readonly site: Site; readonly date: string }) {
  const session = useSession()
  const { units, conditions } = site
  const own = conditions?.kind === 'day' ? conditions : undefined
  const scales: Readonly<Record<Amount, Scale>> = {
    ...{ highC: tempScale[units], lowC: tempScale[units], dewPointC: tempScale[units] },
    ...{ windMs: windScale[units], rainChance: percentScale },
  }
  const amounts = Object.keys(names) as Amount[]
  const [typed, setTyped] = useState(
    () => Object.fromEntries(amounts.map(key => [key, amountText(own?.[key], scales[key])])) as Record<Amount, string>,
  )
  const [day, setDay] = useState(own?.date ?? date)
  const [sky, setSky] = useState<Day['sky']>(own?.sky ?? 'sunny')
  const [fault, setFault] = useState<string | null>(null)
  const use = () => {
    const read = Object.fromEntries(amounts.map(key => [key, parseAmount(typed[key], scales[key])]))
    const wrong = amounts.find(key => read[key] === null)
    const missing = amounts.find(key => key !== 'rainChance' && read[key] === undefined)
    if (wrong) {
      const { least, most, unit } = scales[wrong]
      setFault(`${names[wrong]}: “${typed[wrong]}” is not taken, a number from ${least} to ${most} ${unit}.`)
      return
    }
    if (missing || day === '') {
      setFault(`${missing ? names[missing] : 'The date'} is missing.`)
      return
    }
    const { rainChance, ...told } = read as Record<Amount, number | undefined>
    const whole = { kind: 'day', date: day, sky, ...told, ...(rainChance === undefined ? {} : { rainChance }) }
    setFault(takeWeather(session, whole as Day))
  }
  return (
    <>
      <label className="measure wide">
        <span>Date</span>
        <input type="date" value={day} onChange={event => setDay(event.target.value)} />
      </label>
      {amounts.map(key => (
        <label className="measure" key={key}>
          <span>
            {names[key]}, {scales[key].unit}
          </span>
          <input
            type="text"
            inputMode="decimal"
            value={typed[key]}
            onChange={event => {
              setFault(null)
              setTyped({ ...typed, [key]: event.target.value })
            }}
            onKeyDown={event => {
              if (event.key === 'Enter') use()
            }}
          />
        </label>
      ))}
      <ChoiceField label="Sky" value={sky} choices={skyWords} onSet={setSky} />
      <button type="button" className="btn" onClick={use}>
        Use this weather
      </button>
      <Fault words={fault} />
    </>
  )
}
