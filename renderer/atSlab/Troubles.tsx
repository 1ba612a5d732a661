import { useState } from 'react'
import type { SlabPlan } from '../../core/pours/slab/planAtSlab'
import type { SlabState } from '../../core/pours/slab/slabState'
import type { Happened } from './tapSlab'

const rainIn = [
  { minutes: 30, words: 'Rain in 30 min' },
  { minutes: 60, words: 'Rain in 1 h' },
  { minutes: 120, words: 'Rain in 2 h' },
] as const

/** What goes wrong on a day: each a tap, each planned again. */
export function Troubles({
  plan,
  state,
  onTap,
  clock,
}: {
  readonly plan: SlabPlan
  readonly state: SlabState
  readonly onTap: (what: Happened) => void
  readonly clock: (ms: number) => string
}) {
  const [isRainAsked, setIsRainAsked] = useState(false)
  const truck = plan.loads.find(load => load.state === 'toBatch' || load.state === 'onTheWay')
  return (
    <section className="slab-troubles" aria-label="If something changes">
      {truck ? (
        <button type="button" className="slab-btn" onClick={() => onTap({ what: 'late', load: truck.no, minutes: 15 })}>
          Truck {truck.no}: 15 min late
        </button>
      ) : null}
      <button type="button" className="slab-btn" onClick={() => onTap({ what: 'handShort' })}>
        One hand short
      </button>
      {state.handsMissing > 0 ? (
        <button type="button" className="slab-btn" onClick={() => onTap({ what: 'handBack' })}>
          One hand back
        </button>
      ) : null}
      {state.rainMs !== null ? (
        <button type="button" className="slab-btn" onClick={() => onTap({ what: 'rain' })}>
          No rain at {clock(state.rainMs)} after all
        </button>
      ) : isRainAsked ? (
        <>
          {rainIn.map(({ minutes, words }) => (
            <button
              key={minutes}
              type="button"
              className="slab-btn"
              onClick={() => {
                setIsRainAsked(false)
                onTap({ what: 'rain', minutes })
              }}
            >
              {words}
            </button>
          ))}
          <button type="button" className="slab-btn" onClick={() => setIsRainAsked(false)}>
            No rain
          </button>
        </>
      ) : (
        <button type="button" className="slab-btn" aria-expanded={false} onClick={() => setIsRainAsked(true)}>
          Rain coming
        </button>
      )}
      <p className="slab-note">
        {plan.hands} hands at work
        {state.rainMs === null ? '.' : `, rain at ${clock(state.rainMs)}.`} Thunder: tools down, everybody inside.
      </p>
    </section>
  )
}
