import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { Site } from '../../shared/document/site'
import { isFinger } from '../app/handWords'
import { printHour } from '../app/printDate'
import { useSession } from '../app/session'
import { withoutFling } from '../app/withoutFling'
import { usePourStart } from '../day/usePourStart'
import type { Scale } from './railScale'

const rowPx = 24
/** A finger takes hold of the row and of its name. */
const fingerRowPx = 44
const minuteMs = 60_000
/** A hand moves the start by this much, keys by three times as much. */
const stepMin = 5

/**
 * The day of one pour: loads as tabs, placing hatched, ready to too hard outlined, stamping solid, and the least slack as
 * a hatched bar with its minutes. Unfolded, each strip has a line of its own with the color hands' work as a thin line,
 * and the border hands one more. Its start is dragged, or moved by the arrow keys.
 */
export function PourDayRow({
  site,
  pour,
  day,
  tint,
  when,
  shiftMs,
  isOpen,
  scale,
}: {
  readonly site: Site
  readonly pour: PlannedPour
  readonly day: PourDayPlan
  readonly tint: number
  readonly when: string
  readonly shiftMs: number
  readonly isOpen: boolean
  readonly scale: Scale
}) {
  const { view } = useSession()
  const { plan, number, pourId } = day
  const { strips, loads, tasks } = plan
  const start = usePourStart(site, pour, day.date)
  // While the plan is on its way the row goes where the hand is.
  const wantedMs = start.wantedMs ?? plan.startMs
  const aheadMs = wantedMs - plan.startMs
  const x = (ms: number) => scale.x(ms + shiftMs + aheadMs)
  const borders = tasks.filter(task => task.name === 'border' && task.job === 'border')
  const lines = strips.length + (borders.length > 0 ? 1 : 0)
  const headPx = isFinger() ? fingerRowPx : isOpen ? rowPx : rowPx + 2
  /** In the middle of a row that is higher than what is drawn in it. */
  const top = isFinger() ? (fingerRowPx - rowPx) / 2 : 0
  const line = (index: number) => (isOpen ? headPx + rowPx * index : top)
  const height = isOpen ? headPx + rowPx * lines : headPx
  const ink = `var(--p${tint}-ink)`
  const tight = strips.find(({ id }) => id === plan.tightestStripId)
  const slack = slackWords(plan.slackMin)
  const lastX = Math.max(...strips.map(({ tooHardMs, stampToMs }) => x(Math.max(tooHardMs, stampToMs))))
  const words = aheadMs !== 0 ? 'being planned again' : tight ? `${slack} in ${tight.id}` : slack
  const clock = (ms: number) => printHour(ms, site.place.zone, site.units, true)
  const bar = (from: number, to: number) => ({ x: x(from), width: Math.max(1, x(to) - x(from)) })
  const label = `Pour ${number}, ${when}: ${loads.length === 1 ? '1 load' : `${loads.length} loads`}, ${words}`
  return (
    <li className="rail-row" style={{ height }} aria-label={label} data-waiting={aheadMs !== 0 || undefined}>
      <button
        type="button"
        className="rail-row-name rail-fold"
        aria-expanded={isOpen}
        onClick={() => view.setState({ selection: isOpen ? [] : [pourId] })}
      >
        <span className={`tint tint-${tint}`}>{number}</span>
        {when}
      </button>
      <svg width={scale.width} height={height} aria-hidden="true">
        <defs>
          <pattern
            id={`placing-${pourId}`}
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0v5" stroke="var(--table-ink)" strokeWidth="2" />
          </pattern>
          <pattern
            id={`slack-${pourId}`}
            width="4"
            height="4"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(-45)"
          >
            <path d="M0 0v4" stroke="var(--paint)" strokeWidth="1.6" />
          </pattern>
        </defs>
        {loads.map(load => (
          <path
            key={load.no}
            d={`M${x(load.onSiteMs).toFixed(1)} ${top + 1}h9v5h-9z`}
            fill="var(--raised)"
            stroke="var(--table-ink)"
          />
        ))}
        {strips.map((strip, i) => {
          const y = line(i)
          return (
            <g key={strip.id}>
              <rect
                {...bar(strip.placeMs, strip.placedMs)}
                y={y + 8}
                height={9}
                fill={`url(#placing-${pourId})`}
                stroke="var(--table-ink)"
              />
              {isOpen
                ? tasks
                    .filter(task => task.stripId === strip.id && task.job === 'color' && task.name !== 'touchUp')
                    .map(task => (
                      <path
                        key={`${task.name} ${task.fromMs}`}
                        className="rail-color-work"
                        d={`M${x(task.fromMs).toFixed(1)} ${y + 20.5}H${x(task.toMs).toFixed(1)}`}
                      />
                    ))
                : null}
              <rect
                {...bar(strip.readyMs, strip.tooHardMs)}
                y={y + 7}
                height={12}
                fill={`var(--p${tint})`}
                stroke={ink}
              />
              <rect {...bar(strip.stampFromMs, strip.stampToMs)} y={y + 10} height={6} fill={ink} />
              {strip === tight ? (
                <>
                  <rect
                    {...bar(Math.min(strip.stampToMs, strip.tooHardMs), Math.max(strip.stampToMs, strip.tooHardMs))}
                    y={y + 7}
                    height={12}
                    fill={`url(#slack-${pourId})`}
                  />
                  <path d={`M${x(strip.tooHardMs).toFixed(1)} ${y + 5}v16`} stroke="var(--paint)" strokeWidth="2.5" />
                </>
              ) : null}
              {isOpen ? (
                <text className="rail-strip-name" x={x(strip.placeMs) - 6} y={y + 17} textAnchor="end">
                  {strip.id}
                  {strip.doseMin > 0 ? ` +${strip.doseMin} min` : ' plain'}
                </text>
              ) : null}
            </g>
          )
        })}
        {isOpen && borders.length > 0 ? (
          <g>
            {borders.map(task => (
              <rect
                key={task.stripId}
                className="rail-border-work"
                {...bar(task.fromMs, task.toMs)}
                y={line(strips.length) + 8}
                height={9}
              />
            ))}
            <text
              className="rail-strip-name"
              x={x(borders[0]!.fromMs) - 6}
              y={line(strips.length) + 17}
              textAnchor="end"
            >
              border
            </text>
          </g>
        ) : null}
        <text className="rail-slack" x={Math.min(lastX + 8, scale.width - 150)} y={top + 17}>
          {words}
        </text>
      </svg>
      {start.canMove ? (
        <StartHandle
          label={`First truck of pour ${number}`}
          valueText={clock(wantedMs)}
          ms={wantedMs}
          left={x(plan.startMs)}
          width={Math.max(24, lastX - x(plan.startMs))}
          msOf={px => (px / (scale.x(minuteMs * 60) - scale.x(0))) * 60 * minuteMs}
          dayStartMs={plan.startMs - (plan.startMs % (24 * 60 * minuteMs))}
          show={start.show}
          keep={start.keep}
          drop={start.drop}
        />
      ) : null}
    </li>
  )
}

/** The whole bar is the target: dragged along the hours, or moved a quarter of an hour by the arrow keys. */
function StartHandle({
  label,
  valueText,
  ms,
  left,
  width,
  msOf,
  dayStartMs,
  show,
  keep,
  drop,
}: {
  readonly label: string
  readonly valueText: string
  readonly ms: number
  readonly left: number
  readonly width: number
  readonly msOf: (px: number) => number
  readonly dayStartMs: number
  readonly show: (ms: number) => void
  readonly keep: () => void
  readonly drop: () => void
}) {
  const from = useRef<{ readonly x: number; readonly ms: number; moved: boolean } | null>(null)
  const step = stepMin * minuteMs
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId)
    from.current = { x: event.clientX, ms, moved: false }
  }
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const begun = from.current
    if (!begun) return
    const to = begun.ms + Math.round(msOf(event.clientX - begun.x) / step) * step
    if (to === begun.ms && !begun.moved) return
    begun.moved = true
    show(to)
  }
  const onPointerUp = () => {
    if (from.current?.moved) keep()
    from.current = null
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const steps: Readonly<Record<string, number>> = {
      ...{ ArrowRight: 3, ArrowUp: 3, ArrowLeft: -3, ArrowDown: -3, PageUp: 12, PageDown: -12 },
    }
    const by = steps[event.key]
    if (event.key === 'Escape') drop()
    else if (by === undefined) return
    else show(ms + by * step)
    event.preventDefault()
    event.stopPropagation()
  }
  const minutes = (at: number) => Math.round((at - dayStartMs) / minuteMs)
  return (
    <div
      ref={withoutFling}
      className="rail-start"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={minutes(dayStartMs)}
      aria-valuemax={minutes(dayStartMs) + 2880}
      aria-valuenow={minutes(ms)}
      aria-valuetext={valueText}
      style={{ left, width }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        from.current = null
        drop()
      }}
      onKeyDown={onKeyDown}
      onKeyUp={event => {
        if (event.key !== 'Tab' && event.key !== 'Escape') keep()
      }}
      onBlur={keep}
    />
  )
}

const slackWords = (minutes: number): string =>
  minutes >= 0 ? `${Math.floor(minutes)} min slack` : `${Math.ceil(-minutes)} min too late`
