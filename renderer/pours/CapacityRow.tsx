import type { ClockMissing, SlabCapacity } from '../../core/plan/planCapacity'
import { openHours } from '../../core/pours/provisionalDay'
import { areaUnits } from '../../core/units/areaUnits'
import type { Measures } from '../../core/units/measures'
import { printMeasures } from '../../core/units/printMeasures'
import { defaults } from '../../shared/settings'
import { printHour } from '../app/printDate'
import { usePlan, useSession } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { TypedField } from './TypedField'

/** The largest pour, what rules it, what else there is to hold it against, and the box to set it. */
export function CapacityRow({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { capacities, isOld } = usePlan(({ parts, revs, rev, failure }) => ({
    capacities: parts.capacities,
    isOld: failure === null && revs.capacities !== rev,
  }))
  const { site } = live
  const print = printMeasures(site.units)
  const own = site.capacity?.capM2
  const least = capacities?.reduce<SlabCapacity | null>(
    (low, each) => (low === null || each.capM2 < low.capM2 ? each : low),
    null,
  )
  const capM2 = own ?? least?.capM2 ?? site.settings?.capM2 ?? defaults.capM2.value
  const unit = areaUnits[site.units]
  const differ = new Set(capacities?.map(each => each.capM2)).size > 1
  return (
    <section aria-label="Capacity" data-waiting={isOld || undefined}>
      <header>
        <h2>At most {print.area(capM2)} a pour</h2>
        <span>{isOld ? 'being renewed' : ''}</span>
      </header>
      <div className="note">
        {least ? <Rules live={live} capacity={least} print={print} /> : null}
        {differ
          ? capacities?.map(each => (
              <p key={each.slabId}>
                {live.slabs.find(({ id }) => id === each.slabId)?.name}: {print.area(each.capM2)}
              </p>
            ))
          : null}
        <TypedField
          label={`Largest pour, ${unit.name}`}
          text={own === undefined ? '' : String(Math.round(own / unit.m2))}
          onText={typed => {
            if (typed.trim() === '') {
              session.site.edit('largest pour', draft => {
                delete draft.capacity
              })
              return null
            }
            const value = Number(typed.replace(/,/g, ''))
            if (!(value > 0))
              return 'A largest pour is an area over zero. Leave it empty to let crew and practice rule.'
            session.site.edit('largest pour', draft => {
              draft.capacity = { capM2: value * unit.m2 }
            })
            return null
          }}
        />
      </div>
    </section>
  )
}

const missingWords: Readonly<Record<ClockMissing, string>> = {
  crew: 'no crew is entered',
  weather: 'no weather is entered',
  hands: 'the crew is too small to place and stamp',
  usableWeather: 'the weather cannot be used for this date',
  setHours: 'the weather’s hours end before the concrete sets',
}

function Rules({
  live,
  capacity: { rule, userM2, practiceM2, crew, capM2, clock, clockMissing },
  print,
}: {
  readonly live: LivePlan
  readonly capacity: SlabCapacity
  readonly print: Measures
}) {
  const { place, units } = live.site
  const crewWords =
    crew === null
      ? 'This crew’s own answer: not known until crew and weather are given.'
      : `This crew: ${print.area(crew.areaM2)} with ${crew.hands} hands from ${printHour(crew.startMs, place.zone, units, true)} in this weather.`
  const at = (ms: number): string => printHour(ms, place.zone, units, true)
  const hoursWords =
    clock === null
      ? `Joints are held against sun and shade by usual hours: ${missingWords[clockMissing ?? 'weather']}.`
      : `Joints are held against sun and shade from ${at(clock.startMs)} to ${at(clock.startMs + openHours(capM2, clock) * 3_600_000)}, as this crew places and stamps.`
  const practice = `Common practice: ${print.area(practiceM2)}.`
  return (
    <>
      <p>
        <b>
          {rule === 'userCap'
            ? `You set ${print.area(userM2 ?? 0)}, and that rules.`
            : rule === 'crewAndWeather'
              ? 'Crew and weather rule it.'
              : 'Common practice rules it.'}
        </b>
      </p>
      <p>{rule === 'crewAndWeather' ? `${crewWords} ${practice}` : `${practice} ${crewWords}`}</p>
      <p>{hoursWords}</p>
    </>
  )
}
