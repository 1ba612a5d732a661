import { useState } from 'react'
import { setNorth } from '../../../core/document/commands/setSite'
import { northFromShadow } from '../../../core/sun/measureByShadow'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { wordFindings } from '../../app/wordFindings'
import { useEditor } from '../../editor/useEditor'
import { Fault } from '../Fault'
import { useRun } from '../useRun'
import { MomentFields, momentMs, useMoment } from './MomentFields'

/** North from the shadow of anything upright, looked at in a known minute. */
export function NorthByShadow({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const [moment, setMoment] = useMoment()
  const [line, setLine] = useState<readonly [foot: Pt, tip: Pt] | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const print = printMeasures(site.units)
  const found = () => {
    if (!line) return null
    const ms = momentMs(moment, site)
    return ms.ok ? northFromShadow(line[0], line[1], ms.value, site.place) : ms
  }
  const north = found()
  const pick = () =>
    editor.pick({
      prompts: ['North from a shadow: click the foot of what throws it.', 'Click where the shadow of its top ends.'],
      catches: true,
      done: ([foot, tip]) => {
        if (foot && tip) setLine([foot, tip])
        setFault(null)
      },
    })
  return (
    <fieldset className="finish">
      <legend>North from a shadow</legend>
      <MomentFields moment={moment} place={site.place} onSet={setMoment} />
      <button type="button" className="btn" onClick={pick}>
        {line ? 'Point it out again' : 'Point the shadow out on the plan'}
      </button>
      {north === null ? (
        <p className="told">
          A plumb line, a post, the corner of a wall: its foot, then where the shadow of its top ends.
        </p>
      ) : north.ok ? (
        <p className="told" role="status">
          The shadow is {print.length(Math.hypot(line![1][0] - line![0][0], line![1][1] - line![0][1]))} long: true
          north lies {north.value.toFixed(1)}° clockwise from up, now {site.place.northDeg.toFixed(1)}°.
        </p>
      ) : (
        <Fault words={wordFindings(site, north.error)} />
      )}
      <button
        type="button"
        className="btn"
        disabled={!north?.ok}
        onClick={() => {
          if (north?.ok) setFault(run('north by shadow', setNorth(north.value)))
        }}
      >
        Set north
      </button>
      <Fault words={fault} />
    </fieldset>
  )
}
