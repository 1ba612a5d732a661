import { useEffect, useMemo } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { redatePour } from '../../core/pours/editing/changePour'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { themes } from '../store/viewStore'
import { OtherPours } from './OtherPours'
import { PouredPanel } from './PouredPanel'
import { dateAt, entryOf, isPoured } from './pourToday'
import { SlabCautions } from './SlabCautions'
import { SlabDesk } from './SlabDesk'
import { useNow } from './useNow'
import './atSlab.css'

/** The screen used outdoors on the day: large targets, nothing to type, every tap kept. */
export function AtSlab({ pourId }: { readonly pourId: string }) {
  const { view } = useSession()
  const { slabTheme, cautionsSeen } = useView(({ slabTheme, cautionsSeen }) => ({ slabTheme, cautionsSeen }))
  const { live, pours, days } = usePlan(({ live, parts }) => ({ live, pours: parts.pours, days: parts.dayPlans }))
  const day = days?.find(own => own.pourId === pourId)
  const pour = pours?.find(({ id }) => id === pourId)
  const leave = () => view.setState({ atSlab: null })
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') view.setState({ atSlab: null })
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [view])
  const nextTheme = themes[(themes.indexOf(slabTheme) + 1) % themes.length]!
  return (
    <main className="slab" aria-label="At the slab">
      <header className="slab-top">
        <button type="button" className="slab-btn" onClick={leave}>
          Back to the plan
        </button>
        <SlabTitle day={day} site={live?.site} />
        <button
          type="button"
          className="slab-btn"
          onClick={() => view.setState({ slabTheme: nextTheme })}
          aria-label={`Theme: ${slabTheme}. Change to ${nextTheme}`}
        >
          {slabTheme === 'sunlight' ? 'Sunlight' : slabTheme === 'dark' ? 'Dark' : 'Light'}
        </button>
      </header>
      {!cautionsSeen ? (
        <SlabCautions onSeen={() => view.setState({ cautionsSeen: true })} />
      ) : live && day && pour ? (
        <Under site={live.site} day={day} pour={pour} days={days ?? []} />
      ) : (
        <p className="slab-say" role="status">
          {days ? 'This pour has no day plan: enter the crew and the weather.' : 'Working out the day.'}
        </p>
      )}
    </main>
  )
}

function SlabTitle({ day, site }: { readonly day: PourDayPlan | undefined; readonly site: Site | undefined }) {
  const now = useNow()
  if (!site) return <h1>At the slab</h1>
  const clock = new Intl.DateTimeFormat('en-US', {
    ...{ timeZone: site.place.zone, hour: 'numeric', minute: '2-digit' },
    hour12: site.units === 'ftin',
  }).format(now)
  return (
    <h1>
      <span className="slab-clock">{clock.toLowerCase()}</span>
      <span className="slab-pour">{day ? `Pour ${day.number}, ${printDate(day.date)}` : 'At the slab'}</span>
    </h1>
  )
}

interface UnderOf {
  readonly site: Site
  readonly day: PourDayPlan
  readonly pour: PlannedPour
  readonly days: readonly PourDayPlan[]
}

/** Whichever the pour is: poured, planned for another day, or under way. */
function Under({ site, day, pour, days }: UnderOf) {
  const session = useSession()
  const today = dateAt(useNow(), site.place.zone)
  const entry = entryOf(site, pour.id)
  const taps = useMemo(() => entry?.taps ?? [], [entry])
  const loads = useMemo(() => entry?.loads ?? [], [entry])
  if (isPoured(site, pour.id)) return <PouredPanel site={site} pour={pour} days={days} />
  if (taps.length === 0 && day.date !== today)
    return (
      <section className="slab-other-day" aria-label="Another day">
        <p className="slab-say" role="status">
          Pour {day.number} is planned for {printDate(day.date)}; today is {printDate(today)}. Nothing is logged on
          another day.
        </p>
        <button
          type="button"
          className="slab-btn main"
          onClick={() =>
            applyEdit(session, `day of pour ${day.number}`, of => redatePour(of, pour.id, { date: today }))
          }
        >
          Pour it today
        </button>
        <OtherPours days={days} site={site} pourId={pour.id} />
      </section>
    )
  return <SlabDesk {...{ site, day, pour, taps, loads, days }} />
}
