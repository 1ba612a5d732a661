import { useState } from 'react'
import type { BidPage } from '../../../core/reports/client/clientBid'
import type { ClientPrice } from '../../../core/reports/client/clientPrice'
import type { PdfSet } from '../../../core/reports/pdfSet'
import { pictureSection } from '../../../core/reports/pictureSection'
import type { Site } from '../../../shared/document/site'
import { fileWords } from '../../app/fileWords'
import { useSession } from '../../app/session'
import { textBytes, toBase64 } from '../../sheets/bytes'
import { makePdf } from '../../sheets/makePdf'
import type { LivePlan } from '../../store/livePlan'
import { CheckField } from '../CheckField'
import { ChoiceField } from '../ChoiceField'
import { TextField } from '../TextField'
import { clientPapers, paperWords, useClient } from './clientStore'
import { printPages } from './printPages'
import { priceOf, useBidPages, useClientSheet, usePricedPlan } from './useClientSheet'

const paperChoices = clientPapers.map(each => [each, paperWords[each]] as const)

const setOf = (pages: readonly BidPage[], title: string): PdfSet => ({
  title,
  subject: title,
  footText: '',
  sections: pages.map(page => pictureSection(page, 12)),
})

/** What the client sees of the site, and the drawing to leave behind. */
export function ClientPage({ live }: { readonly live: LivePlan }) {
  const { host } = useSession()
  const [state, set] = useClient(live.site)
  const write = (words: Parameters<typeof set>[0]) => {
    set(words)
    return null
  }
  const sheet = useClientSheet(live, state)
  const bidPages = useBidPages(live, state)
  const [told, setTold] = useState('')
  const [isMaking, setMaking] = useState(false)
  const priced = usePricedPlan()
  const price = state.showPrice ? priceOf(state, live, priced) : null
  const name = `${live.site.name}, drawing`
  const isOff = sheet === undefined || isMaking
  // A button that is off keeps the focus of whoever pressed it.
  const make = async (work: () => Promise<string>) => {
    if (isOff) return
    setMaking(true)
    setTold('')
    try {
      setTold(await work())
    } catch (error) {
      setTold(`It could not be made: ${(error as Error).message}.`)
    } finally {
      setMaking(false)
    }
  }
  const send = async (kind: 'pdf' | 'svg', bytes: Uint8Array): Promise<string> => {
    const answer = await host.exportFile({ name: fileName(name), kind, base64: toBase64(bytes) })
    if (answer.ok) return `Written: ${answer.value.fileName}.`
    return answer.error.reason === 'canceled' ? '' : fileWords(answer.error)
  }
  return (
    <section className="slab-form client-form" aria-label="For the client">
      <header>
        <h2>For the client</h2>
        <span>{sheet ? sheet.scale.name : 'nothing drawn'}</span>
      </header>
      <div className="fields">
        <TextField label="Title of the drawing" value={state.title} onSet={title => write({ title })} />
        <TextField label="Drawn for" value={state.client} onSet={client => write({ client })} />
        <ChoiceField label="Paper" value={state.paper} choices={paperChoices} onSet={paper => set({ paper })} />
        <div className="client-switches">
          <CheckField label="Areas" value={state.showAreas} onSet={showAreas => set({ showAreas })} />
          <CheckField label="Price" value={state.showPrice} onSet={showPrice => set({ showPrice })} />
          <CheckField label="Pours" value={state.showPours} onSet={showPours => set({ showPours })} />
          <CheckField label="Lines to sign on" value={state.signed} onSet={signed => set({ signed })} />
        </div>
        {state.showPrice ? (
          <>
            <TextField
              label="Price in all, as it is to be read"
              value={state.total}
              onSet={total => write({ total })}
            />
            <p className="told" role="status">
              {priceWords(price, state.total, live.site)}
            </p>
          </>
        ) : null}
        <div className="client-acts">
          <button
            type="button"
            className="btn main"
            aria-disabled={isOff || undefined}
            onClick={() =>
              void make(async () =>
                send('pdf', await makePdf(setOf([sheet!, ...bidPages], name), new AbortController().signal)),
              )
            }
          >
            PDF of the drawing
          </button>
          <button
            type="button"
            className="btn"
            aria-disabled={isOff || undefined}
            onClick={() => void make(() => send('svg', textBytes(sheet!.svg)))}
          >
            SVG
          </button>
          <button
            type="button"
            className="btn"
            aria-disabled={isOff || undefined}
            onClick={() =>
              void make(async () => {
                await printPages([sheet!, ...bidPages], host)
                return ''
              })
            }
          >
            Print
          </button>
        </div>
        <p className="told" role="status">
          {isMaking ? 'Making the drawing.' : told}
        </p>
      </div>
    </section>
  )
}

/** Where the price on the drawing comes from, or why there is none. */
function priceWords(price: ClientPrice | null, typed: string, { prices = [], bid }: Site): string {
  if (typed.trim() !== '')
    return bid?.taxPercent === undefined && bid?.payments === undefined
      ? 'Typed: the price list is not used.'
      : 'Typed: the price list is not used, nor are tax and payments of the bid.'
  if (price === null)
    return prices.length === 0
      ? 'No price list is entered: type the price here, or the list under Numbers.'
      : 'The price list comes to no sum in one currency: see Numbers, or type the price here.'
  const without = price.open.length === 0 ? '' : ` Not in it: ${price.open.join(', ')}.`
  const uneven =
    (bid?.payments ?? []).length > 0 && price.payments.length === 0
      ? ' The payments do not come to 100 %: they are left out.'
      : ''
  return `From the price list: ${price.total}${price.tax.length === 0 ? '' : ' with tax'}.${without}${uneven}`
}

const fileName = (text: string): string =>
  text
    .replace(/[^\p{L}\p{N} ,.-]+/gu, ' ')
    .trim()
    .slice(0, 80) || 'drawing'
