import { changeSlab } from '../../../core/document/commands/changeEntity'
import { setBaseReadings } from '../../../core/document/commands/slabParts'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { useEditor } from '../../editor/useEditor'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'

/** How a slab falls, and how deep its base was read under the string line. */
export function GroundFields({ site, slab }: { readonly site: Site; readonly slab: Slab }) {
  const run = useRun()
  const editor = useEditor()
  const { slope, baseDepths } = slab
  const readings = baseDepths?.points ?? []
  const setSlope = (fall: number, towardDeg: number) =>
    run('slope', changeSlab(slab.id, { slope: fall > 0 ? { fall, towardDeg } : undefined }))
  const setReadings = (points: typeof readings) => run('base readings', setBaseReadings(slab.id, points))
  return (
    <>
      <details>
        <summary>Slope{slope ? `, ${Number((slope.fall * 100).toFixed(1))} %` : ''}</summary>
        <div className="fields">
          <NumberField
            label="Fall"
            unit="%"
            value={Number(((slope?.fall ?? 0) * 100).toFixed(2))}
            min={0}
            max={30}
            step={0.5}
            onSet={percent => setSlope(percent / 100, slope?.towardDeg ?? 180)}
          />
          <NumberField
            label="Runs down toward"
            unit="° from up"
            value={slope?.towardDeg ?? 180}
            min={0}
            max={360}
            step={15}
            onSet={towardDeg => setSlope(slope?.fall ?? 0.02, towardDeg)}
          />
          <p className="told">0 up the drawing, 90 right, 180 down, 270 left. Local code decides near a building.</p>
        </div>
      </details>
      <details>
        <summary>Base by string line{readings.length > 0 ? `, ${readings.length} readings` : ''}</summary>
        <div className="fields">
          {readings.map((reading, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: readings have no id; their order is all there is
            <div className="tape-row" key={i}>
              <MeasureField
                label={`Reading ${i + 1}, depth`}
                size="base"
                lengthM={reading.depthM}
                units={site.units}
                onSet={depthM => setReadings(readings.map((each, k) => (k === i ? { ...each, depthM } : each)))}
              />
              <button
                type="button"
                className="btn"
                aria-label={`Remove reading ${i + 1}`}
                onClick={() => setReadings(readings.filter((_, k) => k !== i))}
              >
                Remove
              </button>
            </div>
          ))}
          <button
            type="button"
            className="btn"
            onClick={() =>
              editor.pick({
                catches: false,
                prompts: ['Click where the string line was read, or type how far right and up.'],
                done: ([at]) => {
                  if (at) setReadings([...readings, { at, depthM: slab.baseDepthM || 0.1016 }])
                },
              })
            }
          >
            Point out a reading
          </button>
          <p className="told">The mean of the readings stands in for the one typed depth.</p>
        </div>
      </details>
    </>
  )
}
