import { useRef, useState } from 'react'
import { fadePicture, movePicture, turnPicture } from '../../../core/document/commands/placePicture'
import { removePicture, setPicture } from '../../../core/document/commands/setSite'
import { pictureSize } from '../../../core/document/pictureSize'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Site } from '../../../shared/document/site'
import { useEditor } from '../../editor/useEditor'
import { Fault } from '../Fault'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { PdfPageForm } from './PdfPageForm'
import { PictureScale } from './PictureScale'
import { PictureTurn } from './PictureTurn'
import { countPdfPages, drawPdfPage, isPdf } from './pdfPages'
import { readPicture } from './readPicture'

/** The longer side of a picture until two points and their distance are known: 60 ft. */
const firstSideM = 18.288
const firstScale = (widthPx: number, heightPx: number): number => firstSideM / Math.max(widthPx, heightPx)

/** A plot plan or an aerial picture under the plan: set to scale, turned, faded, moved, taken away. */
export function PictureForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const editor = useEditor()
  const [fault, setFault] = useState<string | null>(null)
  const { picture } = site.place
  const [pdf, setPdf] = useState<{ readonly file: File; readonly pages: number } | null>(null)
  /** What is being read, by its name; null for nothing. */
  const [reading, setReading] = useState<string | null>(null)
  /** Counts the files that were asked for: one that is slow must not take the place of the next. */
  const asked = useRef(0)
  const read = async (file: File, how: () => Promise<void>) => {
    const own = ++asked.current
    setReading(file.name)
    setFault(null)
    await how()
    if (asked.current === own) setReading(null)
  }
  const choose = async (input: HTMLInputElement) => {
    const file = input.files?.[0]
    if (!file) return
    setPdf(null)
    await read(file, async () => ((await isPdf(file)) ? await open(file) : await take(file)))
    // The same file may be taken again.
    input.value = ''
  }
  const open = async (file: File) => {
    const own = asked.current
    const pages = await countPdfPages(file)
    if (asked.current !== own) return
    setFault(pages.ok ? null : pages.error)
    if (!pages.ok) return
    if (pages.value === 1) await takePage(file, 1)
    else setPdf({ file, pages: pages.value })
  }
  const takePage = async (file: File, page: number) => {
    const own = asked.current
    const drawn = await drawPdfPage(file, page)
    if (asked.current !== own) return
    if (drawn.ok) await take(drawn.value)
    else setFault(drawn.error)
  }
  const take = async (file: File) => {
    const own = asked.current
    const read = await readPicture(file)
    if (asked.current !== own) return
    if (!read.ok) {
      setFault(read.error)
      return
    }
    const { asset, assetId, widthPx, heightPx } = read.value
    const metersPerPixel = firstScale(widthPx, heightPx)
    setFault(
      run(
        'picture',
        setPicture(
          {
            assetId,
            originAt: [(-widthPx / 2) * metersPerPixel, (heightPx / 2) * metersPerPixel],
            metersPerPixel,
            turnDeg: 0,
            fade: picture?.fade ?? 0.4,
          },
          asset,
        ),
      ),
    )
  }
  const move = () =>
    editor.pick({
      prompts: ['Picture: click a point of it.', 'Click where that point belongs.'],
      catches: true,
      preview: ([from, to]) => (from && to ? movePicture(from, to) : null),
      done: ([from, to]) => {
        if (from && to) setFault(run('move picture', movePicture(from, to)))
      },
    })
  return (
    <div className="fields">
      <label className="measure wide">
        <span>{picture ? 'Another picture: PNG, JPEG or PDF' : 'PNG, JPEG or PDF'}</span>
        <input
          type="file"
          accept="image/png,image/jpeg,application/pdf,.png,.jpg,.jpeg,.pdf"
          onChange={event => void choose(event.target)}
        />
      </label>
      {pdf ? <PdfPageForm pages={pdf.pages} onTake={page => read(pdf.file, () => takePage(pdf.file, page))} /> : null}
      {reading === null ? null : (
        <p className="told" role="status">
          Reading “{reading}”.
        </p>
      )}
      <Fault words={fault} />
      {picture ? (
        <>
          <PictureSize site={site} />
          <PictureScale site={site} />
          <PictureTurn site={site} />
          <NumberField
            label="Turned"
            unit="° left"
            value={Number(picture.turnDeg.toFixed(2))}
            min={-180}
            max={180}
            step={0.1}
            onSet={to => setFault(run('turn picture', turnPicture(picture.originAt, to - picture.turnDeg)))}
          />
          <NumberField
            label="Faded"
            unit="%"
            value={Math.round(picture.fade * 100)}
            min={0}
            max={100}
            step={5}
            onSet={to => setFault(run('fade picture', fadePicture(to / 100)))}
          />
          <button type="button" className="btn" onClick={move}>
            Move it by two points
          </button>
          <button
            type="button"
            className="btn"
            onClick={event => {
              // This button goes with the picture.
              event.currentTarget.closest('.fields')?.querySelector('input')?.focus()
              // A point of it that was asked for goes with it as well.
              if (editor.getState().picking) editor.choose('select')
              setFault(run('remove picture', removePicture))
            }}
          >
            Remove the picture
          </button>
        </>
      ) : (
        <p className="told">
          A plot plan or an aerial picture to draw over. It is kept in the site’s file, at most 2,400 pixels wide or
          high.
        </p>
      )}
    </div>
  )
}

/** How much ground the picture covers as it is set now. */
function PictureSize({ site }: { readonly site: Site }) {
  const picture = site.place.picture!
  const asset = site.assets?.[picture.assetId]
  const px = asset && pictureSize(asset.base64)
  if (!px) return null
  const print = printMeasures(site.units)
  const isFirstSize = picture.metersPerPixel === firstScale(px.width, px.height)
  return (
    <p className="told">
      {px.width} × {px.height} pixels: {print.length(px.width * picture.metersPerPixel)} by{' '}
      {print.length(px.height * picture.metersPerPixel)} of ground.
      {isFirstSize ? ' Not set to scale yet.' : ''}
    </p>
  )
}
