import { useEffect, useState } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import { isSetKnown } from '../../core/pours/day/dayProblem'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { SlabBalance } from '../../core/pours/slab/balanceAtSlab'
import type { SlabFront } from '../../core/pours/slab/front'
import type { SlabPlan } from '../../core/pours/slab/planAtSlab'
import { placedCount, type SlabState } from '../../core/pours/slab/slabState'
import { tellBalance } from '../../core/pours/slab/slabWords'
import type { Measures } from '../../core/units/measures'
import type { UnitSystem } from '../../shared/document/site'
import { SlabMap } from './SlabMap'
import type { Happened } from './tapSlab'

/** One tap of the front's buttons: a foot, or 25 cm. */
const stepM: Readonly<Record<UnitSystem, number>> = { ftin: 0.3048, metric: 0.25 }
const shares = [
  { share: 0.25, words: '¼ out' },
  { share: 0.5, words: '½ out' },
  { share: 0.75, words: '¾ out' },
  { share: 1, words: 'All out' },
] as const

/** How far the concrete has come, and what that says of thickness and yards. */
export function FrontPanel({
  pour,
  day,
  plan,
  state,
  front,
  balance,
  print,
  clock,
  clockShort,
  units,
  now,
  onTap,
  onStop,
}: {
  readonly pour: PlannedPour
  readonly day: PourDayPlan
  readonly plan: SlabPlan
  readonly state: SlabState
  readonly front: SlabFront
  readonly balance: SlabBalance | null
  readonly print: Measures
  readonly clock: (ms: number) => string
  /** For the plates of the strips. */
  readonly clockShort: (ms: number) => string
  readonly units: UnitSystem
  readonly now: number
  readonly onTap: (what: Happened) => void
  readonly onStop: (comeM: number) => void
}) {
  const isDown = placedCount(state) === plan.strips.length
  const downM2 = day.shapes.slice(0, placedCount(state)).reduce((sum, { areaM2 }) => sum + areaM2, 0)
  const known = Math.max(state.front?.comeM ?? 0, downM2 > 0 ? front.comeFor(downM2) : 0)
  const [moved, setMoved] = useState<number | null>(null)
  // A tap elsewhere takes the mark along; one that is being set stays until it is logged.
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new mark in the log ends the setting
  useEffect(() => setMoved(null), [state.front])
  const comeM = Math.min(front.lengthM, moved ?? known)
  const step = stepM[units]
  const at = plan.loads.findIndex(load => load.state === 'onSite')
  const lastEmpty = plan.loads.findLastIndex(load => load.state === 'empty')
  const current = at >= 0 ? at : lastEmpty
  const load = plan.loads[current]
  const emptiedM3 = plan.loads.slice(0, Math.max(0, current)).reduce((sum, { volumeM3 }) => sum + volumeM3, 0)
  const nudge = (by: number) => setMoved(Math.min(front.lengthM, Math.max(0, comeM + by)))
  return (
    <section className="slab-front-panel" aria-label="Concrete so far">
      <SlabMap
        {...{ region: pour.region, day, strips: plan.strips, front, comeM, step, print }}
        isMarked={moved === null && state.front !== null}
        when={strip =>
          strip.state === 'stamped'
            ? 'done'
            : strip.state === 'toPlace'
              ? clockShort(strip.placedMs)
              : isSetKnown(strip)
                ? clockShort(strip.state === 'placed' ? strip.readyMs : strip.tooHardMs)
                : '?'
        }
        onCome={setMoved}
      />
      {isDown ? null : (
        <div className="slab-come">
          <p>
            <b className="slab-come-m">{print.length(comeM)}</b> of {print.length(front.lengthM)}:{' '}
            {print.area(front.areaTo(comeM))}
          </p>
          <div className="slab-row">
            <button type="button" className="slab-btn" onClick={() => nudge(-step)} disabled={comeM <= 0}>
              {units === 'ftin' ? 'Back 1 ft' : 'Back 25 cm'}
            </button>
            <button type="button" className="slab-btn" onClick={() => nudge(step)} disabled={comeM >= front.lengthM}>
              {units === 'ftin' ? 'On 1 ft' : 'On 25 cm'}
            </button>
          </div>
          {load && comeM > 0 ? (
            <>
              <p>Here, how much of load {load.no} is out?</p>
              <div className="slab-row">
                {shares.map(({ share, words }) => (
                  <button
                    key={share}
                    type="button"
                    className="slab-btn"
                    onClick={() =>
                      onTap({ what: 'come', comeM, outM3: emptiedM3 + share * load.volumeM3, load: load.no })
                    }
                  >
                    {words}
                  </button>
                ))}
              </div>
            </>
          ) : (
            <p>Mark it once the first load is on site: it tells the thickness running and the balance load.</p>
          )}
          {balance ? (
            <p className="slab-balance" role="status">
              {tellBalance(balance, day.input.thicknessM, print, clock, now)}
            </p>
          ) : null}
          {comeM > 0 && comeM < front.lengthM - 0.1 ? (
            <button type="button" className="slab-btn" onClick={() => onStop(comeM)}>
              Stop short at {print.length(comeM)}
            </button>
          ) : null}
        </div>
      )}
    </section>
  )
}
