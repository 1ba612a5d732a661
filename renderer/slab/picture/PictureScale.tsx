import { useEffect, useRef, useState } from 'react'
import { scalePicture } from '../../../core/document/commands/placePicture'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { useEditor } from '../../editor/useEditor'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'

/** Two points of the picture and how far they are apart in truth. */
export function PictureScale({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const [ends, setEnds] = useState<readonly [Pt, Pt] | null>(null)
  const [told, setTold] = useState<string | null>(null)
  const asked = useRef<HTMLButtonElement>(null)
  const offer = useRef<HTMLDivElement>(null)
  // The two points are given: their distance is typed next. The press that gave the second one leaves the focus on the
  // plan, after all that it set off.
  useEffect(() => {
    if (!ends) return
    const timer = setTimeout(() => offer.current?.querySelector('input')?.focus())
    return () => clearTimeout(timer)
  }, [ends])
  const print = printMeasures(site.units)
  const readsM = ends ? Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]) : 0
  const pick = () =>
    editor.pick({
      prompts: ['Scale: click one end of a length you know.', 'Click its other end.'],
      catches: false,
      done: ([a, b]) => {
        if (a && b) setEnds([a, b])
        setTold(null)
      },
    })
  const set = (trueM: number): string | null => {
    if (!ends) return null
    if (!(trueM > 0)) return 'Type a length greater than zero.'
    const refused = run('picture scale', scalePicture(ends[0], ends[1], trueM))
    if (refused === null) {
      setTold(`Set to scale: those two points are ${print.length(trueM)} apart.`)
      setEnds(null)
      asked.current?.focus()
    }
    return refused
  }
  return (
    <>
      <button type="button" className="btn main" ref={asked} onClick={pick}>
        Set to scale by two points
      </button>
      {ends ? (
        <div className="offer wide" ref={offer}>
          <p>The two points read {print.length(readsM)} on the plan.</p>
          <MeasureField label="Known distance" lengthM={readsM} units={site.units} onSet={set} minM={0.01} />
          <button
            type="button"
            className="btn"
            onClick={() => {
              setEnds(null)
              asked.current?.focus()
            }}
          >
            Leave the scale as it is
          </button>
        </div>
      ) : null}
      {told ? (
        <p className="told" role="status">
          {told}
        </p>
      ) : null}
    </>
  )
}
