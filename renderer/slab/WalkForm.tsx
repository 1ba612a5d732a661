import { useState } from 'react'
import { addSlab } from '../../core/document/commands/addSlab'
import { type TraverseLeg, traverse } from '../../core/geometry/field/traverse'
import { wordProblem } from '../../core/problems/wordProblem'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { parseTurn } from '../editor/entry/directions'
import { useEditor } from '../editor/useEditor'
import { Fault } from './Fault'
import { useRun } from './useRun'

interface Leg {
  readonly key: number
  readonly length: string
  readonly turn: string
}

/** Edges walked in order: a length and the turn before it, back to the start; the closing error is shown and spread. */
export function WalkForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const [legs, setLegs] = useState<readonly Leg[]>(
    [0, 1, 2, 3].map(key => ({ key, length: '', turn: key === 0 ? '0' : '90 left' })),
  )
  const [fault, setFault] = useState<string | null>(null)
  const [told, setTold] = useState<string | null>(null)
  const change = (key: number, part: Partial<Leg>) =>
    setLegs(was => was.map(leg => (leg.key === key ? { ...leg, ...part } : leg)))
  const set = () => {
    const read: TraverseLeg[] = []
    for (const leg of legs.filter(({ length }) => length.trim() !== '')) {
      const length = parseLength(leg.length, site.units)
      const turn = parseTurn(leg.turn)
      if (!length.ok || !turn.ok) {
        setFault(!length.ok ? length.error.message : !turn.ok ? turn.error.message : null)
        return
      }
      read.push({ lengthM: length.value, turnDeg: turn.value })
    }
    const walked = traverse([0, 0], read)
    const print = printMeasures(site.units)
    if (!walked.ok) {
      const { message, hint } = wordProblem(walked.error[0]!, print)
      setFault(hint ? `${message} ${hint}` : message)
      return
    }
    const { corners, closingErrorM } = walked.value
    const name = site.slabs.length === 0 ? 'Patio' : `Patio ${site.slabs.length + 1}`
    const refused = run('slab', addSlab({ outline: { kind: 'corners', corners: corners.map(at => ({ at })) }, name }))
    setFault(refused)
    // The sheet waited for a first corner: it is there now. Nothing is chosen, so that what is told here stays.
    if (refused === null) editor.choose('select')
    setTold(`The walk closes within ${print.size(closingErrorM)}; what was left is spread over the corners.`)
  }
  return (
    <div className="fields">
      <ol className="walk">
        {legs.map((leg, i) => (
          <li key={leg.key}>
            <label>
              <span>{i === 0 ? 'Faces' : 'Turn'}</span>
              <input
                type="text"
                value={leg.turn}
                aria-label={`Turn before edge ${i + 1}`}
                onChange={event => change(leg.key, { turn: event.target.value })}
              />
            </label>
            <label>
              <span>Length</span>
              <input
                type="text"
                value={leg.length}
                aria-label={`Length of edge ${i + 1}`}
                onChange={event => change(leg.key, { length: event.target.value })}
              />
            </label>
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="btn"
        onClick={() => setLegs(was => [...was, { key: was.length, length: '', turn: '90 left' }])}
      >
        One more edge
      </button>
      <button type="button" className="btn main" onClick={set}>
        Draw the walk
      </button>
      <Fault words={fault} />
      {told && !fault ? <p className="told">{told}</p> : null}
    </div>
  )
}
