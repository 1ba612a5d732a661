import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import type { SlabWeather } from '../../core/concrete/slabWeather'
import { logReading, logTap, type PourStart, removeTap } from '../../core/document/commands/logTaps'
import type { PlannedPour } from '../../core/plan/plan'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { delayInDrum, type RetarderOf } from '../../core/pours/day/retarder'
import { markPoured } from '../../core/pours/slab/markPoured'
import { lateAfterMin, type SlabStep } from '../../core/pours/slab/nextSteps'
import { pourStart } from '../../core/pours/slab/pourStart'
import { utcMinute } from '../../core/pours/slab/slabState'
import { printSpan, tellPlan, tellStep } from '../../core/pours/slab/slabWords'
import { printMeasures } from '../../core/units/printMeasures'
import type { LogLoad, LogTap } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import { printHour } from '../app/printDate'
import { useSession, useView } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { Fixes } from './Fixes'
import { FrontPanel } from './FrontPanel'
import { OtherPours } from './OtherPours'
import { StripCards } from './StripCards'
import { Troubles } from './Troubles'
import { type Happened, measureTap, tapSlab } from './tapSlab'
import { endName, tellTap } from './tapWords'
import { useNow } from './useNow'
import { useSlabDay } from './useSlabDay'

const minuteMs = 60_000
const warmMs = 200

export interface SlabDeskOf {
  readonly site: Site
  readonly day: PourDayPlan
  readonly pour: PlannedPour
  readonly taps: readonly LogTap[]
  /** What was read off the loads. */
  readonly loads: readonly LogLoad[]
  readonly days: readonly PourDayPlan[]
}

/** Where the steps of a slump begin: 4 in, common practice, no source. */
const usualSlumpMm = 101.6

const airAt = ({ airC, fromMs, stepMs, steps }: SlabWeather, ms: number): number =>
  airC[Math.min(steps - 1, Math.max(0, Math.floor((ms - fromMs) / stepMs)))]!

const counter = (id: string): number => Number(/\d+$/.exec(id)?.[0] ?? 0)

export function SlabDesk({ site, day, pour, taps, loads, days }: SlabDeskOf) {
  const session = useSession()
  const notice = useView(state => state.notice)
  const now = useNow()
  const minute = Math.floor(now / minuteMs) * minuteMs
  const slab = useSlabDay(day, pour, taps, loads, minute)
  const [before, setBefore] = useState<number | null>(null)
  const [isHelpAsked, setIsHelpAsked] = useState(false)
  const [isEnding, setIsEnding] = useState<{ readonly comeM?: number } | null>(null)
  const shown = useRef<readonly LogTap[]>(taps)
  useLayoutEffect(() => {
    if (shown.current !== taps) measureTap()
    shown.current = taps
  }, [taps])
  const print = useMemo(() => printMeasures(site.units), [site.units])
  const start = useMemo(() => pourStart(site, day), [site, day])
  useWarmChecks(pour.id, site, day, start)
  const clock = (ms: number) => printHour(ms, site.place.zone, site.units, true)
  if (!slab || !start) return <p className="slab-say">This pour cannot be planned.</p>
  const { state, plan, steps, front, balance } = slab
  const write = (what: Happened, agoMin = 0) => {
    setBefore(plan?.slackMin ?? null)
    const atUtc = utcMinute(Date.now() - agoMin * minuteMs)
    const tap = { ...what, atUtc, source: 'tap' as const }
    tapSlab(session, tellTap({ ...tap, id: 't1' }, print).toLowerCase(), logTap(pour.id, tap, start))
  }
  const last = taps.reduce<LogTap | null>(
    (newest, tap) => (newest === null || counter(tap.id) > counter(newest.id) ? tap : newest),
    null,
  )
  const end = (comeM?: number) => {
    const to = { region: pour.region, areaM2: pour.areaM2, direction: day.direction }
    const stop = comeM === undefined ? {} : { comeM }
    tapSlab(session, endName(pour.number), markPoured(pour.id, utcMinute(Date.now()), start, { ...to, ...stop }))
    setIsEnding(null)
  }
  const isTight = plan !== null && plan.slackMin !== null && plan.slackMin < 0
  const airC = airAt(day.input.weather, minute)
  const guess = {
    tempC: day.input.mix.placedTempC ?? airC + settingValue(site.settings, 'placedOverAirK'),
    ...{ slumpMm: usualSlumpMm, airC, waterL: 0 },
  }
  const [next] = steps
  const late = steps.filter(({ dueMs, what }) => what !== 'done' && dueMs < now - lateAfterMin * minuteMs)
  return (
    <>
      <div className="slab-desk">
        <div className="slab-now">
          {next && plan ? (
            <NextPanel
              key={`${next.what} ${next.load} ${next.strip}`}
              step={next}
              words={tellStep(next, day.input, plan, print, clock)}
              now={now}
              onDone={(happened, agoMin) => (next.what === 'done' ? setIsEnding({}) : write(happened, agoMin))}
              retarder={day.input}
            />
          ) : null}
          <div className="slab-sentence" role="status" aria-live="polite">
            <p>{plan ? tellPlan(day.input, plan, state, clock, before) : wordFindings(site, slab.findings)}</p>
            {late.length > 1 || (late.length === 1 && late[0] !== next) ? (
              <p>
                Late:{' '}
                {late
                  .map(step => {
                    const name = plan ? tellStep(step, day.input, plan, print, clock).ask.replace('?', '') : ''
                    return `${name.charAt(0).toLowerCase()}${name.slice(1)}, ${printSpan(now - step.dueMs)}`
                  })
                  .join('; ')}
                .
              </p>
            ) : null}
            {notice ? <p>{notice}</p> : null}
          </div>
          {plan === null || (isHelpAsked && isTight) ? (
            <Fixes
              fixesOf={slab.fixes}
              isShort={plan === null}
              print={print}
              onTap={write}
              onStop={comeM => setIsEnding({ comeM })}
            />
          ) : isTight ? (
            <button type="button" className="slab-btn" aria-expanded={false} onClick={() => setIsHelpAsked(true)}>
              What would help?
            </button>
          ) : null}
          {last ? (
            <button
              type="button"
              className="slab-btn"
              onClick={() => {
                tapSlab(session, 'last tap', removeTap(last.id))
                setBefore(null)
                // With the first tap of the pour this button goes, too.
                setTimeout(() => {
                  if (document.activeElement === document.body)
                    document.querySelector<HTMLElement>('.slab-next .main')?.focus()
                })
              }}
            >
              Undo: {tellTap(last, print)}, {clock(Date.parse(last.atUtc))}
            </button>
          ) : null}
          {plan ? <Troubles plan={plan} state={state} onTap={write} clock={clock} /> : null}
          {taps.length === 0 ? <OtherPours days={days} site={site} pourId={pour.id} /> : null}
        </div>
        <div className="slab-ground">
          {plan ? (
            <FrontPanel
              {...{ pour, day, plan, state, front, balance, print, clock, units: site.units, now }}
              clockShort={ms => printHour(ms, site.place.zone, site.units)}
              onTap={write}
              onStop={comeM => setIsEnding({ comeM })}
            />
          ) : null}
          {plan ? (
            <StripCards
              {...{ plan, clock, print, next, guess, units: site.units }}
              measured={loads}
              onTap={write}
              onLog={(no, of, value) => {
                setBefore(plan.slackMin)
                tapSlab(session, `reading of load ${no}`, logReading(pour.id, no, { [of]: value }, start))
              }}
            />
          ) : null}
        </div>
      </div>
      {isEnding ? (
        <EndPour
          number={pour.number}
          at={isEnding.comeM === undefined ? null : print.length(isEnding.comeM)}
          onEnd={() => end(isEnding.comeM)}
          onStay={() => setIsEnding(null)}
        />
      ) : null}
    </>
  )
}

/** The first tap is to be as quick as the next: what checks it runs once, to no effect. */
function useWarmChecks(pourId: string, site: Site, day: PourDayPlan, start: PourStart | null): void {
  const isWarm = useRef(false)
  useEffect(() => {
    if (!start || isWarm.current) return
    const timer = window.setTimeout(() => {
      isWarm.current = true
      logTap(pourId, { what: 'batched', load: 1, atUtc: utcMinute(day.plan.startMs), source: 'tap' }, start)(site)
    }, warmMs)
    return () => window.clearTimeout(timer)
  }, [pourId, site, day, start])
}

function NextPanel({
  step,
  words,
  now,
  onDone,
  retarder,
}: {
  readonly step: SlabStep
  readonly words: { readonly ask: string; readonly detail: string; readonly done: string }
  readonly now: number
  readonly onDone: (happened: Happened, agoMin?: number) => void
  readonly retarder: RetarderOf
}) {
  const [count, setCount] = useState(step.packages ?? 1)
  const main = useRef<HTMLButtonElement>(null)
  // The button that was pressed is gone with its step: hands on keys go on with the next.
  useEffect(() => {
    if (document.activeElement === document.body) main.current?.focus()
  }, [])
  const leftMs = step.dueMs - now
  const isLate = leftMs < -lateAfterMin * minuteMs
  const happened: Happened = {
    what: step.what,
    ...(step.load === undefined ? {} : { load: step.load }),
    ...(step.strip === undefined || step.what === 'dosed' ? {} : { strip: step.strip }),
  }
  const dosed = (packages: number): Happened => ({
    ...happened,
    count: packages,
    minutes: packages === 0 ? 0 : Math.round(delayInDrum(step.inDrumMin ?? 0, packages, step.leftM3 ?? 0, retarder)),
  })
  return (
    <section className={isLate ? 'slab-next late' : 'slab-next'} aria-label="Next">
      <h2 aria-live="polite">{words.ask}</h2>
      <p className="slab-left">
        {step.isTimeless ? null : (
          <b className={isLate ? 'slab-due late' : 'slab-due'}>
            {leftMs >= minuteMs ? `in ${printSpan(leftMs)}` : isLate ? `${printSpan(-leftMs)} late` : 'now'}
          </b>
        )}{' '}
        {words.detail}
      </p>
      {step.what === 'dosed' ? (
        <div className="slab-row">
          <button type="button" className="slab-btn" disabled={count <= 1} onClick={() => setCount(count - 1)}>
            One less
          </button>
          <button type="button" ref={main} className="slab-btn main" onClick={() => onDone(dosed(count))}>
            {count === 1 ? '1 package in' : `${count} packages in`}
          </button>
          <button type="button" className="slab-btn" onClick={() => setCount(count + 1)}>
            One more
          </button>
          <button type="button" className="slab-btn" onClick={() => onDone(dosed(0))}>
            None
          </button>
        </div>
      ) : (
        <div className="slab-row">
          <button type="button" ref={main} className="slab-btn main grow" onClick={() => onDone(happened)}>
            {words.done}
          </button>
          {step.what === 'done' ? null : (
            <button type="button" className="slab-btn" onClick={() => onDone(happened, 5)}>
              5 min ago
            </button>
          )}
        </div>
      )}
    </section>
  )
}

/** The one thing here that cannot be tapped away: the shape is frozen as built. */
function EndPour({
  number,
  at,
  onEnd,
  onStay,
}: {
  readonly number: string
  readonly at: string | null
  readonly onEnd: () => void
  readonly onStay: () => void
}) {
  const stay = useRef<HTMLButtonElement>(null)
  useEffect(() => stay.current?.focus(), [])
  return (
    <div className="slab-dimmed">
      <div
        role="alertdialog"
        aria-modal="true"
        aria-labelledby="end-pour"
        className="slab-ask"
        onKeyDown={event => {
          if (event.key !== 'Escape') return
          event.stopPropagation()
          onStay()
        }}
      >
        <h2 id="end-pour">{at === null ? `End pour ${number}?` : `Stop pour ${number} at ${at}?`}</h2>
        <p>
          {at === null
            ? 'Its shape is kept as built; no later change of the plan moves it.'
            : 'The header stands there: a construction joint. What lies ahead becomes a pour of its own.'}
        </p>
        <div className="slab-row">
          <button ref={stay} type="button" className="slab-btn grow" onClick={onStay}>
            Go on pouring
          </button>
          <button type="button" className="slab-btn main grow" onClick={onEnd}>
            {at === null ? 'End the pour' : 'Stop there'}
          </button>
        </div>
      </div>
    </div>
  )
}
