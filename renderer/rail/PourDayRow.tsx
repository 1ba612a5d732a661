import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { Scale } from './DayRail'

const rowPx = 24

/**
 * The day of one pour: loads as tabs, placing hatched, ready to too hard outlined, stamping solid, and the least slack as
 * a bar with its minutes. Opened, each strip has a line of its own.
 */
export function PourDayRow({
  day,
  tint,
  when,
  shiftMs,
  isOpen,
  scale,
}: {
  readonly day: PourDayPlan
  readonly tint: number
  readonly when: string
  readonly shiftMs: number
  readonly isOpen: boolean
  readonly scale: Scale
}) {
  const { plan, number } = day
  const { strips, loads } = plan
  const x = (ms: number) => scale.x(ms + shiftMs)
  const line = (index: number) => (isOpen ? rowPx * (index + 1) : 0)
  const height = isOpen ? rowPx * (strips.length + 1) : rowPx + 2
  const ink = `var(--p${tint}-ink)`
  const tight = strips.find(({ id }) => id === plan.tightestStripId)
  const slack = slackWords(plan.slackMin)
  const lastX = Math.max(...strips.map(({ tooHardMs, stampToMs }) => x(Math.max(tooHardMs, stampToMs))))
  const words = tight ? `${slack} in ${tight.id}` : slack
  return (
    <li className="rail-row" style={{ height }} aria-label={`Pour ${number}, ${when}: ${loads.length} loads, ${words}`}>
      <span className="rail-row-name">
        <span className={`tint tint-${tint}`}>{number}</span>
        {when}
      </span>
      <svg width={scale.width} height={height} aria-hidden="true">
        <defs>
          <pattern
            id={`placing-${day.pourId}`}
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0v5" stroke="var(--table-ink)" strokeWidth="2" />
          </pattern>
        </defs>
        {loads.map(load => (
          <path
            key={load.no}
            d={`M${x(load.onSiteMs).toFixed(1)} 1h9v5h-9z`}
            fill="var(--raised)"
            stroke="var(--table-ink)"
          />
        ))}
        {strips.map((strip, i) => {
          const y = line(i)
          const bar = (from: number, to: number) => ({ x: x(from), width: Math.max(1, x(to) - x(from)) })
          return (
            <g key={strip.id}>
              <rect
                {...bar(strip.placeMs, strip.placedMs)}
                y={y + 8}
                height={9}
                fill={`url(#placing-${day.pourId})`}
                stroke="var(--table-ink)"
              />
              <rect
                {...bar(strip.readyMs, strip.tooHardMs)}
                y={y + 7}
                height={12}
                fill={`var(--p${tint})`}
                stroke={ink}
              />
              <rect {...bar(strip.stampFromMs, strip.stampToMs)} y={y + 10} height={6} fill={ink} />
              {strip === tight ? (
                <path
                  d={`M${x(strip.stampToMs).toFixed(1)} ${y + 13}H${x(strip.tooHardMs).toFixed(1)}m0 -7v14`}
                  stroke="var(--paint)"
                  strokeWidth="2.5"
                  fill="none"
                />
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
        <text className="rail-slack" x={Math.min(lastX + 8, scale.width - 150)} y={17}>
          {words}
        </text>
      </svg>
    </li>
  )
}

const slackWords = (minutes: number): string =>
  minutes >= 0 ? `${Math.floor(minutes)} min slack` : `${Math.ceil(-minutes)} min too late`
