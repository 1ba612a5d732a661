import type { Finish } from '../../shared/document/materials'
import { finishParts } from '../geometry/finishParts'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

const m2 = (value: number) => [value, 'm²'] as const
const m = (value: number) => [value, 'm'] as const

/** Gross, opening, net and field area, outline and opening length. */
export function slabAreas(slab: ResolvedSlab): Quantity[] {
  const slabId = slab.id
  const openings: Inputs = Object.fromEntries(slab.openings.map(o => [`opening ${o.id}`, m2(o.areaM2)]))
  const claims: Inputs = Object.fromEntries([
    ...slab.borders.map(b => [`border ${b.id}`, m2(b.areaM2)] as const),
    ...slab.bands.map(b => [`band ${b.id}`, m2(b.areaM2)] as const),
    ...slab.insets.map(i => [`inset ${i.id}`, m2(i.areaM2)] as const),
  ])
  const claimed = Object.keys(claims)
  return [
    quantity({
      id: `${slabId}-gross-area`,
      label: 'Gross area',
      slabId,
      value: slab.grossAreaM2,
      unit: 'm²',
      formula: 'area inside the outline',
      inputs: { 'area inside the outline': m2(slab.grossAreaM2) },
    }),
    quantity({
      id: `${slabId}-opening-area`,
      label: 'Openings',
      slabId,
      value: slab.openingAreaM2,
      unit: 'm²',
      formula: sumFormula(openings),
      inputs: openings,
    }),
    quantity({
      id: `${slabId}-net-area`,
      label: 'Net area',
      slabId,
      value: slab.netAreaM2,
      unit: 'm²',
      formula: 'gross area − opening area',
      inputs: { 'gross area': m2(slab.grossAreaM2), 'opening area': m2(slab.openingAreaM2) },
    }),
    quantity({
      id: `${slabId}-field-area`,
      label: 'Field area',
      slabId,
      value: slab.fieldAreaM2,
      unit: 'm²',
      formula: ['net area', ...claimed].join(' − '),
      inputs: { 'net area': m2(slab.netAreaM2), ...claims },
    }),
    quantity({
      id: `${slabId}-perimeter`,
      label: 'Outline length',
      slabId,
      value: slab.perimeterM,
      unit: 'm',
      formula: 'length of the outline',
      inputs: { 'length of the outline': m(slab.perimeterM) },
    }),
    ...(slab.openings.length
      ? [
          quantity({
            id: `${slabId}-opening-perimeter`,
            label: 'Opening edges',
            slabId,
            value: slab.openingPerimeterM,
            unit: 'm',
            formula: slab.openings.map(o => `edge of opening ${o.id}`).join(' + '),
            inputs: Object.fromEntries(slab.openings.map(o => [`edge of opening ${o.id}`, m(o.perimeterM)])),
          }),
        ]
      : []),
  ]
}

/** One figure per border, band and inset: area and lengths. */
export function claimFigures(slab: ResolvedSlab): Quantity[] {
  const slabId = slab.id
  const single = (id: string, label: string, value: number, unit: string, meaning: string) =>
    quantity({ id, label, slabId, value, unit, formula: meaning, inputs: { [meaning]: [value, unit] } })
  return [
    ...slab.borders.flatMap((b, i) => [
      single(`${b.id}-area`, `Border ${i + 1} area`, b.areaM2, 'm²', 'area of the border'),
      single(`${b.id}-outer-length`, `Border ${i + 1} outer length`, b.outerLengthM, 'm', 'length of the outer edge'),
      single(
        `${b.id}-inner-length`,
        `Border ${i + 1} inner length`,
        b.innerLengthM,
        'm',
        'length of the inner edge in the slab',
      ),
      single(
        `${b.id}-center-length`,
        `Border ${i + 1} center length`,
        b.centerLengthM,
        'm',
        'length of the center line in the slab',
      ),
    ]),
    ...slab.bands.flatMap((b, i) => [
      single(`${b.id}-area`, `Band ${i + 1} area`, b.areaM2, 'm²', 'area of the band'),
      single(`${b.id}-length`, `Band ${i + 1} length`, b.lengthM, 'm', 'length of the center line in the slab'),
    ]),
    ...slab.insets.map((inset, i) =>
      single(`${inset.id}-area`, `Inset ${i + 1} area`, inset.areaM2, 'm²', 'area of the inset'),
    ),
  ]
}

/** Area of each finish on the slab: field, borders, bands and insets that carry it. */
export function finishAreas(slab: ResolvedSlab, finishes: readonly Finish[]): Quantity[] {
  const byFinish = new Map<string, Record<string, readonly [number, string]>>()
  for (const { kind, id, finishId, areaM2 } of finishParts(slab)) {
    const inputs = byFinish.get(finishId) ?? {}
    inputs[id === undefined ? kind : `${kind} ${id}`] = m2(areaM2)
    byFinish.set(finishId, inputs)
  }
  return [...byFinish].map(([finishId, inputs]) =>
    quantity({
      id: `${slab.id}-finish-${finishId}-area`,
      label: `${finishes.find(f => f.id === finishId)?.name ?? finishId} area`,
      slabId: slab.id,
      value: sumInputs(inputs),
      unit: 'm²',
      formula: sumFormula(inputs),
      inputs,
    }),
  )
}
