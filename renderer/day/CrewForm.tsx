import type { Command } from '../../core/document/commands/editSite'
import { setCalendar, setCrew, setMix } from '../../core/document/commands/setSite'
import type { Calendar, Crew, Mix } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { useSession } from '../app/session'
import { TypedField } from '../pours/TypedField'
import { ChoiceField } from '../slab/ChoiceField'
import { HoursRows } from '../slab/HoursRows'
import { NumberField } from '../slab/NumberField'
import { AmountField } from './AmountField'
import { minuteScale, sackScale, tempScale } from './scales'

const firstCrew: Crew = { hands: 4, experience: 'steady', crews: 1, daysOff: [] }
const experienceWords: readonly (readonly [Crew['experience'], string])[] = [
  ['new', 'New to stamping'],
  ['steady', 'Steady'],
  ['seasoned', 'Seasoned'],
]

const useEdit = () => {
  const session = useSession()
  return (name: string, command: Command) => {
    applyEdit(session, name, command)
  }
}

export function CrewForm({ site: { crew } }: { readonly site: Site }) {
  const edit = useEdit()
  const set = (change: Partial<Crew>) => edit('crew', setCrew({ ...(crew ?? firstCrew), ...change }))
  return (
    <div className="fields">
      {crew ? (
        <>
          <NumberField label="Hands of a crew" value={crew.hands} min={1} max={30} onSet={hands => set({ hands })} />
          <NumberField label="Crews" value={crew.crews} min={1} max={6} onSet={crews => set({ crews })} />
          <ChoiceField
            label="Experience"
            value={crew.experience}
            choices={experienceWords}
            onSet={experience => set({ experience })}
          />
          <TypedField
            label="Days off, dates with commas"
            text={crew.daysOff.join(', ')}
            onText={typed => {
              const daysOff = typed.split(/[,;\s]+/).filter(day => day !== '')
              const wrong = daysOff.find(day => !/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(Date.parse(day)))
              if (wrong !== undefined) return `“${wrong}” is no date: type it as 2026-07-24.`
              set({ daysOff })
              return null
            }}
          />
        </>
      ) : (
        <button type="button" className="btn" onClick={() => set({})}>
          Begin with four steady hands
        </button>
      )}
    </div>
  )
}

type Told = 'untold'
const colorWords: readonly (readonly [NonNullable<Mix['color']> | Told, string])[] = [
  ['untold', 'Not told'],
  ['light', 'Light'],
  ['medium', 'Medium'],
  ['dark', 'Dark'],
]

export function MixForm({ site: { mix = {}, units } }: { readonly site: Site }) {
  const edit = useEdit()
  const set = <K extends keyof Mix>(key: K, value: Mix[K] | undefined) => {
    const { [key]: _, ...rest } = mix
    edit('mix', setMix(value === undefined ? rest : { ...rest, [key]: value }))
  }
  return (
    <div className="fields">
      <AmountField
        label="From the plant"
        value={mix.minutesFromPlant}
        scale={minuteScale(180)}
        onSet={value => set('minutesFromPlant', value)}
      />
      <AmountField
        label="Cement"
        value={mix.sacksPerYd3}
        scale={sackScale}
        places={1}
        onSet={value => set('sacksPerYd3', value)}
      />
      <AmountField
        label="Concrete as placed"
        value={mix.placedTempC}
        scale={{ ...tempScale[units], least: units === 'ftin' ? 32 : 0, most: units === 'ftin' ? 110 : 43 }}
        onSet={value => set('placedTempC', value)}
      />
      <AmountField
        label="Sets later by admixtures"
        value={mix.setsLaterMin}
        scale={{ ...minuteScale(240), least: -120 }}
        onSet={value => set('setsLaterMin', value)}
      />
      <ChoiceField
        label="Color of the surface"
        value={mix.color ?? 'untold'}
        choices={colorWords}
        onSet={color => set('color', color === 'untold' ? undefined : color)}
      />
      <p className="told">
        How soon it sets on a 70 °F (21 °C) morning is asked in Log, and learned there from each pour.
      </p>
    </div>
  )
}

const firstCalendar: Calendar = { plantHours: [], noiseHours: [], weatherDays: 0 }

export function HoursForm({ site: { calendar = firstCalendar } }: { readonly site: Site }) {
  const edit = useEdit()
  const set = (name: string, change: Partial<Calendar>) => edit(name, setCalendar({ ...calendar, ...change }))
  return (
    <div className="fields">
      <HoursRows
        name="Plant hours"
        rows={calendar.plantHours}
        first={{ weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '16:00' }}
        onSet={plantHours => set('plant hours', { plantHours: [...plantHours] })}
      />
      <HoursRows
        name="Hours with noise"
        rows={calendar.noiseHours}
        first={{ weekdays: [1, 2, 3, 4, 5], from: '07:00', to: '19:00' }}
        onSet={noiseHours => set('noise hours', { noiseHours: [...noiseHours] })}
      />
      <TypedField
        label="Finished by"
        type="date"
        text={calendar.finishBy ?? ''}
        onText={typed => {
          const { finishBy: _, ...rest } = calendar
          edit('finish date', setCalendar(typed === '' ? rest : { ...rest, finishBy: typed }))
          return null
        }}
      />
      <NumberField
        label="Weather days to allow for"
        value={calendar.weatherDays}
        min={0}
        max={60}
        onSet={weatherDays => set('weather days', { weatherDays })}
      />
    </div>
  )
}
