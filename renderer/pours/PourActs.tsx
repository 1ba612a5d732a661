import { useMemo } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import { lockPour, redatePour, renumberPour } from '../../core/pours/editing/changePour'
import { mergePours } from '../../core/pours/editing/mergePours'
import { splitPour } from '../../core/pours/editing/splitPour'
import { pourAdjacency } from '../../core/pours/pourAdjacency'
import type { Pour } from '../../shared/document/pours'
import { applyEdit, type EditOf, takeEdit } from '../app/applyEdit'
import { Icon } from '../app/Icon'
import { useSession } from '../app/session'
import { middleCut } from './middleCut'
import { TypedField } from './TypedField'

/** What can be done with a chosen pour. */
export function PourActs({
  pour,
  own,
  pours,
}: {
  readonly pour: PlannedPour
  readonly own: Pour
  readonly pours: readonly PlannedPour[]
}) {
  const session = useSession()
  const run = (name: string, edit: EditOf) => applyEdit(session, name, edit)
  const take = (name: string, edit: EditOf): string | null => takeEdit(session, name, edit)
  // A joint may run on past pours that do not touch this one.
  const beside = useMemo(
    () => new Set(pourAdjacency(pours).pairs.flatMap(({ a, b }) => (a === pour.id ? [b] : b === pour.id ? [a] : []))),
    [pours, pour.id],
  )
  const neighbors = pours.filter(each => beside.has(each.id) && !each.proposed)
  const number = `pour ${pour.number}`
  const toggles = [
    { key: 'shape', words: 'shape' },
    { key: 'time', words: 'day' },
  ] as const
  return (
    <div className="pour-acts">
      <div className="acts-row">
        {toggles.map(({ key, words }) => (
          <button
            key={key}
            type="button"
            className="btn"
            aria-pressed={own.lock[key]}
            onClick={() =>
              run(`${own.lock[key] ? 'unlock' : 'lock'} ${words} of ${number}`, site =>
                lockPour(site, pour.id, { [key]: !own.lock[key] }),
              )
            }
          >
            <Icon name="lock" />
            {own.lock[key] ? `Unlock the ${words}` : `Lock the ${words}`}
          </button>
        ))}
      </div>
      <div className="acts-row">
        {(['across', 'along'] as const).map(way => (
          <button
            key={way}
            type="button"
            className="btn"
            onClick={() =>
              run(`split ${number}`, (site, caps) => splitPour(site, pour.id, middleCut(pour.region, way), caps))
            }
          >
            Split {way}
          </button>
        ))}
        {neighbors.map(other => (
          <button
            key={other.id}
            type="button"
            className="btn"
            onClick={() =>
              run(`merge ${number} and ${other.number}`, (site, caps) => mergePours(site, pour.id, other.id, caps))
            }
          >
            Merge with pour {other.number}
          </button>
        ))}
      </div>
      <div className="acts-row">
        <TypedField
          label="Number"
          text={own.number}
          onText={typed =>
            typed.trim() === ''
              ? 'A pour needs a number.'
              : take(`number of ${number}`, site => renumberPour(site, pour.id, typed))
          }
        />
        <TypedField
          label="Place in the order"
          text={own.order === undefined ? '' : String(own.order)}
          onText={typed => {
            const order = typed.trim() === '' ? null : Number(typed)
            if (order !== null && !(Number.isInteger(order) && order > 0)) return `“${typed}” is no place in the order.`
            return take(`order of ${number}`, site => redatePour(site, pour.id, { order }))
          }}
        />
        <TypedField
          label="Day"
          type="date"
          text={own.date ?? ''}
          onText={typed => take(`day of ${number}`, site => redatePour(site, pour.id, { date: typed || null }))}
        />
      </div>
    </div>
  )
}
