import { useRef, useState } from 'react'
import { csvTables } from '../../core/reports/csvTables'
import { geoJson } from '../../core/reports/geoJson'
import { planSheetData } from '../../core/reports/planSheetData'
import type { HostInput } from '../../shared/host'
import { fileWords } from '../app/fileWords'
import { useSession, useView } from '../app/session'
import { textBytes, toBase64 } from './bytes'
import { makePdf } from './makePdf'
import { chosenSet, type SheetPicture } from './sheetList'
import { svgToPng } from './sheetPictures'
import { type Reader, readers, sheetText } from './sheetTexts'
import { type Sheets, useSheets } from './useSheets'

/** A phone held upright, at three pixels a point. */
const phonePx = 1080

type Kind = HostInput<'exportFile'>['kind']

interface File {
  readonly name: string
  readonly kind: Kind
  readonly bytes: Uint8Array
}

const fileName = (text: string): string =>
  text
    .replace(/[^\p{L}\p{N} ,.-]+/gu, ' ')
    .trim()
    .slice(0, 80) || 'sheet'

/** One after the other: large pictures at once would fill the memory. */
async function inTurn<A, B>(all: readonly A[], make: (each: A) => Promise<B>): Promise<B[]> {
  const made: B[] = []
  for (const each of all) made.push(await make(each))
  return made
}

/** Which sheets, and where they go. */
export function SheetsPage() {
  const sheets = useSheets()
  return (
    <>
      <header>
        <h2>Sheets</h2>
        <span>{sheets ? '' : 'working'}</span>
      </header>
      {sheets ? <Choices sheets={sheets} /> : <p className="note">Working</p>}
    </>
  )
}

function Choices({ sheets }: { readonly sheets: Sheets }) {
  const { host, view } = useSession()
  const leftOut = useView(state => state.leftOut)
  const [told, setTold] = useState('')
  const [doing, setDoing] = useState<string | null>(null)
  const stopper = useRef<AbortController | null>(null)
  const { plan, list } = sheets
  const site = fileName(plan.site.name)

  const send = async (what: string, make: (signal: AbortSignal) => Promise<readonly File[]>) => {
    if (doing !== null) return
    const control = new AbortController()
    stopper.current = control
    setDoing(what)
    setTold('')
    try {
      const names: string[] = []
      for (const { name, kind, bytes } of await make(control.signal)) {
        if (control.signal.aborted) break
        const answer = await host.exportFile({ name, kind, base64: toBase64(bytes) })
        if (!answer.ok) {
          if (answer.error.reason !== 'canceled') setTold(fileWords(answer.error))
          return
        }
        names.push(answer.value.fileName)
      }
      setTold(`Written: ${names.join(', ')}.`)
    } catch (error) {
      setTold(control.signal.aborted ? 'Stopped.' : `It could not be made: ${(error as Error).message}.`)
    } finally {
      setDoing(null)
    }
  }
  const chosen = list.sheets.filter(({ id }) => !leftOut.includes(id))
  const pictures = chosen.flatMap(({ pages }) => pages)
  const phonePictures = chosen.flatMap(({ phonePages }) => phonePages)
  const toPng = async (picture: SheetPicture): Promise<File> => ({
    name: fileName(`${site}, ${picture.name}`),
    kind: 'png',
    bytes: await svgToPng(picture.svg, phonePx),
  })
  const exports: readonly {
    readonly words: string
    readonly off: boolean
    make(signal: AbortSignal): Promise<readonly File[]>
  }[] = [
    {
      words: 'PDF of the chosen sheets',
      off: chosen.length === 0,
      make: async signal => [
        { name: `${site}, sheets`, kind: 'pdf', bytes: await makePdf(chosenSet(list, leftOut), signal) },
      ],
    },
    {
      words: 'SVG drawings',
      off: pictures.length === 0,
      make: async () =>
        pictures.map(({ name, svg }) => ({ name: fileName(`${site}, ${name}`), kind: 'svg', bytes: textBytes(svg) })),
    },
    { words: 'PNG, phone width', off: pictures.length === 0, make: () => inTurn(phonePictures, toPng) },
    {
      words: 'CSV tables',
      off: false,
      make: async () =>
        csvTables(planSheetData(plan)).map(({ name, text }) => ({
          name: `${site}, ${name}`,
          kind: 'csv',
          bytes: textBytes(text),
        })),
    },
    {
      words: 'GeoJSON',
      off: false,
      make: async () => [
        { name: site, kind: 'geojson', bytes: textBytes(`${JSON.stringify(geoJson(planSheetData(plan)))}\n`) },
      ],
    },
  ]
  return (
    <>
      <div className="acts-row">
        <button type="button" className="btn" onClick={() => view.setState({ leftOut: [] })}>
          All sheets
        </button>
        {plan.dayPlans.length > 0 ? (
          <button
            type="button"
            className="btn"
            onClick={() =>
              view.setState({ leftOut: list.sheets.map(({ id }) => id).filter(id => !id.startsWith('day-')) })
            }
          >
            Day sheets only
          </button>
        ) : null}
      </div>
      <ul className="sheet-choices" aria-label="Sheets to show and send">
        {list.sheets.map(({ id, name, phonePages }) => (
          <li key={id}>
            <label>
              <input
                type="checkbox"
                checked={!leftOut.includes(id)}
                onChange={event =>
                  view.setState({
                    leftOut: event.target.checked ? leftOut.filter(each => each !== id) : [...leftOut, id],
                  })
                }
              />
              {name}
            </label>
            <button
              type="button"
              className="as-words"
              aria-disabled={doing !== null || undefined}
              aria-label={`${name} as a phone-width picture`}
              onClick={() => void send(name, () => inTurn(phonePages, toPng))}
            >
              phone picture
            </button>
          </li>
        ))}
      </ul>
      <h3>Export</h3>
      <div className="acts-row">
        {exports.map(({ words, off, make }) => (
          <button
            key={words}
            type="button"
            className="btn"
            aria-disabled={off || doing !== null || undefined}
            onClick={() => (off ? undefined : void send(words, make))}
          >
            {words}
          </button>
        ))}
      </div>
      <p className="note" role="status">
        {doing ? `Making ${doing}. ` : told}
        {doing ? (
          <button type="button" className="as-words" onClick={() => stopper.current?.abort()}>
            Stop
          </button>
        ) : null}
      </p>
      <CopyText sheets={sheets} />
    </>
  )
}

function CopyText({ sheets }: { readonly sheets: Sheets }) {
  const [reader, setReader] = useState<Reader>('crew')
  const [isCopied, setCopied] = useState(false)
  const text = sheetText(sheets.plan, reader)
  return (
    <section aria-label="Copy as text">
      <h3>Copy as text</h3>
      <div className="acts-row">
        {readers.map(each => (
          <button
            key={each}
            type="button"
            className="btn"
            aria-pressed={each === reader}
            onClick={() => {
              setReader(each)
              setCopied(false)
            }}
          >
            For the {each}
          </button>
        ))}
      </div>
      <textarea className="copy-text" readOnly value={text} aria-label={`Text for the ${reader}`} rows={10} />
      <div className="acts-row">
        <button
          type="button"
          className="btn"
          onClick={() =>
            void navigator.clipboard.writeText(text).then(
              () => setCopied(true),
              () => setCopied(false),
            )
          }
        >
          {isCopied ? 'Copied' : 'Copy'}
        </button>
      </div>
    </section>
  )
}
