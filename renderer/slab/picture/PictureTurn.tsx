import { useState } from 'react'
import { turnPicture, turnToRun } from '../../../core/document/commands/placePicture'
import { headingOf } from '../../../core/geometry/field/northFromWall'
import type { Site } from '../../../shared/document/site'
import { useEditor } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { edgeEnds, straightEdges } from '../straightEdges'
import { useRun } from '../useRun'

/** Two points along an edge of the picture, and what that edge runs square to. */
export function PictureTurn({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const [runs, setRuns] = useState('sheet')
  const [told, setTold] = useState<string | null>(null)
  const edges = straightEdges(site)
  const choices = [['sheet', 'the sheet'] as const, ...edges]
  const chosen = choices.find(([id]) => id === runs)?.[0] ?? 'sheet'
  const squareTo = (): number => {
    const ends = edgeEnds(site, chosen)
    return ends ? headingOf(...ends) : 0
  }
  const pick = () =>
    editor.pick({
      prompts: ['Turn: click one end of a straight edge of the picture.', 'Click its other end.'],
      catches: false,
      done: ([a, b]) => {
        if (!a || !b) return
        const [along, across] = [turnToRun(a, b, squareTo()), turnToRun(a, b, squareTo() + 90)]
        const leftDeg = Math.abs(along) <= Math.abs(across) ? along : across
        const refused = run('turn picture', turnPicture(a, leftDeg))
        setTold(
          refused ??
            `Turned ${Math.abs(leftDeg).toFixed(1)}° to the ${leftDeg < 0 ? 'right' : 'left'}: that edge is square.`,
        )
      },
    })
  return (
    <>
      <ChoiceField label="An edge runs square to" value={chosen} choices={choices} onSet={setRuns} />
      <button type="button" className="btn beside" onClick={pick}>
        Turn by two points
      </button>
      {told ? (
        <p className="told" role="status">
          {told}
        </p>
      ) : null}
    </>
  )
}
