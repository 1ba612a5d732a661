import '../slab/slab.css'
import type { Site } from '../../shared/document/site'
import { Fold } from '../app/Fold'
import { usePlan } from '../app/session'
import { CrewForm, HoursForm, MixForm } from './CrewForm'
import { tellCrew, tellWeather } from './tellWeather'
import { WeatherForm } from './WeatherForm'

/** What a day of pouring is planned from: who, what and in which weather. */
export function DayForms({ site }: { readonly site: Site }) {
  const date = usePlan(state => state.date)
  return (
    <section className="slab-form" aria-label="Crew, mix and weather">
      <Fold name="Crew" told={tellCrew(site)}>
        <CrewForm site={site} />
      </Fold>
      <Fold name="Weather" told={tellWeather(site)}>
        <WeatherForm site={site} date={date} />
      </Fold>
      <Fold name="Mix" told={site.mix?.minutesFromPlant === undefined ? '' : `${site.mix.minutesFromPlant} min away`}>
        <MixForm site={site} />
      </Fold>
      <Fold name="Hours and finish" told="">
        <HoursForm site={site} />
      </Fold>
    </section>
  )
}
