/** What a price of the list is multiplied by: the parts of the drawing it goes by, in its own unit. */
import type { Price, PricedBy } from '../../shared/document/materials'
import type { Slab } from '../../shared/document/slab'
import type { Quantity } from '../../shared/planJson'
import { finishPartNames } from '../document/finishPartNames'
import { namesOfKind } from '../document/kindNames'
import { openingNames } from '../document/openingNames'
import { type FinishPart, type FinishPartKind, finishPartKinds, finishParts } from '../geometry/finishParts'
import type { Claim, ResolvedSlab } from '../geometry/resolvedSlab'
import { m2ToSquareFeet, metersToFeet } from '../units/convert'
import { edgeLengths } from './edgeLengths'
import { plainName } from './plainName'

export interface Priced {
  readonly slabs: readonly ResolvedSlab[]
  readonly sources: readonly Slab[]
  /** Joint lengths are read from the figures of the slabs. */
  readonly figures: readonly Quantity[]
  readonly pourCount: number
}

export interface PricedPart {
  readonly name: string
  /** In the unit of the price: an area or a length to 0.1, else a count. */
  readonly value: number
}

export type PricedMeasure = 'area' | 'length' | 'count'

/** The measure behind a unit. */
export function measureOf(per: string): PricedMeasure {
  if (per === 'ft²' || per === 'm²') return 'area'
  return per === 'ft' || per === 'm' ? 'length' : 'count'
}

/** What a price goes by, also where the file leaves it out. */
export function pricedByOf({ by, per }: Pick<Price, 'by' | 'per'>): PricedBy {
  if (by !== undefined) return by
  return ({ area: 'slab', length: 'border', count: 'own' } as const)[measureOf(per)]
}

/** Measures that each can be priced by. */
export const measuresOf: Readonly<Record<PricedBy, readonly PricedMeasure[]>> = {
  slab: ['area'],
  field: ['area'],
  border: ['length', 'area'],
  band: ['length', 'area'],
  inset: ['area', 'count'],
  steps: ['count', 'length'],
  opening: ['count', 'length'],
  form: ['length'],
  constructionJoint: ['length'],
  contractionJoint: ['length'],
  pour: ['count'],
  own: ['area', 'length', 'count'],
}

/** Only these carry a finish. */
export const hasFinish = (by: PricedBy): by is 'slab' | FinishPartKind =>
  by === 'slab' || finishPartKinds.some(kind => kind === by)

/** To a tenth, as areas are printed, so that a sheet adds up by hand. */
const toTenth = (value: number): number => Math.round(value * 10 + 1e-7) / 10

const unitsOf: Readonly<Record<string, (si: number) => number>> = {
  'ft²': m2ToSquareFeet,
  'm²': areaM2 => areaM2,
  ft: metersToFeet,
  m: lengthM => lengthM,
}

/** What a part with a finish is called on a slab; the field by its kind. */
export function finishPartNamer(source: Slab | undefined): (part: Pick<FinishPart, 'kind' | 'id'>) => string {
  const names = source && finishPartNames(source)
  return ({ kind, id }) => (id === undefined ? undefined : names?.get(id)?.words) ?? kind
}

/** Undefined where the price cannot go by its unit, or its own quantity is not entered. */
export function pricedParts(price: Price, priced: Priced): readonly PricedPart[] | undefined {
  const { per, finishId, quantity } = price
  const by = pricedByOf(price)
  const measure = measureOf(per)
  if (by === 'own') {
    const own = quantity ?? (per === 'job' ? 1 : undefined)
    return own === undefined ? undefined : [{ name: 'quantity as entered', value: own }]
  }
  if (!measuresOf[by].includes(measure)) return undefined
  if (by === 'pour') return priced.pourCount === 0 ? [] : [{ name: 'pours', value: priced.pourCount }]
  const inUnit = unitsOf[per]
  const parts = priced.slabs.flatMap(slab => {
    const source = priced.sources.find(({ id }) => id === slab.id)
    if (!source) return []
    const own = partsOfSlab(by, measure, slab, source, finishId, priced.figures)
    return own.map(([name, si]) => ({
      name: plainName(priced.slabs.length > 1 && name !== slab.name ? `${slab.name} ${name}` : name),
      value: inUnit ? toTenth(inUnit(si)) : si,
    }))
  })
  return parts.filter(({ value }) => value > 0)
}

type Part = readonly [name: string, si: number]

function partsOfSlab(
  by: Exclude<PricedBy, 'own' | 'pour'>,
  measure: PricedMeasure,
  slab: ResolvedSlab,
  source: Slab,
  finishId: string | undefined,
  figures: readonly Quantity[],
): readonly Part[] {
  const isOf = (own: { readonly finishId: string }) => finishId === undefined || own.finishId === finishId
  const nameOf = finishPartNamer(source)
  const claims = <T extends Claim>(kind: 'border' | 'band' | 'inset', rows: readonly T[], si: (row: T) => number) =>
    rows.filter(isOf).map((row): Part => [nameOf({ kind, id: row.id }), si(row)])
  const field: readonly Part[] = isOf(slab) ? [['field', slab.fieldAreaM2]] : []
  const figure = (end: string): readonly Part[] => {
    const found = figures.find(({ id }) => id === `${slab.id}-${end}`)
    return found ? [[slab.name, found.value]] : []
  }
  switch (by) {
    case 'slab':
      return finishId === undefined
        ? [[slab.name, slab.netAreaM2]]
        : finishParts(slab)
            .filter(isOf)
            .map((part): Part => [nameOf(part), part.areaM2])
    case 'field':
      return field
    case 'border':
      return claims('border', slab.borders, row => (measure === 'area' ? row.areaM2 : row.outerLengthM))
    case 'band':
      return claims('band', slab.bands, row => (measure === 'area' ? row.areaM2 : row.lengthM))
    case 'inset':
      return claims('inset', slab.insets, row => (measure === 'area' ? row.areaM2 : 1))
    case 'steps': {
      const names = namesOfKind(source.steps, 'steps')
      return source.steps.map(({ id, risers, widthM }) => [
        names.get(id)?.words ?? 'steps',
        measure === 'count' ? risers : risers * widthM,
      ])
    }
    case 'opening': {
      const names = openingNames(source.openings)
      return slab.openings.map(({ id, perimeterM }) => [
        names.get(id)?.words ?? 'opening',
        measure === 'count' ? 1 : perimeterM,
      ])
    }
    case 'form':
      return edgeLengths(slab, source).flatMap(({ id, value }): readonly Part[] =>
        id === `${slab.id}-form-length` ? [[slab.name, value]] : [],
      )
    case 'constructionJoint':
      return figure('construction-joint-length')
    case 'contractionJoint':
      return figure('contraction-joint-length')
  }
}
