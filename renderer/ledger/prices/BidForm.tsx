import '../../slab/slab.css'
import { useRef } from 'react'
import { setBid } from '../../../core/document/commands/setBid'
import { paidPercent } from '../../../core/quantities/bidFigures'
import { printAsPriced } from '../../../core/reports/printAsPriced'
import { printNumber } from '../../../core/units/printNumber'
import type { Bid } from '../../../shared/document/bid'
import type { Site } from '../../../shared/document/site'
import type { Quantity } from '../../../shared/planJson'
import { takeEdit } from '../../app/applyEdit'
import { Fold } from '../../app/Fold'
import { useSession } from '../../app/session'
import { TypedField } from '../../pours/TypedField'
import { parseFigure } from '../materials/amounts'

/** What the steps of a payment are called at first. Common practice, no source. */
const usualPayments = ['Deposit', 'On the day of the pour', 'When the work is done']

const percentText = (percent: number): string => `${printNumber(percent, 6)} %`

const readPercent = (typed: string): number | null => {
  const read = parseFigure(typed)
  return read !== null && ['', '%'].includes(read.rest) ? read.value : null
}

/** Tax, how long the price holds, payments and notes: what goes to the client with the price. */
export function BidForm({ site, quantities }: { readonly site: Site; readonly quantities: readonly Quantity[] }) {
  const session = useSession()
  const { bid = {} } = site
  const { payments = [], notes = [] } = bid
  const add = useRef<HTMLButtonElement>(null)
  const change = (what: string, patch: Parameters<typeof setBid>[0]) => takeEdit(session, `bid ${what}`, setBid(patch))
  const left = Math.max(0, Math.round((100 - paidPercent(payments)) * 1e6) / 1e6)
  const setPayment = (at: number, to: Partial<(typeof payments)[number]>) =>
    change('payment', { payments: payments.map((own, i) => (i === at ? { ...own, ...to } : own)) })
  return (
    <section className="slab-form" aria-label="Bid">
      <Fold name="Bid" told={toldOf(bid, quantities)}>
        <div className="fields">
          <TypedField
            label="Tax, %"
            text={bid.taxPercent === undefined ? '' : percentText(bid.taxPercent)}
            onText={typed => {
              if (typed.trim() === '') return change('tax', { taxPercent: undefined })
              const taxPercent = readPercent(typed)
              return taxPercent === null ? `“${typed}” is no rate: percent, 8.25.` : change('tax', { taxPercent })
            }}
          />
          <TypedField
            label="Name of the tax"
            text={bid.taxName ?? ''}
            onText={typed => change('name of the tax', { taxName: typed.trim() || undefined })}
          />
          <p className="told wide">
            Local rules say what is taxed, and at what rate. Mark the lines that are free of it in the price list.
          </p>
          <TypedField
            label="Price holds, days"
            text={bid.holdsDays === undefined ? '' : String(bid.holdsDays)}
            onText={typed => {
              if (typed.trim() === '') return change('days', { holdsDays: undefined })
              const read = /^(\d+)( days?)?$/.exec(typed.trim())
              return read === null
                ? `“${typed}” is no number of days: 30.`
                : change('days', { holdsDays: Number(read[1]) })
            }}
          />
          {payments.map(({ name, percent }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a payment is known by its place
            <fieldset key={i} className="finish material">
              <legend>{name}</legend>
              <TypedField
                label="Payment"
                text={name}
                onText={typed =>
                  typed.trim() === '' ? 'A payment needs a name.' : setPayment(i, { name: typed.trim() })
                }
              />
              <TypedField
                label="Share of the bid, %"
                text={percentText(percent)}
                onText={typed => {
                  const share = readPercent(typed)
                  return share === null ? `“${typed}” is no share: percent, 30.` : setPayment(i, { percent: share })
                }}
              />
              <p className="told wide" role="status">
                {amountWords(i, quantities)}
              </p>
              <div className="line-acts">
                <button
                  type="button"
                  className="btn"
                  aria-label={`Remove payment ${name}`}
                  onClick={() => {
                    change('payment', { payments: payments.filter((_, n) => n !== i) })
                    add.current?.focus()
                  }}
                >
                  Remove payment
                </button>
              </div>
            </fieldset>
          ))}
          {payments.length > 0 ? (
            <p className="told wide" role="status">
              {left === 0 && paidPercent(payments) === 100
                ? 'The payments come to 100 %.'
                : `The payments come to ${percentText(paidPercent(payments))}, not to 100 %: the client’s bid leaves them out.`}{' '}
              Some places limit what may be asked for before the work: see local law.
            </p>
          ) : null}
          <button
            ref={add}
            type="button"
            className="btn"
            onClick={() =>
              change('payment', {
                payments: [
                  ...payments,
                  { name: usualPayments[payments.length] ?? `Payment ${payments.length + 1}`, percent: left },
                ],
              })
            }
          >
            Add a payment
          </button>
          <div className="wide bid-notes">
            {notes.map((note, i) => (
              <TypedField
                // biome-ignore lint/suspicious/noArrayIndexKey: a note is known by its place
                key={i}
                label={`Note ${i + 1}`}
                text={note}
                isLong
                onText={typed => {
                  const words = typed.trim()
                  return change('note', {
                    notes: notes.flatMap((own, n) => (n === i ? (words === '' ? [] : [words]) : [own])),
                  })
                }}
              />
            ))}
            <TypedField
              label={notes.length === 0 ? 'Note, as what is not included' : 'One more note'}
              text=""
              isLong
              onText={typed => (typed.trim() === '' ? null : change('note', { notes: [...notes, typed.trim()] }))}
            />
          </div>
        </div>
      </Fold>
    </section>
  )
}

const moneyOf = ({ value, unit }: Quantity): string => `${printAsPriced(value, unit)} ${unit}`

/** What a payment comes to, in each currency of the bid. */
function amountWords(i: number, quantities: readonly Quantity[]): string {
  const own = quantities.filter(({ id }) => id.startsWith(`total-bid-payment-${i + 1}-`))
  return own.length === 0 ? 'No sum yet: the price list is open.' : own.map(moneyOf).join(', ')
}

/** What stands in it, in a few words. */
function toldOf({ taxPercent, holdsDays, payments = [], notes = [] }: Bid, quantities: readonly Quantity[]): string {
  const withTax = quantities.filter(({ id }) => /^total-bid-with-tax-/.test(id)).map(moneyOf)
  const counted = (n: number, word: string) => (n === 0 ? [] : [`${n} ${word}${n === 1 ? '' : 's'}`])
  const told = [
    ...(taxPercent === undefined ? [] : withTax.map(sum => `${sum} with tax`)),
    ...(holdsDays === undefined ? [] : [`holds ${holdsDays} ${holdsDays === 1 ? 'day' : 'days'}`]),
    ...counted(payments.length, 'payment'),
    ...counted(notes.length, 'note'),
  ]
  return told.join(', ') || 'none entered'
}
