import { useState } from 'react'
import { squarenessOf, squareUp } from '../../../core/document/commands/squareUp'
import { isSquare, type Squareness } from '../../../core/geometry/field/squareness'
import { tapeWithinM } from '../../../core/geometry/field/tapeWithin'
import type { Measures } from '../../../core/units/measures'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Path } from '../../../shared/document/path'
import type { Site } from '../../../shared/document/site'
import { cornerLetter } from '../../editor/cornerNames'
import { ChoiceField } from '../ChoiceField'
import { focusBefore } from '../focusBefore'
import { useRun } from '../useRun'

/** Equal diagonals alone do not make a rectangle: its opposite sides are equal, too. */
const squareWords = (square: Squareness, print: Measures): string => {
  if (isSquare(square)) return 'square.'
  const outM = Math.abs(square.differenceM)
  return outM < tapeWithinM
    ? `but opposite sides differ by ${print.size(square.sidesDifferM)}.`
    : `${print.size(outM)} out.`
}

/** Both diagonals of a four-cornered outline, and a rectangle in its place about the edge that stays. */
export function SquareFields({ site, path }: { readonly site: Site; readonly path: Path }) {
  const run = useRun()
  const [kept, setKept] = useState('')
  const square = squarenessOf(site, path.id)
  if (!square) return null
  const print = printMeasures(site.units)
  const edge = path.edges.find(({ id }) => id === kept) ?? path.edges[0]!
  return (
    <>
      <p className="told wide">
        Diagonals A to C {print.length(square.diagonalsM[0])} and B to D {print.length(square.diagonalsM[1])},{' '}
        {squareWords(square, print)}
      </p>
      {isSquare(square) ? null : (
        <>
          <ChoiceField
            label="Edge that stays"
            value={edge.id}
            choices={path.edges.map(({ id }, i) => [id, `${cornerLetter(i)} to ${cornerLetter((i + 1) % 4)}`] as const)}
            onSet={setKept}
          />
          <button
            type="button"
            className="btn beside"
            onClick={event => {
              // The choice and this button go once it is square.
              focusBefore(event.currentTarget.previousElementSibling)
              run('square', squareUp(path.id, edge.id))
            }}
          >
            Make it square
          </button>
        </>
      )}
    </>
  )
}
