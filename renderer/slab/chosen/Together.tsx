import { useState } from 'react'
import { type LineUpSide, lineUp, selectionBox } from '../../../core/document/commands/lineUp'
import { mirrorSelection, turnSelection } from '../../../core/document/commands/moveSelection'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { useEditor } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { CopyButton } from '../CopyButton'
import { NumberField } from '../NumberField'
import { PasteButton } from '../PasteButton'
import { useRun } from '../useRun'

const sides: readonly (readonly [LineUpSide, string])[] = [
  ['left', 'Left sides'],
  ['right', 'Right sides'],
  ['top', 'Tops'],
  ['bottom', 'Bottoms'],
  ['middleAcross', 'Middles, one above the other'],
  ['middleUp', 'Middles, side by side'],
]

/** What can be done with anything that is chosen. */
export function Together({
  site,
  ids,
  canLineUp,
  canCopy,
  canTurn,
}: {
  readonly site: Site
  readonly ids: readonly Id[]
  readonly canLineUp: boolean
  /** Something is chosen that can stand elsewhere: not only corners, edges, points and what follows an edge. */
  readonly canCopy: boolean
  /** It looks otherwise when it is turned or mirrored about its middle. */
  readonly canTurn: boolean
}) {
  const editor = useEditor()
  const run = useRun()
  const [turnDeg, setTurnDeg] = useState(90)
  const [side, setSide] = useState<LineUpSide>('left')
  const box = canTurn ? selectionBox(site, ids) : undefined
  return (
    <>
      <div className="fields acts-row">
        {box ? (
          <>
            <NumberField
              label="Turn by"
              unit="° left"
              value={turnDeg}
              min={-360}
              max={360}
              step={0.5}
              onSet={setTurnDeg}
            />
            <button
              type="button"
              className="btn"
              onClick={() =>
                run('turn', turnSelection(ids, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], turnDeg))
              }
            >
              Turn
            </button>
            <button
              type="button"
              className="btn"
              onClick={() => {
                const x = (box.minX + box.maxX) / 2
                run('mirror', mirrorSelection(ids, [x, box.minY - 1], [x, box.maxY + 1]))
              }}
            >
              Mirror
            </button>
          </>
        ) : null}
        {canCopy ? (
          <>
            <button
              type="button"
              className="btn"
              onClick={() => {
                editor.copy()
                editor.paste()
              }}
            >
              Copy beside
            </button>
            <CopyButton />
          </>
        ) : null}
        <PasteButton site={site} />
        <button type="button" className="btn" onClick={() => editor.remove()}>
          Delete
        </button>
      </div>
      {canLineUp ? (
        <div className="fields">
          <ChoiceField label="Line up with the first" value={side} choices={sides} onSet={setSide} />
          <button type="button" className="btn" onClick={() => run('line up', lineUp(ids, side))}>
            Line up
          </button>
        </div>
      ) : null}
    </>
  )
}
