import { useState } from 'react'
import { removePicture, setPicture } from '../../core/document/commands/setSite'
import type { Site } from '../../shared/document/site'
import { MeasureField } from './MeasureField'
import { NumberField } from './NumberField'
import { readPicture } from './readPicture'
import { useRun } from './useRun'

/** A picture under the plan: how wide it is, where it lies, how it is turned, how strong it shows. */
export function PictureForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const [fault, setFault] = useState<string | null>(null)
  const { picture } = site.place
  const take = async (file: File | undefined) => {
    if (!file) return
    const read = await readPicture(file)
    if (!read.ok) {
      setFault(read.error)
      return
    }
    const { asset, assetId, widthPx, heightPx } = read.value
    // 60 ft across until two points and their distance are known; its middle at the origin.
    const metersPerPixel = 18.288 / widthPx
    setFault(
      run(
        'picture',
        setPicture(
          {
            assetId,
            originAt: [(-widthPx / 2) * metersPerPixel, (heightPx / 2) * metersPerPixel],
            metersPerPixel,
            turnDeg: 0,
            fade: 0.5,
          },
          asset,
        ),
      ),
    )
  }
  return (
    <div className="fields">
      <label className="measure wide">
        <span>PNG or JPEG</span>
        <input type="file" accept="image/png,image/jpeg" onChange={event => void take(event.target.files?.[0])} />
      </label>
      {picture ? (
        <>
          <ScaleByDistance site={site} />
          <NumberField
            label="Turned"
            unit="° left"
            value={picture.turnDeg}
            min={-180}
            max={180}
            step={0.1}
            onSet={turnDeg => run('picture', setPicture({ ...picture, turnDeg }))}
          />
          <NumberField
            label="Faded"
            unit="%"
            value={Math.round(picture.fade * 100)}
            min={0}
            max={100}
            onSet={to => run('picture', setPicture({ ...picture, fade: to / 100 }))}
          />
          <button type="button" className="btn" onClick={() => run('picture', removePicture)}>
            Take the picture away
          </button>
        </>
      ) : null}
      {fault ? (
        <p className="entry-fault" role="alert">
          {fault}
        </p>
      ) : null}
    </div>
  )
}

const keep = (set: (lengthM: number) => void) => (lengthM: number) => {
  set(lengthM)
  return null
}

/** What measures so much on the plan is so long in truth: the picture grows about its corner by the quotient. */
function ScaleByDistance({ site }: { readonly site: Site }) {
  const run = useRun()
  const [readsM, setReadsM] = useState(3.048)
  const [isM, setIsM] = useState(3.048)
  const picture = site.place.picture!
  return (
    <>
      <MeasureField label="What reads" lengthM={readsM} units={site.units} onSet={keep(setReadsM)} />
      <MeasureField label="is in truth" lengthM={isM} units={site.units} onSet={keep(setIsM)} />
      <button
        type="button"
        className="btn"
        disabled={!(readsM > 0 && isM > 0)}
        onClick={() =>
          run('picture scale', setPicture({ ...picture, metersPerPixel: (picture.metersPerPixel * isM) / readsM }))
        }
      >
        Set to scale
      </button>
    </>
  )
}
