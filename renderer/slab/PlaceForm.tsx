import { useState } from 'react'
import { findEdge } from '../../core/document/commands/findPath'
import { setNorth, setPlace } from '../../core/document/commands/setSite'
import { isKnownZone } from '../../core/document/isKnownZone'
import { northFromWall } from '../../core/geometry/field/northFromWall'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { cornerLetter } from '../editor/cornerNames'
import { ChoiceField } from './ChoiceField'
import { NumberField } from './NumberField'
import { TextField } from './TextField'
import { useRun } from './useRun'

/** Where the site lies, and which way north is: typed, or from the bearing of a wall or an edge. */
export function PlaceForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const [fault, setFault] = useState<string | null>(null)
  const { latDeg, lonDeg, zone, northDeg, elevationM } = site.place
  return (
    <div className="fields">
      <NumberField
        label="Latitude"
        unit="° north"
        value={latDeg}
        min={-90}
        max={90}
        step={0.0001}
        onSet={to => run('place', setPlace({ latDeg: to }))}
      />
      <NumberField
        label="Longitude"
        unit="° east, west is minus"
        value={lonDeg}
        min={-180}
        max={180}
        step={0.0001}
        onSet={to => run('place', setPlace({ lonDeg: to }))}
      />
      <NumberField
        label="Height above sea"
        unit="m"
        value={elevationM}
        min={-450}
        max={6000}
        onSet={to => run('place', setPlace({ elevationM: to }))}
      />
      <TextField
        label="Time zone, like America/Boise"
        value={zone}
        onSet={to =>
          setFault(
            isKnownZone(to) ? run('time zone', setPlace({ zone: to })) : `“${to}” is no time zone this computer knows.`,
          )
        }
      />
      {fault ? (
        <p className="entry-fault" role="alert">
          {fault}
        </p>
      ) : null}
      <NumberField
        label="True north, clockwise from up"
        unit="°"
        value={Number(northDeg.toFixed(2))}
        min={-360}
        max={360}
        step={0.1}
        onSet={to => run('north', setNorth(to))}
      />
      <WallBearing site={site} />
    </div>
  )
}

/** The edges a bearing may be read along: straight ones of slabs and buildings. */
const wallsOf = (site: Site): readonly (readonly [string, string])[] =>
  [
    ...site.slabs.map(({ name, outline }) => ({ name, path: outline })),
    ...site.casters.flatMap(caster =>
      caster.kind === 'building' ? [{ name: caster.name, path: caster.footprint }] : [],
    ),
  ].flatMap(({ name, path }) =>
    path.edges.flatMap(({ id, riseM }, i) =>
      riseM === undefined
        ? [[id, `${name}, ${cornerLetter(i)} to ${cornerLetter((i + 1) % path.edges.length)}`] as const]
        : [],
    ),
  )

function WallBearing({ site }: { readonly site: Site }) {
  const run = useRun()
  const walls = wallsOf(site)
  const [edgeId, setEdgeId] = useState('')
  const [deg, setDeg] = useState(0)
  const [kind, setKind] = useState<'compass' | 'true'>('compass')
  const [declinationDeg, setDeclination] = useState(0)
  const [fault, setFault] = useState<string | null>(null)
  if (walls.length === 0) return null
  const chosen = walls.find(([id]) => id === edgeId)?.[0] ?? walls[0]![0]
  const set = () => {
    const found = findEdge(site, chosen)
    if (!found) return
    const { path, index } = found
    const from = path.vertices[index]!.at
    const to = path.vertices[(index + 1) % path.vertices.length]!.at
    const north = northFromWall(from, to, kind === 'true' ? { kind, deg } : { kind, deg, declinationDeg })
    setFault(
      north.ok ? run('north', setNorth(north.value)) : wordProblem(north.error[0]!, printMeasures(site.units)).message,
    )
  }
  return (
    <fieldset className="finish">
      <legend>North from a wall</legend>
      <ChoiceField label="Looking along" value={chosen} choices={walls} onSet={setEdgeId} />
      <NumberField label="It bears" unit="°" value={deg} min={0} max={360} step={0.5} onSet={setDeg} />
      <ChoiceField
        label="Read from"
        value={kind}
        choices={[
          ['compass', 'a compass'],
          ['true', 'the plot plan (true)'],
        ]}
        onSet={setKind}
      />
      {kind === 'compass' ? (
        <NumberField
          label="Declination, east is plus"
          unit="°"
          value={declinationDeg}
          min={-180}
          max={180}
          step={0.1}
          onSet={setDeclination}
        />
      ) : null}
      <button type="button" className="btn" onClick={set}>
        Set north
      </button>
      {fault ? (
        <p className="entry-fault" role="alert">
          {fault}
        </p>
      ) : null}
    </fieldset>
  )
}
