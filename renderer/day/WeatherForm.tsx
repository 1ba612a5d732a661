import { useId, useState } from 'react'
import { hourlyConditions } from '../../core/weather/hourlyConditions'
import type { WeatherHour } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { useSession } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { ChoiceField } from '../slab/ChoiceField'
import { Fault } from '../slab/Fault'
import { DayInWords } from './DayInWords'
import { takeWeather } from './takeWeather'
import { tellAge, tellFetched } from './tellWeather'

const ways = [
  ['day', 'The day in a few numbers'],
  ['table', 'An hourly table or file'],
  ['forecast', 'The public forecast, US'],
] as const
type Way = (typeof ways)[number][0]

/** Weather in, by the way that is at hand. `date` = the day it is wanted for. */
export function WeatherForm({ site, date }: { readonly site: Site; readonly date: string }) {
  const [way, setWay] = useState<Way>(site.conditions?.kind === 'hourly' ? 'table' : 'day')
  return (
    <div className="fields">
      <div className="wide">
        <ChoiceField label="From" value={way} choices={ways} onSet={setWay} />
      </div>
      {way === 'day' ? <DayInWords key={JSON.stringify(site.conditions)} site={site} date={date} /> : null}
      {way === 'table' ? <HourlyTable site={site} date={date} /> : null}
      {way === 'forecast' ? <PublicForecast site={site} date={date} /> : null}
    </div>
  )
}

/** Takes the hours, or says what is wrong with them. */
function useHours(site: Site, date: string) {
  const session = useSession()
  return (hours: readonly WeatherHour[], source: string): string | null =>
    takeWeather(session, hourlyConditions(hours, date, site.place.zone, source))
}

function HourlyTable({ site, date }: { readonly site: Site; readonly date: string }) {
  const take = useHours(site, date)
  const [text, setText] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const id = useId()
  const read = async (own: string, source: string) => {
    const { readWeatherText } = await import('../../core/weather/readWeatherText')
    const made = readWeatherText(own, { date, zone: site.place.zone })
    const words = made.ok ? take(made.value.hours, source) : wordFindings(site, made.error.slice(0, 3))
    setFault(words)
    if (words === null) setText('')
  }
  return (
    <>
      <div className="measure wide">
        <label htmlFor={id}>Paste it here, the names of its columns first</label>
        <textarea
          id={id}
          rows={5}
          value={text}
          spellCheck={false}
          placeholder={'time, temperature, dew point, wind, sky cover, chance of rain\n6 am, 61, 48, 4, 10, 0'}
          aria-invalid={fault !== null || undefined}
          onChange={event => {
            setFault(null)
            setText(event.target.value)
          }}
        />
      </div>
      <button type="button" className="btn" onClick={() => void read(text, 'hourly table')}>
        Read the table
      </button>
      <label className="measure wide">
        <span>Or choose a file: table (CSV) or hourly weather (EPW)</span>
        <input
          type="file"
          accept=".csv,.tsv,.txt,.epw,text/csv,text/plain"
          onChange={event => {
            const [file] = event.target.files ?? []
            event.target.value = ''
            if (file) void file.text().then(own => read(own, file.name))
          }}
        />
      </label>
      <Fault words={fault} />
      <p className="told">
        °F, mph and % unless the table says otherwise; times by the clock of the site. Rows without a date are of {date}
        .
      </p>
    </>
  )
}

function PublicForecast({ site, date }: { readonly site: Site; readonly date: string }) {
  const { host } = useSession()
  const take = useHours(site, date)
  const [state, setState] = useState<{ readonly fault: string | null; readonly told: string | null } | 'asking'>({
    ...{ fault: null, told: null },
  })
  const ask = async () => {
    setState('asking')
    const { latDeg, lonDeg } = site.place
    const answer = await host.forecast({ latDeg, lonDeg })
    if (!answer.ok || answer.value.outcome === 'none') {
      const reason = answer.ok && answer.value.outcome === 'none' ? answer.value.reason : 'the program did not answer'
      const finding = { code: 'forecastBadAnswer', severity: 'stop', values: { reason } } as const
      setState({ fault: wordFindings(site, [finding]), told: null })
      return
    }
    const { hours, source, fetchedAt, ageMin } = answer.value
    const fault = take(hours, `${source}, ${tellFetched(site, fetchedAt)}`)
    setState({ fault, told: fault === null ? `Taken: ${tellAge(ageMin)}.` : null })
  }
  const isAsking = state === 'asking'
  return (
    <>
      <button
        type="button"
        className="btn"
        aria-disabled={isAsking || undefined}
        onClick={() => (isAsking ? undefined : void ask())}
      >
        {isAsking ? 'Asking' : 'Ask for this place'}
      </button>
      {isAsking ? null : <Fault words={state.fault} />}
      <p className="told" role="status">
        {!isAsking && state.told
          ? state.told
          : 'The US National Weather Service is told where the site lies, and nothing else. Only places in the United States.'}
      </p>
    </>
  )
}
