import { describe, expect, it } from 'vitest'
import { deleteFinish } from '../../core/document/commands/deleteSelection'
import { addPrice, changePrice, removePrice } from '../../core/document/commands/setPrices'
import { addFinish } from '../../core/document/commands/setSite'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import { choiceOf, priceChoices, priceLabel, priceStarts } from '../../renderer/ledger/prices/priceChoices'
import { sampleSite } from '../plan/sampleSite'
import { chain, refusal } from './edit'

const site = sampleSite('l-patio-accepted')
const [first] = site.prices!
const id = first!.id

const wordsOf = (command: ReturnType<typeof changePrice>): string => {
  const result = command(site)
  if (result.ok) throw new Error('the command was not refused')
  return result.error.map(finding => wordProblem(finding, printMeasures('ftin')).message).join(' ')
}

describe('a line of the price list', () => {
  it('is refused, in words, where its entries cannot be', () => {
    expect(wordsOf(changePrice(id, { name: ' ' }))).toContain('has no name')
    expect(wordsOf(changePrice(id, { per: '' }))).toContain('has no unit')
    expect(wordsOf(changePrice(id, { amount: -1 }))).toContain('the amount is −1')
    expect(wordsOf(changePrice(id, { quantity: Number.NaN }))).toContain('quantity')
    expect(refusal(changePrice(id, { finishId: 'f9999' })(site))).toBe('danglingId')
    for (const command of [changePrice('h9999', {}), removePrice('h9999')])
      expect(refusal(command(site))).toBe('entityMissing')
  })

  it('is read again as it was saved, and goes without leaving an empty list', () => {
    const added = chain(
      site,
      addPrice({ name: 'Border', by: 'border', per: 'ft', currency: 'USD', finishId: site.finishes[0]!.id }),
      addPrice({ name: 'Haul-off', by: 'own', per: 'load', currency: 'USD', quantity: 2 }),
    )
    expect(readSite(serializeSite(added))).toEqual({ ok: true, value: added })
    const text = serializeSite(site)
    const again = readSite(text)
    expect(again.ok && serializeSite(again.value)).toBe(text)
    expect(chain(site, removePrice(id))).not.toHaveProperty('prices')
  })

  it('keeps the finish it goes by', () => {
    const more = chain(site, addFinish({ name: 'Slate', pattern: 'plain', color: site.finishes[0]!.color }))
    const finishId = more.finishes.at(-1)!.id
    expect(refusal(deleteFinish(finishId)(chain(more, changePrice(id, { by: 'slab', finishId }))))).toBe('finishInUse')
    expect(chain(more, deleteFinish(finishId)).finishes).toEqual(site.finishes)
  })
})

describe('what a line may go by', () => {
  it('is offered in the units of the site, and beside them as it was typed', () => {
    const metric = priceChoices('metric', first!)
    expect(metric.map(({ key }) => key)).toContain('border m')
    expect(metric.map(({ key }) => key)).toContain(choiceOf(first!).key)
    expect(new Set(metric.map(({ key }) => key)).size).toBe(metric.length)
    expect(priceChoices('ftin', first!).filter(({ key }) => key === 'slab ft²')).toHaveLength(1)
    expect(choiceOf({ ...first!, per: 'job' }).words).toBe('The job, a lump sum')
    expect(priceLabel({ ...first!, per: 'riser' }, 'USD')).toBe('Price of one riser, USD')
  })

  it('begins with what is drawn, a finish each where there are several', () => {
    const words = priceStarts(sampleSite('kidney-pool-deck')).map(own => own.words)
    expect(words).toContain('Border')
    expect(words).toContain('Opening')
    expect(priceStarts(sampleSite('plain-rectangle')).map(own => own.words)).toEqual(['Slab', 'Lump sum'])
  })
})
