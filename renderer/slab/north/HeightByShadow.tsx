import { useState } from 'react'
import { changeCaster } from '../../../core/document/commands/changeEntity'
import { heightFromShadow } from '../../../core/sun/measureByShadow'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Caster } from '../../../shared/document/caster'
import type { Site } from '../../../shared/document/site'
import { wordFindings } from '../../app/wordFindings'
import { useEditor } from '../../editor/useEditor'
import { Fault } from '../Fault'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { MomentFields, momentMs, useMoment } from './MomentFields'

/** What stands on the ground and has a height of its own to be found. */
type Standing = Exclude<Caster, { kind: 'cover' }>

const edgeOf: Readonly<Record<Standing['kind'], string>> = {
  building: 'eave',
  wall: 'top',
  tree: 'top of the crown',
}

/** The height of a building, fence or tree by the length of its shadow on level ground, taped in a known minute. */
export function HeightByShadow({ site, caster }: { readonly site: Site; readonly caster: Standing }) {
  const run = useRun()
  const editor = useEditor()
  const [moment, setMoment] = useMoment()
  const [lengthM, setLengthM] = useState(0)
  const [fault, setFault] = useState<string | null>(null)
  const print = printMeasures(site.units)
  const edge = edgeOf[caster.kind]
  const ms = momentMs(moment, site)
  const found = lengthM === 0 ? null : ms.ok ? heightFromShadow(lengthM, ms.value, site.place) : ms
  const nowM = (caster.kind === 'building' ? caster.eaveM : caster.topM) - caster.baseM
  const pick = () =>
    editor.pick({
      prompts: [`Click the ground straight under the ${edge}.`, `Click where the shadow of the ${edge} ends.`],
      catches: true,
      done: ([foot, tip]) => {
        if (foot && tip) setLengthM(Math.hypot(tip[0] - foot[0], tip[1] - foot[1]))
        setFault(null)
      },
    })
  const use = (heightM: number) =>
    setFault(
      run(
        'height by shadow',
        changeCaster(
          caster.id,
          caster.kind === 'building' ? { eaveM: caster.baseM + heightM } : { topM: caster.baseM + heightM },
        ),
      ),
    )
  return (
    <details className="by-shadow">
      <summary>Height from its shadow</summary>
      <div className="fields">
        <MeasureField
          label={`Shadow of the ${edge}`}
          lengthM={lengthM}
          units={site.units}
          onSet={to => {
            if (to <= 0) return 'Type a length greater than zero.'
            setLengthM(to)
            return null
          }}
        />
        <button type="button" className="btn beside" onClick={pick}>
          Point it out
        </button>
        <MomentFields moment={moment} place={site.place} onSet={setMoment} />
        {found === null ? (
          <p className="told">On level ground, from straight under the {edge}, the way the shadow falls.</p>
        ) : found.ok ? (
          <>
            <p className="told" role="status">
              The sun stands {found.value.altitudeDeg.toFixed(1)}° high: the {edge} is{' '}
              <b>{print.length(found.value.heightM)}</b> above the ground, now {print.length(nowM)}. A clock off by a
              minute would change it by {print.size(found.value.perMinuteM)}.
            </p>
            <button type="button" className="btn main" onClick={() => use(found.value.heightM)}>
              Use {print.length(found.value.heightM)}
            </button>
          </>
        ) : (
          <Fault words={wordFindings(site, found.error)} />
        )}
        <Fault words={fault} />
      </div>
    </details>
  )
}
