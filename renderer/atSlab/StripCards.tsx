import { isSetKnown } from '../../core/pours/day/dayProblem'
import type { SlabStep } from '../../core/pours/slab/nextSteps'
import type { SlabPlan, SlabStrip } from '../../core/pours/slab/planAtSlab'
import type { Measures } from '../../core/units/measures'
import type { LogLoad } from '../../shared/document/day'
import type { UnitSystem } from '../../shared/document/site'
import { LoadReadings } from './LoadReadings'
import type { Reading } from './readings'
import type { Happened } from './tapSlab'

const stateWords: Readonly<Record<SlabStrip['state'], string>> = {
  toPlace: 'to place',
  placed: 'placed',
  ready: 'ready',
  stamped: 'stamped',
}

type Act = { readonly what: 'placed' | 'ready' | 'stamped'; readonly words: string }
const acts: Readonly<Record<SlabStrip['state'], Act | null>> = {
  toPlace: { what: 'placed', words: 'Placed' },
  placed: { what: 'ready', words: 'Ready' },
  ready: { what: 'stamped', words: 'Stamped' },
  stamped: null,
}

/** Loads and strips, each with what can be said of it next. */
export function StripCards({
  plan,
  clock,
  print,
  onTap,
  next,
  measured,
  guess,
  units,
  onLog,
}: {
  readonly plan: SlabPlan
  readonly clock: (ms: number) => string
  readonly print: Measures
  readonly onTap: (what: Happened) => void
  readonly next: SlabStep | undefined
  /** What was read off the loads. */
  readonly measured: readonly LogLoad[]
  readonly guess: Readonly<Record<Reading, number>>
  readonly units: UnitSystem
  readonly onLog: (no: number, of: Reading, value: number) => void
}) {
  const loadWords = { toBatch: 'not batched', onTheWay: 'on the way', onSite: 'on site', empty: 'empty' } as const
  return (
    <>
      <ul className="slab-cards" aria-label="Loads">
        {plan.loads.map(load => {
          const act =
            load.state === 'toBatch'
              ? ({ what: 'batched', words: 'Batched' } as const)
              : load.state === 'onTheWay'
                ? ({ what: 'onSite', words: 'On site' } as const)
                : null
          return (
            <li key={load.no} className={next?.load === load.no ? 'on' : undefined}>
              <p>
                <b className="slab-name">Load {load.no}</b> {loadWords[load.state]}
                <span className="slab-times">
                  {load.state === 'toBatch'
                    ? `batch ${clock(load.batchMs)}, here ${clock(load.onSiteMs)}`
                    : `here ${clock(load.onSiteMs)}`}
                  {load.state === 'onSite' ? `, about ${print.volume(load.leftM3)} left` : ''}
                  {load.packages > 0 ? `, ${load.packages} ${load.packages === 1 ? 'package' : 'packages'} in` : ''}
                </span>
              </p>
              {act ? (
                <button
                  type="button"
                  className="slab-btn"
                  aria-label={`Load ${load.no}: ${act.words}`}
                  onClick={() => onTap({ what: act.what, load: load.no })}
                >
                  {act.words}
                </button>
              ) : null}
            </li>
          )
        })}
      </ul>
      <ul className="slab-cards" aria-label="Measured">
        {plan.loads
          .filter(({ state }) => state === 'onSite' || state === 'empty')
          .map(load => (
            <LoadReadings
              key={load.no}
              seen={measured.find(({ no }) => no === load.no)}
              {...{ load, guess, units, onLog }}
            />
          ))}
      </ul>
      <ul className="slab-cards" aria-label="Strips">
        {plan.strips.map((strip, i) => {
          const act = acts[strip.state]
          const isOpen = strip.state !== 'toPlace' || i === 0 || plan.strips[i - 1]!.state !== 'toPlace'
          return (
            <li key={strip.id} className={next?.strip === strip.id ? 'on' : undefined} data-state={strip.state}>
              <p>
                <b className="slab-name">Strip {strip.id}</b> {stateWords[strip.state]}
                {strip.doseMin > 0 ? `, +${strip.doseMin} min` : ''}
                <span className="slab-times">{tellTimes(strip, clock)}</span>
              </p>
              {act && isOpen ? (
                <button
                  type="button"
                  className="slab-btn"
                  aria-label={`Strip ${strip.id}: ${act.words}`}
                  onClick={() => onTap({ what: act.what, strip: strip.id })}
                >
                  {act.words}
                </button>
              ) : null}
            </li>
          )
        })}
      </ul>
    </>
  )
}

function tellTimes(strip: SlabStrip, clock: (ms: number) => string): string {
  const slack = Math.round(strip.slackMin)
  if (strip.state === 'stamped') return `at ${clock(strip.stampToMs)}`
  if (!isSetKnown(strip)) return 'times unknown'
  const room = slack < 0 ? `${-slack} min short` : `${slack} min slack`
  if (strip.state === 'toPlace') return `place by ${clock(strip.placedMs)}, ${room}`
  const ready =
    strip.state === 'ready'
      ? `ready ${clock(strip.readyMs)}`
      : `ready ${clock(strip.readyP10Ms)} to ${clock(strip.readyP90Ms)}`
  return `${ready}, too hard ${clock(strip.tooHardMs)}, ${room}`
}
