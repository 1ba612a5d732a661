import '../day/day.css'
import { DateTime } from 'luxon'
import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useCallback,
  useEffect,
  useMemo,
  useState,
  type WheelEvent,
} from 'react'
import { compassPoint } from '../../core/reports/compassPoint'
import { atClock, type SiteDay, wholeHours } from '../../core/sun/siteDay'
import type { SunPosition } from '../../core/sun/sunPosition'
import type { Place, UnitSystem } from '../../shared/document/site'
import { inNextFrame } from '../app/frames'
import { printDate, printHour } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { withoutFling } from '../app/withoutFling'
import { dayShift } from './dayShift'
import { HourField } from './HourField'
import { PourRows, SunRows } from './RailRows'
import { type Scale, useScale } from './railScale'
import { type Events, firstLightDeg, type SunCurve, sunCurve } from './sunCurve'

const minuteMs = 60_000
const stepMin = 5
/** How long the whole rail takes when the day is run. */
const runMs = 14_000
/** The words beside the hour are about this wide: near the right end they stand on its left. */
const sunWordsPx = 190
/** Nearer to the end of the day the tag of the hour would be cut by the window. */
const tagPx = 14

/** The strip of hours under the plan: drag it, use the arrow keys, or type the hour. */
export function DayRail() {
  const live = usePlan(state => state.live)
  const day = live?.day ?? null
  if (!live || !day) return null
  return <Rail day={day} place={live.site.place} units={live.site.units} />
}

const Rail = memo(function Rail({
  day,
  place,
  units,
}: {
  readonly day: SiteDay
  readonly place: Place
  readonly units: UnitSystem
}) {
  const { view } = useSession()
  const { stage, minute } = useView(({ stage, minute }) => ({ stage, minute }))
  const sun = usePlan(({ hour }) => hour?.sun)
  const altitude = sun?.altitudeDeg ?? 0
  const events = useEvents(day)
  const curve = useMemo(() => sunCurve(day, place, events.fromMs < events.toMs ? events : null), [day, place, events])
  const [ref, scale] = useScale(curve)
  const [isRunning, setRunning] = useState(false)
  const hourMs = day.startMs + minute * minuteMs

  const setMs = useCallback(
    (ms: number) => {
      const kept = Math.min(curve.toMs, Math.max(curve.fromMs, ms))
      view.setState({ minute: Math.round((kept - day.startMs) / minuteMs) })
    },
    [curve, day, view],
  )

  useEffect(() => {
    if (!isRunning) return
    const begin = performance.now()
    const shownMs = day.startMs + view.getState().minute * minuteMs
    const from = shownMs >= curve.toMs - 10 * minuteMs ? curve.fromMs : shownMs
    const step = () => {
      const at = from + ((performance.now() - begin) / runMs) * (curve.toMs - curve.fromMs)
      setMs(at)
      if (at >= curve.toMs) setRunning(false)
      else frame = inNextFrame(step)
    }
    let frame = inNextFrame(step)
    return () => cancelAnimationFrame(frame)
  }, [isRunning, curve, day, view, setMs])

  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    else if (!event.currentTarget.hasPointerCapture(event.pointerId)) return
    setRunning(false)
    setMs(scale.ms(event.clientX - event.currentTarget.getBoundingClientRect().left))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: stepMin,
      ArrowUp: stepMin,
      ArrowLeft: -stepMin,
      ArrowDown: -stepMin,
      PageUp: 60,
      PageDown: -60,
    }
    const by = steps[event.key]
    if (by !== undefined) setMs(day.startMs + Math.round(minute / stepMin) * stepMin * minuteMs + by * minuteMs)
    else if (event.key === 'Home') setMs(curve.fromMs)
    else if (event.key === 'End') setMs(curve.toMs)
    else return
    event.preventDefault()
    setRunning(false)
  }

  const hourText = printHour(hourMs, day.zone, units)
  const minutes = (ms: number) => Math.round((ms - day.startMs) / minuteMs)
  return (
    <section className="rail" aria-label="Day rail" ref={ref}>
      <div className="rail-words">
        <b>{printDate(day.date)}</b>
        <HourField
          text={hourText}
          units={units}
          onHour={typed => {
            const ms = atClock(day, typed)
            if (ms < curve.fromMs || ms > curve.toMs) {
              const clock = (at: number) => printHour(at, day.zone, units, true)
              return `The hours shown run from ${clock(curve.fromMs)} to ${clock(curve.toMs)}.`
            }
            setMs(ms)
            return null
          }}
        />
        <button
          type="button"
          className="btn bare run-day"
          aria-pressed={isRunning}
          onClick={() => setRunning(was => !was)}
        >
          {isRunning ? 'Hold here' : 'Run the day'}
        </button>
      </div>
      {scale.width > 0 ? (
        <>
          <Strip curve={curve} scale={scale} day={day} units={units} />
          {stage === 'sun' ? <SunRows scale={scale} /> : null}
          {stage === 'pours' ? <PourRows scale={scale} /> : null}
          <div
            ref={withoutFling}
            className="rail-track"
            role="slider"
            tabIndex={0}
            aria-label="Hour shown"
            aria-valuemin={minutes(curve.fromMs)}
            aria-valuemax={minutes(curve.toMs)}
            aria-valuenow={minute}
            aria-valuetext={`${printHour(hourMs, day.zone, units, true)}, ${sunWords(sun)}`}
            onPointerDown={drag}
            onPointerMove={drag}
            onKeyDown={onKeyDown}
            onWheel={scrollRows}
          />
          <div className="rail-hand" style={{ transform: `translateX(${scale.x(hourMs)}px)` }}>
            <span className="rail-tag" data-turned={scale.x(hourMs) > scale.width - tagPx || undefined}>
              {hourText}
            </span>
            {stage === 'sun' || stage === 'pours' ? (
              <span className="rail-sun-words" data-turned={scale.x(hourMs) > scale.width - sunWordsPx || undefined}>
                {sunWords(sun)}
              </span>
            ) : null}
            <span className="rail-ring" style={{ top: `${curveY(altitude, curve)}px` }} />
          </div>
        </>
      ) : null}
    </section>
  )
})

/** The hand lies over the rows: what turns the wheel there means to see more of them. */
const scrollRows = ({ currentTarget, deltaY }: WheelEvent<HTMLDivElement>): void => {
  currentTarget.parentElement?.querySelector('.rail-rows')?.scrollBy({ top: deltaY })
}

/** From the first load of any pour to the end of the last work on it, every pour laid on the clock of the day shown. */
function useEvents(day: SiteDay): Events {
  return usePlan(({ parts }) => {
    const hours = (parts.dayPlans ?? []).map(({ date, plan }) => ({
      from: plan.startMs + dayShift(date, day),
      to: plan.tasks.reduce((last, { toMs }) => Math.max(last, toMs), plan.startMs) + dayShift(date, day),
    }))
    return {
      fromMs: Math.max(day.startMs, Math.min(...hours.map(({ from }) => from))),
      toMs: Math.min(day.endMs, Math.max(...hours.map(({ to }) => to))),
    }
  })
}

/** Height and bearing as one says them on the site. */
const sunWords = (sun: SunPosition | undefined): string =>
  !sun || sun.altitudeDeg < 0
    ? 'sun down'
    : `sun ${Math.round(sun.altitudeDeg)}° high, ${Math.round(sun.azimuthDeg)}° ${compassPoint(sun.azimuthDeg)}`

const strip = { top: 30, height: 42 } as const

const curveY = (altitudeDeg: number, curve: SunCurve): number => {
  const share = Math.max(0, altitudeDeg) / Math.max(30, curve.highestDeg * 1.15)
  return strip.top + strip.height - 3 - share * (strip.height - 8)
}

/** Sky by sun height: night, low light, morning, full day. Colors are the theme's. */
function skyStops(curve: SunCurve): readonly { readonly at: number; readonly color: string }[] {
  const span = curve.toMs - curve.fromMs
  const shown = curve.samples.filter(each => each.ms >= curve.fromMs && each.ms <= curve.toMs)
  const band = (deg: number) => (deg < firstLightDeg ? 0 : deg < 4 ? 1 : deg < 18 ? 2 : 3)
  return shown.flatMap((each, i) => {
    const next = shown[i + 1]
    const previous = shown[i - 1]
    const own = band(each.altitudeDeg)
    const isEdge = !next || !previous || band(next.altitudeDeg) !== own || band(previous.altitudeDeg) !== own
    return isEdge ? [{ at: (each.ms - curve.fromMs) / span, color: `var(--sky-${own})` }] : []
  })
}

const Strip = memo(function Strip({
  curve,
  scale,
  day,
  units,
}: {
  readonly curve: SunCurve
  readonly scale: Scale
  readonly day: SiteDay
  readonly units: UnitSystem
}) {
  const hours = wholeHours(day).filter(ms => ms >= curve.fromMs && ms <= curve.toMs)
  const [x0, x1] = [scale.x(curve.fromMs), scale.x(curve.toMs)]
  const line = curve.samples
    .filter(each => each.ms >= curve.fromMs && each.ms <= curve.toMs && each.altitudeDeg > -1)
    .map(each => `${scale.x(each.ms).toFixed(1)},${curveY(each.altitudeDeg, curve).toFixed(1)}`)
    .join(' ')
  const ticks = hours.flatMap(ms =>
    [0, 15, 30, 45]
      .map(m => ({ x: scale.x(ms + m * minuteMs), length: m === 0 ? 12 : m === 30 ? 8 : 5 }))
      .filter(tick => tick.x < x1),
  )
  const bottom = strip.top + strip.height
  const hourName = (ms: number): string => {
    const at = DateTime.fromMillis(ms, { zone: day.zone })
    if (units === 'metric') return String(at.hour)
    return at.hour === 12 ? '12 noon' : String(at.hour % 12 === 0 ? 12 : at.hour % 12)
  }
  // Every hour where there is room, else every second or third.
  const every = [1, 2, 3, 4].find(n => ((x1 - x0) / hours.length) * n >= 34) ?? 4
  return (
    <svg className="rail-strip" width={scale.width} height={bottom + 6} aria-hidden="true">
      <defs>
        <linearGradient id="sky" x1="0" x2="1">
          {skyStops(curve).map(({ at, color }) => (
            <stop key={at} offset={at} style={{ stopColor: color }} />
          ))}
        </linearGradient>
      </defs>
      <text className="rail-label" x={x0 - 12} y={strip.top + strip.height + 2} textAnchor="end">
        Sun height
      </text>
      <rect className="rail-sky" x={x0} y={strip.top} width={x1 - x0} height={strip.height} fill="url(#sky)" />
      <polyline className="rail-curve" points={line} />
      <path className="rail-ticks" d={ticks.map(({ x, length }) => `M${x.toFixed(1)} ${bottom}v${-length}`).join('')} />
      {hours
        .filter((_, i) => i % every === 0)
        .filter(ms => scale.x(ms) > x0 + 8 && scale.x(ms) < x1 - 8)
        .map(ms => (
          <text key={ms} className="rail-hour" x={scale.x(ms)} y={20} textAnchor="middle">
            {hourName(ms)}
          </text>
        ))}
    </svg>
  )
})
