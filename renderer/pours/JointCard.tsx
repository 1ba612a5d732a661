import type { PlannedJoint } from '../../core/plan/plan'
import { lockJoint } from '../../core/pours/editing/changePour'
import { mergePours } from '../../core/pours/editing/mergePours'
import { rotateJoint, shiftJoint } from '../../core/pours/editing/moveJoint'
import { bandOnJoint, hasBandAlong } from '../../core/pours/wishes/bandOnJoint'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import { applyEdit, type EditOf, takeEdit } from '../app/applyEdit'
import { Icon } from '../app/Icon'
import { useSession } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { bringIntoView } from './bringIntoView'
import { TypedField } from './TypedField'
import { useLivePours } from './useLivePours'

/** A band over a joint is as wide as a common border: common practice, no source. */
const bandWidthM = 0.3048

/** The chosen construction joint: everything the hand can do with it, by keys and by typing too. */
export function JointCard({ live, joint }: { readonly live: LivePlan; readonly joint: PlannedJoint }) {
  const session = useSession()
  const { pours } = useLivePours(live)
  const { site } = live
  const print = printMeasures(site.units)
  const isKept = site.accepted.some(({ joints }) => joints.some(({ id }) => id === joint.id))
  const between = joint.pourIds.flatMap(id => pours.find(each => each.id === id) ?? [])
  const [one, other] = between.length === 2 ? between : []
  const run = (name: string, edit: EditOf) => applyEdit(session, name, edit)
  const stepM = site.units === 'ftin' ? 0.0762 : 0.05
  const slab = site.slabs.find(({ id }) => id === joint.slabId)
  return (
    <section ref={bringIntoView} className="joint-card" aria-label="Joint">
      <h3>Construction joint, {print.length(joint.lengthM)}</h3>
      <p className="note">
        {one && other
          ? `Between pour ${one.number}, ${print.area(one.areaM2)}, and pour ${other.number}, ${print.area(other.areaM2)}. `
          : `Along ${between.map(pour => `pour ${pour.number}, ${print.area(pour.areaM2)}`).join('; ')}. `}
        {isKept
          ? 'Drag it on the plan: its middle shifts it, an end turns it. With the plan in focus arrow keys shift it, with Ctrl they turn it.'
          : 'Choose a proposal first; then its joints can be dragged and turned.'}
      </p>
      {isKept ? (
        <>
          <div className="acts-row">
            <button
              type="button"
              className="btn"
              onClick={() => run('joint shifted', (s, caps) => shiftJoint(s, joint.id, stepM, caps))}
            >
              Shift {print.length(stepM)} left
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => run('joint shifted', (s, caps) => shiftJoint(s, joint.id, -stepM, caps))}
            >
              Shift {print.length(stepM)} right
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => run('joint turned', (s, caps) => rotateJoint(s, joint.id, 1, undefined, caps))}
            >
              Turn 1° left
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => run('joint turned', (s, caps) => rotateJoint(s, joint.id, -1, undefined, caps))}
            >
              Turn 1° right
            </button>
          </div>
          <div className="acts-row">
            <TypedField
              label="Shift left by"
              text=""
              onText={typed => {
                const isBack = /^\s*[-−]/.test(typed)
                const length = parseLength(typed.replace(/^\s*[-−]/, ''), site.units)
                if (!length.ok) return `“${typed}” is no length.`
                const byM = isBack ? -length.value : length.value
                return takeEdit(session, 'joint shifted', (s, caps) => shiftJoint(s, joint.id, byM, caps))
              }}
            />
            <button
              type="button"
              className="btn"
              aria-pressed={joint.locked}
              onClick={() =>
                run(joint.locked ? 'unlock joint' : 'lock joint', s => lockJoint(s, joint.id, !joint.locked))
              }
            >
              <Icon name="lock" />
              {joint.locked ? 'Unlock the joint' : 'Lock the joint'}
            </button>
          </div>
          <div className="acts-row">
            <TypedField
              label="Turn left by, degrees"
              text=""
              onText={typed => {
                const deg = Number(typed.replace('−', '-').replace('°', ''))
                if (typed.trim() === '' || !Number.isFinite(deg)) return `“${typed}” is no angle: degrees, 5 or −2.5.`
                return takeEdit(session, 'joint turned', (s, caps) => rotateJoint(s, joint.id, deg, undefined, caps))
              }}
            />
            {one && other ? (
              <button
                type="button"
                className="btn"
                onClick={() =>
                  run(`merge ${one.number} and ${other.number}`, (s, caps) => mergePours(s, one.id, other.id, caps))
                }
              >
                Merge pours {one.number} and {other.number}
              </button>
            ) : null}
          </div>
        </>
      ) : null}
      {slab && hasBandAlong(slab, joint.from, joint.to) ? <p className="note">A band lies along this joint.</p> : null}
      {slab && !hasBandAlong(slab, joint.from, joint.to) ? (
        <div className="acts-row">
          <button
            type="button"
            className="btn"
            onClick={() =>
              run(
                'band on the joint',
                bandOnJoint({
                  slabId: slab.id,
                  from: joint.from,
                  to: joint.to,
                  widthM: bandWidthM,
                  finishId: slab.borders[0]?.finishId ?? slab.finishId,
                }),
              )
            }
          >
            Put a band on this joint
          </button>
        </div>
      ) : null}
    </section>
  )
}
