import { useEffect, useId, useRef, useState } from 'react'
import { addSlab } from '../../../core/document/commands/addSlab'
import { pointBounds } from '../../../core/geometry/bounds'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { wordFindings } from '../../app/wordFindings'
import { cornersOfSite, placeWords } from '../../editor/cornerNames'
import {
  blankWalk,
  oneMoreRow,
  readWalk,
  type WalkBox,
  type WalkFault,
  type WalkRow,
} from '../../editor/entry/readWalk'
import { useEditor, useEditorState } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { Fault } from '../Fault'
import { useRun } from '../useRun'
import { walkShape } from './walkShape'
import { walkWords } from './walkWords'

/** A walk that starts from no drawn corner is drawn this far to the right of all that is there: 5 ft. */
const besideM = 1.524

const beside = ''

/** Edges walked in order: the turn before each, its length, its rise where it is an arc, back to the start; the closing
 * error is shown and spread. */
export function WalkForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const walk = useEditorState(state => state.walk)
  const [startsAt, setStartsAt] = useState(beside)
  const [fault, setFault] = useState<Partial<WalkFault> | null>(null)
  const [drawn, setDrawn] = useState<{ readonly slabs: number; readonly words: string } | null>(null)
  // What was told of the slab goes with it.
  const told = drawn?.slabs === site.slabs.length ? drawn.words : null
  const faultId = useId()
  const asked = useRef<HTMLButtonElement>(null)
  // The answer stands over the button that asked; the rows above it have come or gone meanwhile.
  useEffect(() => {
    if (fault !== null || told !== null) asked.current?.scrollIntoView({ block: 'nearest' })
  }, [fault, told])
  const corners = cornersOfSite(site)
  const write = (part: Partial<typeof walk>) => {
    editor.writeWalk({ ...walk, ...part })
    setFault(null)
    setDrawn(null)
  }
  const change = (row: number, part: Partial<WalkRow>) =>
    write({ rows: walk.rows.map((each, i) => (i === row ? { ...each, ...part } : each)) })
  const read = readWalk(walk, site.units, site.place.northDeg)
  const walked = read.ok && read.value.legs.length > 2 ? walkShape(read.value) : null
  const startOf = (): Pt => {
    const corner = corners.find(({ words }) => words === startsAt)
    if (corner) return corner.at
    if (corners.length === 0 || !walked?.ok) return [0, 0]
    const there = pointBounds(corners.map(({ at }) => at))
    return [there.maxX + besideM - pointBounds(walked.value.walk.corners).minX, there.minY]
  }
  const set = () => {
    setDrawn(null)
    if (!read.ok) {
      setFault(read.error)
      return
    }
    const shaped = walked ?? walkShape(read.value)
    if (!shaped.ok) {
      setFault({ message: wordFindings(site, shaped.error) })
      return
    }
    const name = site.slabs.length === 0 ? 'Patio' : `Patio ${site.slabs.length + 1}`
    const refused = run('slab', addSlab({ outline: shaped.value.shapeAt(startOf()), name }))
    if (refused !== null) {
      setFault({ message: refused })
      return
    }
    // The sheet waited for a first corner: it is there now. Nothing is chosen, so that what is told here stays.
    editor.choose('select')
    editor.writeWalk(blankWalk)
    setFault(null)
    const words = `${name} is drawn. ${walkWords(shaped.value.walk, printMeasures(site.units))}`
    setDrawn({ slabs: site.slabs.length + 1, words })
  }
  const box = (row: number, kind: WalkBox, label: string, words: string, value: string) => {
    const isWrong = fault?.row === row && fault.box === kind
    return (
      <label>
        <span>{words}</span>
        <input
          type="text"
          autoComplete="off"
          value={value}
          aria-label={label}
          aria-invalid={isWrong || undefined}
          aria-describedby={isWrong ? faultId : undefined}
          onChange={event =>
            row < 0 ? write({ lastTurn: event.target.value }) : change(row, { [kind]: event.target.value })
          }
          onKeyDown={event => {
            if (event.key === 'Enter') set()
          }}
        />
      </label>
    )
  }
  return (
    <div className="fields">
      <p className="told wide">
        Turns as 90 left or 45 right, or a bearing like N 45 E for any edge. Of an arc, the length straight across and
        how far it rises out of the slab; less than zero goes in.
      </p>
      {corners.length > 0 ? (
        <div className="wide">
          <ChoiceField
            label="Starts at"
            value={corners.some(({ words }) => words === startsAt) ? startsAt : beside}
            choices={[
              [beside, 'beside what is drawn'],
              ...corners.map(({ words }) => [words, placeWords(words)] as const),
            ]}
            onSet={setStartsAt}
          />
        </div>
      ) : null}
      <ol className="walk">
        {walk.rows.map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an edge is known by its place in the walk
          <li key={i}>
            {i === 0
              ? box(i, 'turn', 'Edge 1 runs', 'Runs', row.turn)
              : box(i, 'turn', `Turn before edge ${i + 1}`, 'Turn', row.turn)}
            {box(i, 'length', `Length of edge ${i + 1}`, 'Length', row.length)}
            {box(i, 'rise', `Rise of edge ${i + 1}, if an arc`, 'Arc rise', row.rise)}
          </li>
        ))}
        <li>{box(-1, 'turn', 'Turn back onto edge 1, if taken', 'Last turn', walk.lastTurn)}</li>
      </ol>
      <button type="button" className="btn" onClick={() => write({ rows: [...walk.rows, oneMoreRow] })}>
        One more edge
      </button>
      {fault === null && told === null && walked ? (
        <p className="told">
          {walked.ok ? walkWords(walked.value.walk, printMeasures(site.units)) : wordFindings(site, walked.error)}
        </p>
      ) : null}
      <Fault words={fault?.message ?? null} id={faultId} />
      {told ? (
        <p className="told" role="status">
          {told}
        </p>
      ) : null}
      <button type="button" className="btn main" ref={asked} onClick={set}>
        Draw the walk
      </button>
    </div>
  )
}
