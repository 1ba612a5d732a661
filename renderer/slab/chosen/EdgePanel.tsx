import { useState } from 'react'
import { findEdge, isClosed } from '../../../core/document/commands/findPath'
import { edgeLengthOf } from '../../../core/document/commands/reversePath'
import { setDimension } from '../../../core/document/commands/setDimension'
import { setEdgeRadius, setEdgeRise } from '../../../core/document/commands/setEdgeRise'
import { addSteps, setAgainstExisting, setThickened } from '../../../core/document/commands/slabParts'
import { splitEdge } from '../../../core/document/commands/splitEdge'
import { edgeFromRise } from '../../../core/geometry/resolvePath'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { isFinger } from '../../app/handWords'
import { cornerLetter } from '../../editor/cornerNames'
import { focusPlan } from '../../editor/focusPlan'
import { useEditor } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { goToForm } from '../goToForm'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { AddBorder } from './AddBorder'
import { ChooseSeveral } from './ChooseSeveral'
import { edgesOfPath, GoToPart } from './GoTo'
import { roundedEdgeM } from './roundedEdgeM'

/** Depth of a thickened edge 12 in, width 12 in; risers 7 in, treads 12 in: common practice, no source. */
const usual = { deepM: 0.3048, wideM: 0.3048, riserM: 0.1778, treadM: 0.3048 } as const

/** One edge, or several of one outline: length, arc, thickening, existing work, border, steps. */
export function EdgePanel({ site, edgeIds }: { readonly site: Site; readonly edgeIds: readonly Id[] }) {
  const run = useRun()
  const editor = useEditor()
  const [moves, setMoves] = useState<'end' | 'start' | 'both'>('end')
  const [bulgesOut, setBulgesOut] = useState(true)
  const [risers, setRisers] = useState(2)
  const id = edgeIds[0]!
  const { path, index } = findEdge(site, id)!
  const n = path.vertices.length
  const [a, b] = [path.vertices[index]!, path.vertices[(index + 1) % n]!]
  const edge = edgeFromRise(id, a.at, b.at, path.edges[index]!.riseM)
  const slab = site.slabs.find(
    each => each.outline.id === path.id || each.openings.some(opening => opening.path.id === path.id),
  )
  const isOutline = slab?.outline.id === path.id
  // The rings of openings run clockwise: out of them is to the left.
  const [out, into] = slab !== undefined && !isOutline ? (['left', 'right'] as const) : (['right', 'left'] as const)
  const thick = slab?.thickened.find(({ edges }) => edges.includes(id))
  const isAgainst = slab?.againstExisting.includes(id) ?? false
  const lengthM = edgeLengthOf(path, index)
  const ends = [cornerLetter(index), cornerLetter((index + 1) % n)] as const
  const riseM = path.edges[index]!.riseM ?? 0
  const bulges = riseM < 0 ? 'left' : riseM > 0 ? 'right' : bulgesOut ? out : into
  return (
    <>
      <header>
        <h2>{edgeIds.length === 1 ? `Edge ${ends[0]} to ${ends[1]}` : `${edgeIds.length} edges`}</h2>
      </header>
      <div className="fields">
        {edgeIds.length === 1 ? (
          <>
            <GoToPart site={site} path={path} value={id} />
            <ChoiceField
              label="Which end moves"
              value={moves}
              choices={[
                ['end', `${ends[1]} moves`],
                ['start', `${ends[0]} moves`],
                ['both', 'Both move'],
              ]}
              onSet={setMoves}
            />
            <MeasureField
              key={`${id} length`}
              label="Length"
              lengthM={lengthM}
              units={site.units}
              onSet={to => run('length', setDimension(id, to, { moves, with: 'side' }))}
            />
            <ChoiceField
              label={isClosed(path) ? 'An arc bulges' : `From ${ends[0]} an arc bulges`}
              value={bulges}
              choices={[
                [out, isClosed(path) ? 'Out' : 'To the right'],
                [into, isClosed(path) ? 'In' : 'To the left'],
              ]}
              onSet={side => {
                setBulgesOut(side === out)
                if (riseM !== 0) run('arc', setEdgeRise(id, side === 'right' ? Math.abs(riseM) : -Math.abs(riseM)))
              }}
            />
            <MeasureField
              key={`${id} rise`}
              label="Rise (0 = straight)"
              lengthM={Math.abs(riseM)}
              units={site.units}
              onSet={to => run('arc', setEdgeRise(id, (bulges === 'left' ? -1 : 1) * to))}
            />
            <MeasureField
              key={`${id} radius`}
              label="Radius"
              lengthM={edge.arc?.radiusM ?? 0}
              units={site.units}
              onSet={to => run('arc', setEdgeRadius(id, to, { bulges }))}
            />
            <button type="button" className="btn" onClick={() => run('new corner', splitEdge(id, 0.5))}>
              New corner in the middle
            </button>
          </>
        ) : null}
        {slab ? (
          <>
            <AddBorder
              site={site}
              slab={slab}
              pathId={path.id}
              edges={edgeIds.filter(each => path.edges.some(own => own.id === each))}
            />
            <label className="check-field">
              <input
                type="checkbox"
                checked={isAgainst}
                onChange={() => run('existing work', setAgainstExisting(slab.id, edgeIds, !isAgainst))}
              />
              Meets existing work
            </label>
            <label className="check-field">
              <input
                type="checkbox"
                checked={thick !== undefined}
                onChange={() =>
                  run(
                    'thickened edge',
                    setThickened(slab.id, edgeIds, thick ? null : { depthM: usual.deepM, widthM: usual.wideM }),
                  )
                }
              />
              Thickened
            </label>
            {thick ? (
              <>
                <MeasureField
                  key={`${id} thickened`}
                  label="Thickened to"
                  size="thickenedDepth"
                  lengthM={thick.depthM}
                  units={site.units}
                  onSet={depthM =>
                    run('thickened edge', setThickened(slab.id, edgeIds, { depthM, widthM: thick.widthM }))
                  }
                />
                <MeasureField
                  key={`${id} wide`}
                  label="How wide"
                  size="thickenedWidth"
                  lengthM={thick.widthM}
                  units={site.units}
                  onSet={to =>
                    run('thickened edge', setThickened(slab.id, edgeIds, { depthM: thick.depthM, widthM: to }))
                  }
                />
              </>
            ) : null}
            {isOutline && edgeIds.length === 1 ? (
              <>
                <NumberField label="Risers" value={risers} min={1} max={20} onSet={setRisers} />
                <button
                  type="button"
                  className="btn"
                  onClick={() => {
                    const steps = {
                      edgeId: id,
                      fromT: 0,
                      widthM: roundedEdgeM(slab, id),
                      risers,
                      riserM: usual.riserM,
                      treadM: usual.treadM,
                    }
                    // This form goes: that of the steps takes the keys. A finger wants no keyboard over the plan.
                    if (editor.make('steps', addSteps(slab.id, steps))) setTimeout(isFinger() ? focusPlan : goToForm)
                  }}
                >
                  Steps down from this edge
                </button>
              </>
            ) : null}
          </>
        ) : null}
        <ChooseSeveral what="edges" parts={edgesOfPath(path)} chosen={edgeIds} />
      </div>
    </>
  )
}
