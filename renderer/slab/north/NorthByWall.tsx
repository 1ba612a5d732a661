import { useState } from 'react'
import { setNorth } from '../../../core/document/commands/setSite'
import { northFromWall } from '../../../core/geometry/field/northFromWall'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { wordFindings } from '../../app/wordFindings'
import { parseAzimuth } from '../../editor/entry/directions'
import { useEditor } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { Fault } from '../Fault'
import { NumberField } from '../NumberField'
import { edgeEnds, straightEdges } from '../straightEdges'
import { TextField } from '../TextField'
import { useRun } from '../useRun'

type Wall = readonly [id: string, words: string]

const pointedOut = 'pointed'

/** North from the bearing of a wall: an edge that is drawn, or a line pointed out on the picture. */
export function NorthByWall({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const walls = straightEdges(site)
  const [line, setLine] = useState<readonly [Pt, Pt] | null>(null)
  const [chosen, setChosen] = useState('')
  const [deg, setDeg] = useState(0)
  const [kind, setKind] = useState<'compass' | 'true'>('compass')
  const [declinationDeg, setDeclination] = useState(0)
  const [fault, setFault] = useState<string | null>(null)
  const choices: readonly Wall[] = [...(line ? [[pointedOut, 'The line pointed out'] as const] : []), ...walls]
  const wall = choices.find(([id]) => id === chosen)?.[0] ?? choices[0]?.[0]
  const pick = () =>
    editor.pick({
      prompts: [
        'North from a wall: click one end of it.',
        'Click its other end: the bearing is read looking this way.',
      ],
      catches: true,
      done: ([from, to]) => {
        if (!from || !to) return
        setLine([from, to])
        setChosen(pointedOut)
      },
    })
  const set = () => {
    const ends = wall === pointedOut ? line : wall === undefined ? undefined : edgeEnds(site, wall)
    if (!ends) return
    const north = northFromWall(ends[0], ends[1], kind === 'true' ? { kind, deg } : { kind, deg, declinationDeg })
    setFault(north.ok ? run('north by wall', setNorth(north.value)) : wordFindings(site, north.error))
  }
  return (
    <fieldset className="finish">
      <legend>North from a wall</legend>
      {wall === undefined ? null : (
        <ChoiceField label="Looking along" value={wall} choices={choices} onSet={setChosen} />
      )}
      <button type="button" className="btn" onClick={pick}>
        Point a wall out on the plan
      </button>
      <TextField
        label="It bears, like 68.5 or N 23°14′ E"
        value={trim(deg)}
        onSet={text => {
          const read = parseAzimuth(text)
          if (!read.ok) return read.error.message
          setDeg(read.value)
          return null
        }}
      />
      <ChoiceField
        label="Compass or true?"
        value={kind}
        choices={[
          ['compass', 'read from a compass'],
          ['true', 'true, from the plot plan'],
        ]}
        onSet={setKind}
      />
      {kind === 'compass' ? (
        <>
          <NumberField
            label="Declination"
            unit="°, east is plus"
            value={declinationDeg}
            min={-180}
            max={180}
            step={0.1}
            onSet={setDeclination}
          />
          <p className="told">
            Plus where the needle points east of true north, minus where it points west. True bearing = compass +
            declination: {trim(deg)}° {declinationDeg < 0 ? '−' : '+'} {trim(Math.abs(declinationDeg))}° ={' '}
            {trim((deg + declinationDeg + 360) % 360)}°.
          </p>
        </>
      ) : null}
      <button type="button" className="btn" disabled={wall === undefined} onClick={set}>
        Set north
      </button>
      <Fault words={fault} />
    </fieldset>
  )
}

const trim = (value: number): string => String(Number(value.toFixed(2)))
