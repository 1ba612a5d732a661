/** What a line of the price list may go by, in the units of the site, and the lines it can begin with. */
import { measuresOf, type PricedMeasure, pricedByOf } from '../../../core/quantities/priceParts'
import { type Price, type PricedBy, pricedBy } from '../../../shared/document/materials'
import type { Site, UnitSystem } from '../../../shared/document/site'

export interface PriceChoice {
  readonly key: string
  readonly words: string
  readonly by: PricedBy
  readonly per: string
}

const byWords: Readonly<Record<PricedBy, string>> = {
  slab: 'Slab',
  field: 'Field without borders, bands, insets',
  border: 'Borders',
  band: 'Bands',
  inset: 'Insets',
  steps: 'Steps',
  opening: 'Openings',
  form: 'Forms',
  constructionJoint: 'Construction joints',
  contractionJoint: 'Contraction joints',
  pour: 'Pours',
  own: 'Quantity of your own',
}

const unitOf = (by: PricedBy, measure: PricedMeasure, units: UnitSystem): string => {
  if (measure === 'area') return units === 'ftin' ? 'ft²' : 'm²'
  if (measure === 'length') return units === 'ftin' ? 'ft' : 'm'
  return by === 'steps' ? 'riser' : 'each'
}

const perWords = (by: PricedBy, per: string): string => {
  if (per === 'each') return 'each'
  if (per === 'riser') return 'by the riser'
  return by === 'steps' ? `by the ${per} of riser` : by === 'opening' ? `by the ${per} of edge` : `by the ${per}`
}

const choice = (by: PricedBy, per: string): PriceChoice => ({
  ...{ key: `${by} ${per}`, by, per },
  words: `${byWords[by]}, ${perWords(by, per)}`,
})

const job: PriceChoice = { key: 'job', words: 'The job, a lump sum', by: 'own', per: 'job' }
const own: PriceChoice = { key: 'own', words: byWords.own, by: 'own', per: 'each' }

/** The choices of a site; a line that was typed in other units keeps its own beside them. */
export function priceChoices(units: UnitSystem, price: Price): readonly PriceChoice[] {
  const known = pricedBy.flatMap(by =>
    by === 'own' ? [] : measuresOf[by].map(measure => choice(by, unitOf(by, measure, units))),
  )
  const now = choiceOf(price)
  return [...known, ...(known.some(({ key }) => key === now.key) || now.by === 'own' ? [] : [now]), job, own]
}

/** What a line goes by now. */
export function choiceOf(price: Price): PriceChoice {
  const by = pricedByOf(price)
  if (by !== 'own') return choice(by, price.per)
  return price.per === 'job' && (price.quantity ?? 1) === 1 ? job : own
}

/** `Price of one ft²`. */
export const priceLabel = ({ per }: Price, currency: string): string =>
  `${per === 'job' ? 'Price of the job' : per === 'each' ? 'Price each' : `Price of one ${per}`}, ${currency}`

export interface PriceStart {
  readonly words: string
  readonly price: Pick<Price, 'name' | 'by' | 'per' | 'finishId'>
}

/** Lines for what is drawn: a finish each where there are several. */
export function priceStarts(site: Site): readonly PriceStart[] {
  const { slabs, finishes, units } = site
  const area = unitOf('slab', 'area', units)
  const length = unitOf('border', 'length', units)
  const has = (list: 'borders' | 'bands' | 'steps' | 'openings') => slabs.some(slab => slab[list].length > 0)
  const used = new Set(
    slabs.flatMap(slab => [slab, ...slab.borders, ...slab.bands, ...slab.insets]).map(({ finishId }) => finishId),
  )
  const shown = finishes.filter(({ id }) => used.has(id))
  const start = (words: string, by: PricedBy, per: string, finishId?: string): PriceStart => ({
    words,
    price: { name: words, by, per, ...(finishId === undefined ? {} : { finishId }) },
  })
  return [
    start('Slab', 'slab', area),
    ...(shown.length > 1 ? shown.map(({ id, name }) => start(name, 'slab', area, id)) : []),
    ...(has('borders') ? [start('Border', 'border', length)] : []),
    ...(has('bands') ? [start('Band', 'band', length)] : []),
    ...(has('steps') ? [start('Steps', 'steps', 'riser')] : []),
    ...(has('openings') ? [start('Opening', 'opening', 'each')] : []),
    start('Lump sum', 'own', 'job'),
  ]
}

/** Lines of a job that no drawing tells. Common practice, no source. */
export const usualLines = [
  'Removal of existing work',
  'Haul-off',
  'Grading and base',
  'Pump',
  'Washout',
  'Permit',
  'Testing',
  'Mock-up panel',
  'Sealing visit',
  'Allowance',
] as const
