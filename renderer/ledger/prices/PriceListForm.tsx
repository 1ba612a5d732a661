import '../../slab/slab.css'
import { useRef, useState } from 'react'
import { addPrice } from '../../../core/document/commands/setPrices'
import { printAsPriced } from '../../../core/reports/printAsPriced'
import type { Site } from '../../../shared/document/site'
import type { Quantity } from '../../../shared/planJson'
import { takeEdit } from '../../app/applyEdit'
import { Fold } from '../../app/Fold'
import { useSession } from '../../app/session'
import { ChoiceField } from '../../slab/ChoiceField'
import { siteCurrency } from '../siteCurrency'
import { PriceFields } from './PriceFields'
import { priceStarts, usualLines } from './priceChoices'

/** What the client pays, line by line. */
export function PriceListForm({ site, quantities }: { readonly site: Site; readonly quantities: readonly Quantity[] }) {
  const session = useSession()
  const { prices = [] } = site
  const add = useRef<HTMLButtonElement>(null)
  const [usual, setUsual] = useState<string>(usualLines[0])
  const take = (price: Omit<Parameters<typeof addPrice>[0], 'currency'>) =>
    takeEdit(session, 'price list line', addPrice({ ...price, currency: siteCurrency(site) }))
  return (
    <section className="slab-form" aria-label="Price list">
      <Fold name="Price list" told={toldOf(prices.length, quantities)}>
        <div className="fields">
          {prices.length === 0 ? (
            <p className="told wide">
              What the client pays, by area, length, piece or job: the bid and the client’s drawing add it up.
            </p>
          ) : null}
          {prices.map(price => (
            <PriceFields
              key={price.id}
              {...{ site, price, quantities }}
              // The button that was pressed is gone with its line.
              onRemoved={() => add.current?.focus()}
            />
          ))}
          {priceStarts(site).map(({ words, price }, i) => (
            <button
              key={`${price.by} ${price.finishId ?? ''} ${words}`}
              ref={i === 0 ? add : null}
              type="button"
              className="btn beside"
              onClick={() => take(price)}
            >
              Add {words.charAt(0).toLowerCase() + words.slice(1)}
            </button>
          ))}
          <ChoiceField
            label="Usual on a job"
            value={usual}
            choices={usualLines.map(line => [line, line] as const)}
            onSet={setUsual}
          />
          <button type="button" className="btn beside" onClick={() => take({ name: usual, by: 'own', per: 'job' })}>
            Add {usual.toLowerCase()}
          </button>
        </div>
      </Fold>
    </section>
  )
}

/** How many lines, and what they come to. */
function toldOf(count: number, quantities: readonly Quantity[]): string {
  if (count === 0) return 'none entered'
  const sums = quantities
    .filter(({ id }) => /^total-bid-[A-Z]{3}$/.test(id))
    .map(({ value, unit }) => `${printAsPriced(value, unit)} ${unit}`)
  return [`${count} ${count === 1 ? 'line' : 'lines'}`, ...sums].join(', ')
}
