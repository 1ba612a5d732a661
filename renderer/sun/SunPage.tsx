import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import type { ComparedDay, OtherDay } from '../../core/plan/deriveScreen'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import { handWords } from '../app/handWords'
import { printHour } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { PlainRow } from '../ledger/PlainRow'
import { Problems } from '../ledger/Problems'
import type { LivePlan } from '../store/livePlan'
import { MarkShade } from './MarkShade'
import { otherWords } from './SunLegend'
import { shadeWords } from './shadeWords'
import { bandAreas, bandInk, noSun } from './sunBands'
import { usePin, useSunMap } from './useSunStage'

/** The step of the shade table the hour lies in. */
function stepAt(instants: readonly number[], ms: number): number | null {
  const next = instants.findIndex(each => each > ms)
  return next === 0 ? null : next === -1 ? instants.length - 1 : next - 1
}

const cut = (printed: string): readonly [string, string] => {
  const at = printed.lastIndexOf(' ')
  return [printed.slice(0, at), printed.slice(at + 1)]
}

type DaySpan = readonly [fromMs: number, toMs: number]

export function SunPage({ live }: { readonly live: LivePlan }) {
  const { date, isReady, points, shadeLines, compared, revs, rev } = usePlan(({ date, parts, hour, revs, rev }) => ({
    date,
    isReady: hour !== null,
    points: parts.points,
    shadeLines: parts.shadeLines,
    compared: parts.compared,
    revs,
    rev,
  }))
  const { view } = useSession()
  const other = useView(state => state.other)
  const { maps, bands } = useSunMap()
  const { pin, sun: pinned } = usePin(live)
  const { units, place } = live.site
  const print = printMeasures(units)
  if (!isReady) return null
  const isOld = (part: 'shadeLines' | 'sunMaps' | 'points') => revs[part] !== rev
  const hours = (minutes: number) => printNumber(minutes / 60, 1, 1)
  // Where the sun stays up at midnight it neither comes first nor last on that day.
  const shownDay: DaySpan = [live.day?.startMs ?? 0, live.day?.endMs ?? Number.POSITIVE_INFINITY]
  const clock = (ms: number | null | undefined, [fromMs, toMs] = shownDay) =>
    ms === null || ms === undefined
      ? 'none'
      : ms <= fromMs
        ? 'since midnight'
        : ms >= toMs
          ? 'past midnight'
          : printHour(ms, place.zone, units, true)
  const firstToLast = (first: number | null | undefined, last: number | null | undefined, day = shownDay) =>
    first === null || first === undefined ? 'none' : `${clock(first, day)} to ${clock(last, day)}`
  const beside = compared && other && compared.date === other.date && compared.leaves === other.leaves ? compared : null
  const besideDay: DaySpan = [beside?.instants[0] ?? 0, beside?.instants.at(-1) ?? Number.POSITIVE_INFINITY]
  const areas = maps.length > 0 ? bandAreas(maps, bands) : []
  return (
    <>
      <header>
        <h2>Sun and shade</h2>
        <label className="date-field">
          <span className="visually-hidden">Date</span>
          <input type="date" value={date} onChange={event => view.setState({ date: event.target.value || null })} />
        </label>
      </header>
      {live.slabs.map(slab => {
        const line = shadeLines?.find(({ slabId }) => slabId === slab.id)
        const told = line ? shadeWords(line) : null
        const name = live.slabs.length === 1 ? 'the slab' : slab.name
        // From the first sun to the last nothing shades it: there is no shade that leaves or comes back.
        const isOpen =
          told !== null &&
          told.leavesMs !== null &&
          told.leavesMs === told.firstSunMs &&
          told.returnsMs === told.lastSunMs
        const besideLine = beside?.shadeLines.find(({ slabId }) => slabId === slab.id)
        const besideTold = besideLine ? shadeWords(besideLine) : null
        return (
          <section key={slab.id} aria-label={slab.name}>
            <PlainRow
              kind="sum"
              name={
                told === null || (told.leavesMs !== null && !isOpen)
                  ? `Shade leaves ${name}`
                  : told.firstSunMs === null
                    ? `Direct sun on ${name}`
                    : `Shade on ${name}`
              }
              figure={
                told === null
                  ? 'working'
                  : isOpen
                    ? 'none'
                    : told.leavesMs !== null
                      ? clock(told.leavesMs)
                      : told.firstSunMs === null
                        ? 'none this day'
                        : 'all day'
              }
              isWaiting={isOld('shadeLines')}
            />
            {told?.returnsMs && !isOpen ? (
              <PlainRow
                kind="sub"
                name="Shade comes back"
                figure={clock(told.returnsMs)}
                isWaiting={isOld('shadeLines')}
              />
            ) : null}
            <PlainRow
              kind="sub"
              name="First sun"
              figure={told ? clock(told.firstSunMs) : 'working'}
              isWaiting={isOld('shadeLines')}
            />
            <PlainRow
              kind="sub"
              name="Last sun"
              figure={told ? clock(told.lastSunMs) : 'working'}
              isWaiting={isOld('shadeLines')}
            />
            <ShareNow live={live} slab={slab} />
            {other ? (
              <div className="beside">
                <h3>{otherWords(other.date, other.leaves, date)}</h3>
                <PlainRow
                  kind="sub"
                  name={`Shade leaves ${name}`}
                  figure={
                    besideTold === null
                      ? 'working'
                      : besideTold.leavesMs === null
                        ? 'not at all'
                        : clock(besideTold.leavesMs, besideDay)
                  }
                />
                <PlainRow
                  kind="sub"
                  name="First, last sun"
                  figure={
                    besideTold === null
                      ? 'working'
                      : firstToLast(besideTold.firstSunMs, besideTold.lastSunMs, besideDay)
                  }
                />
                <BesideShareNow live={live} slabId={slab.id} beside={beside} />
              </div>
            ) : null}
          </section>
        )
      })}
      <SunNow />
      {pin && pinned ? (
        <section aria-label="Point asked about">
          <h3>Point asked about</h3>
          <PlainRow name="Direct sun" figure={hours(pinned.directSunMin)} unit="h" />
          <PlainRow kind="sub" name="First, last sun" figure={firstToLast(pinned.firstSunMs, pinned.lastSunMs)} />
          <p className="note">
            <button type="button" className="as-words" onClick={() => view.setState({ pin: null })}>
              Remove the pin
            </button>
          </p>
        </section>
      ) : live.slabs.length > 0 ? (
        <p className="note">{handWords('Click a point of the slab to see its sun.')}</p>
      ) : null}
      {points?.length ? (
        <>
          <h3>Marked points, direct sun</h3>
          {points.map(point => (
            <section key={point.id} aria-label={point.name}>
              <PlainRow name={point.name} figure={hours(point.directSunMin)} unit="h" isWaiting={isOld('points')} />
              <PlainRow
                kind="sub"
                name="First, last sun"
                figure={firstToLast(point.firstSunMs, point.lastSunMs)}
                isWaiting={isOld('points')}
              />
            </section>
          ))}
        </>
      ) : null}
      <h3>Area by hours of direct sun</h3>
      {areas.length === 0 ? (
        <p className="note">{live.slabs.length === 0 ? 'No slab is drawn yet.' : 'Working'}</p>
      ) : null}
      {areas.map((areaM2, band) => {
        const [figure, unit] = cut(print.area(areaM2))
        return (
          <PlainRow
            key={bands.names[band]}
            name={bands.names[band] === noSun ? 'No direct sun' : `${bands.names[band]} h`}
            figure={figure}
            unit={unit}
            isWaiting={isOld('sunMaps')}
            swatch={<i className="swatch" style={{ background: `var(--sh-${bandInk(bands, band)})` }} />}
          />
        )
      })}
      <h3>Compare with</h3>
      <CompareChoice date={date} other={other} />
      <MarkShade live={live} />
      <ShadeNow live={live} />
      <Problems />
    </>
  )
}

/** Rows that follow the hour stand apart, so that a dragged hour draws these few again and nothing else. */
function ShareNow({ live, slab }: { readonly live: LivePlan; readonly slab: ResolvedSlab }) {
  const { shade, hourMs, isOld } = usePlan(({ parts, hour, revs, rev }) => ({
    shade: parts.shade,
    hourMs: hour?.hourMs ?? 0,
    isOld: revs.shade !== rev,
  }))
  const { place, units } = live.site
  const step = shade ? stepAt(shade.instants, hourMs) : null
  const share = shade && step !== null ? (shade.slabShares.get(slab.id)?.[step] ?? 0) : null
  const [figure, unit] = share === null ? ['working', ''] : cut(printMeasures(units).area((1 - share) * slab.netAreaM2))
  return (
    <>
      <PlainRow
        name={`Without direct sun at ${printHour(hourMs, place.zone, units)}`}
        figure={figure}
        unit={unit}
        isWaiting={isOld}
      />
      <PlainRow
        kind="sub"
        name="Share of the slab"
        figure={share === null ? '' : printNumber((1 - share) * 100, 0)}
        unit="%"
        isWaiting={isOld}
      />
    </>
  )
}

function BesideShareNow({
  live,
  slabId,
  beside,
}: {
  readonly live: LivePlan
  readonly slabId: string
  readonly beside: ComparedDay | null
}) {
  const hourMs = usePlan(({ hour }) => hour?.hourMs ?? 0)
  const [first = 0, second = 0] = beside?.instants ?? []
  const step = beside ? Math.round((hourMs - (live.day?.startMs ?? 0)) / (second - first)) : null
  const share = step === null ? null : (beside?.slabShares.get(slabId)?.[step] ?? 0)
  return (
    <PlainRow
      kind="sub"
      name="Without direct sun now"
      figure={share === null ? 'working' : printNumber((1 - share) * 100, 0)}
      unit={share === null ? '' : '%'}
    />
  )
}

function SunNow() {
  const sun = usePlan(({ hour }) => hour?.sun)
  if (!sun) return null
  return (
    <>
      <PlainRow name="Sun height" figure={`${printNumber(sun.altitudeDeg, 1, 1)}°`} />
      <PlainRow name="Sun bearing, from true north" figure={`${printNumber(sun.azimuthDeg, 1, 1)}°`} />
    </>
  )
}

function ShadeNow({ live }: { readonly live: LivePlan }) {
  const isUp = usePlan(({ hour }) => (hour?.shade.length ?? 0) > 0)
  return <p className="note">{isUp ? shadeOf(live) : 'No direct sun at this hour.'}</p>
}

function CompareChoice({ date, other }: { readonly date: string; readonly other: OtherDay | null }) {
  const { view } = useSession()
  const set = (next: OtherDay | null) => view.setState({ other: next })
  const leaves = other?.leaves ?? 'asDated'
  const put = (next: OtherDay) => set(next.date === date && next.leaves === 'asDated' ? null : next)
  return (
    <div className="compare">
      <label>
        Another day{' '}
        <input
          type="date"
          value={other && other.date !== date ? other.date : ''}
          onChange={event => put({ date: event.target.value || date, leaves })}
        />
      </label>
      <fieldset>
        <legend className="visually-hidden">Leaves of the trees</legend>
        {(
          [
            ['on', 'In leaf'],
            ['off', 'No leaves'],
          ] as const
        ).map(([each, words]) => (
          <button
            key={each}
            type="button"
            className="btn"
            aria-pressed={leaves === each}
            onClick={() => put({ date: other?.date ?? date, leaves: leaves === each ? 'asDated' : each })}
          >
            {words}
          </button>
        ))}
      </fieldset>
    </div>
  )
}

function shadeOf({ site }: LivePlan): string {
  const names = site.casters.map(each => each.name.toLowerCase())
  if (names.length === 0) return 'Nothing throws shade: no building, wall, tree or cover is drawn.'
  return names.length > 6
    ? `Shade of ${names.length} buildings, walls, trees and covers.`
    : `Shade of ${names.join(', ')}.`
}
