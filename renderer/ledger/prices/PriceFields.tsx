import { type KeyboardEvent, useLayoutEffect, useRef } from 'react'
import { changePrice, movePrice, removePrice } from '../../../core/document/commands/setPrices'
import { hasFinish, pricedByOf } from '../../../core/quantities/priceParts'
import { printAsPriced, unitAsPriced } from '../../../core/reports/printAsPriced'
import { isCurrency } from '../../../core/units/currency'
import { printNumber } from '../../../core/units/printNumber'
import type { Price } from '../../../shared/document/materials'
import type { Site } from '../../../shared/document/site'
import type { Quantity } from '../../../shared/planJson'
import { takeEdit } from '../../app/applyEdit'
import { useSession } from '../../app/session'
import { TypedField } from '../../pours/TypedField'
import { CheckField } from '../../slab/CheckField'
import { ChoiceField } from '../../slab/ChoiceField'
import { moneyRefused, parseFigure, parseMoney } from '../materials/amounts'
import { siteCurrency } from '../siteCurrency'
import { choiceOf, priceChoices, priceLabel } from './priceChoices'

/** One line of the price list, and what it comes to. */
export function PriceFields({
  site,
  price,
  quantities,
  onRemoved,
}: {
  readonly site: Site
  readonly price: Price
  readonly quantities: readonly Quantity[]
  readonly onRemoved: () => void
}) {
  const session = useSession()
  const { id, name, per, amount, quantity, finishId } = price
  const currency = isCurrency(price.currency) ? price.currency : siteCurrency(site)
  const change = (what: string, patch: Parameters<typeof changePrice>[1]) =>
    takeEdit(session, `price list ${what}`, changePrice(id, patch))
  const choices = priceChoices(site.units, price)
  const chosen = choiceOf(price)
  const by = pricedByOf(price)
  const place = (site.prices ?? []).findIndex(each => each.id === id)
  const last = (site.prices ?? []).length - 1
  const held = useRef<Element | null>(null)
  // A row that changes places is taken out of the page and put back, and the focus with it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: after each change of its place
  useLayoutEffect(() => {
    if (held.current instanceof HTMLElement) held.current.focus()
    held.current = null
  }, [place])
  const move = (step: -1 | 1) => {
    if (place + step < 0 || place + step > last) return
    held.current = document.activeElement
    takeEdit(session, `price list line moved ${step < 0 ? 'up' : 'down'}`, movePrice(id, step))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return
    event.preventDefault()
    move(event.key === 'ArrowUp' ? -1 : 1)
  }
  return (
    <fieldset className="finish material" onKeyDown={onKeyDown}>
      <legend>{name}</legend>
      <TypedField label="Name" text={name} onText={typed => change('name', { name: typed.trim() })} />
      <ChoiceField
        label="Goes by"
        value={chosen.key}
        choices={choices.map(({ key, words }) => [key, words] as const)}
        onSet={key => {
          const to = choices.find(each => each.key === key)!
          change('measure', {
            ...{ by: to.by, per: to.per, quantity: undefined },
            ...(hasFinish(to.by) ? {} : { finishId: undefined }),
          })
        }}
      />
      {hasFinish(by) && site.finishes.length > 1 ? (
        <ChoiceField
          label="In which finish"
          value={finishId ?? ''}
          choices={[['', 'any'], ...site.finishes.map(finish => [finish.id, finish.name] as const)]}
          onSet={to => change('finish', { finishId: to === '' ? undefined : to })}
        />
      ) : null}
      {chosen.key === 'own' ? (
        <>
          <TypedField
            label="Quantity"
            text={quantity === undefined ? '' : printNumber(quantity, 2)}
            onText={typed => {
              if (typed.trim() === '') return change('quantity', { quantity: undefined })
              const read = parseFigure(typed)
              return read === null || !['', per].includes(read.rest)
                ? `“${typed}” is no quantity: a number, 12 or 2.5.`
                : change('quantity', { quantity: read.value })
            }}
          />
          <TypedField label="Unit" text={per} onText={typed => change('unit', { per: typed.trim() })} />
        </>
      ) : null}
      <TypedField
        label={priceLabel(price, currency)}
        text={amount === undefined ? '' : printNumber(amount, 4, 2)}
        onText={typed => {
          if (typed.trim() === '') return change('price', { amount: undefined })
          const read = parseMoney(typed, currency, per)
          return read === null ? moneyRefused(typed, currency) : change('price', read)
        }}
      />
      {site.bid?.taxPercent === undefined ? null : (
        <CheckField
          label="Free of tax"
          value={price.taxFree === true}
          onSet={isFree => change('tax', { taxFree: isFree ? true : undefined })}
        />
      )}
      <p className="told wide" role="status">
        {sumWords(price, quantities)}
      </p>
      <div className="line-acts">
        {last > 0
          ? ([-1, 1] as const).map(step => (
              <button
                key={step}
                type="button"
                className="btn"
                aria-label={`Move line ${name} ${step < 0 ? 'up' : 'down'}`}
                aria-keyshortcuts={step < 0 ? 'Alt+ArrowUp' : 'Alt+ArrowDown'}
                aria-disabled={place === (step < 0 ? 0 : last) || undefined}
                onClick={() => move(step)}
              >
                {step < 0 ? 'Up' : 'Down'}
              </button>
            ))
          : null}
        <button
          type="button"
          className="btn"
          aria-label={`Remove line ${name}`}
          onClick={() => {
            takeEdit(session, 'price list line', removePrice(id))
            onRemoved()
          }}
        >
          Remove line
        </button>
      </div>
    </fieldset>
  )
}

/** `595.0 ft² × 18.50 = 11,007.50 USD`, or what keeps it from a sum. */
function sumWords({ id, amount, per }: Price, quantities: readonly Quantity[]): string {
  const sum = quantities.find(own => own.id === `price-${id}`)
  if (sum) {
    const { quantity, price } = sum.inputs
    const whole = `${printAsPriced(sum.value, sum.unit)} ${sum.unit}`
    return quantity && price
      ? `${printAsPriced(quantity.value, per)} ${unitAsPriced(quantity.value, per)} × ${printAsPriced(price.value, price.unit)} = ${whole}`
      : whole
  }
  return amount === undefined ? 'Not in the bid: no price is typed yet.' : 'Not in the bid: see the problems below.'
}
