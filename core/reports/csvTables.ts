/** The tables of a plan for a spreadsheet. Values are numbers in the measures of the site, the unit stands in the header. */
import { perArea } from '../units/perArea'
import { bidTable } from './bidTable'
import { type CsvValue, writeCsv } from './csv'
import { nameEntities } from './nameEntities'
import { pourJointLength } from './pourJointLength'
import { type ShownUnits, shownUnits } from './printAsPriced'
import type { SheetData } from './sheetData'

export interface CsvTable {
  /** File name without ending. */
  readonly name: 'quantities' | 'pours' | 'shade' | 'borders' | 'bid'
  readonly text: string
}

interface Unit {
  readonly name: string
  /** SI units in one of these, exact: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg. */
  readonly si: number
}

const bidTables = ({ bid, quantities }: SheetData): CsvTable[] => {
  const text = bid && bidTable(bid, quantities)
  return text === undefined ? [] : [{ name: 'bid', text }]
}

const unitOf = (unit: string, units: ShownUnits): Unit => {
  if (units === 'asPriced') return { name: unit, si: 1 }
  if (units === 'ftin')
    switch (unit) {
      case 'm':
        return { name: 'ft', si: 0.3048 }
      case 'm²':
        return { name: 'ft²', si: 0.3048 ** 2 }
      case 'm³':
        return { name: 'yd³', si: 0.9144 ** 3 }
      case 'kg':
        return { name: 'lb', si: 0.45359237 }
      case 'kg/m²':
        return { name: 'lb/ft²', si: 0.45359237 / 0.3048 ** 2 }
      case 'kg/m³':
        return { name: 'lb/ft³', si: 0.45359237 / 0.3048 ** 3 }
    }
  const { value, unit: name } = perArea(1, unit, units)
  return { name, si: 1 / value }
}

/** Six digits behind the point: 1/16 in is 0.005 ft. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6

const inUnit = (value: number | undefined, unit: string, units: ShownUnits): CsvValue =>
  value === undefined ? null : rounded(value / unitOf(unit, units).si)

/** A bare number has no unit; one load is not `1 loads`. */
const unitWords = (value: number, unit: string, units: ShownUnits): readonly string[] =>
  unit === '1'
    ? []
    : [(unit === 'loads' || unit === 'packages') && value === 1 ? unit.slice(0, -1) : unitOf(unit, units).name]

function quantityTable(data: SheetData): string {
  return writeCsv(
    ['id', 'figure', 'slab', 'pour', 'value', 'unit', 'formula', 'inputs', 'source'],
    data.quantities.map(q => {
      const units = shownUnits(q, data.units)
      return [
        q.id,
        q.label,
        data.slabs.find(s => s.id === q.slabId)?.name ?? q.slabId ?? null,
        data.pours.find(p => p.id === q.pourId)?.number ?? q.pourId ?? null,
        inUnit(q.value, q.unit, units),
        unitWords(q.value, q.unit, units).join(''),
        nameEntities(q.formula, data.names),
        Object.entries(q.inputs)
          .map(([name, { value, unit }]) =>
            [nameEntities(name, data.names), '=', inUnit(value, unit, units), ...unitWords(value, unit, units)].join(
              ' ',
            ),
          )
          .join('; '),
        q.source,
      ]
    }),
  )
}

function pourTable(data: SheetData): string {
  const { units } = data
  const [area, volume, length] = ['m²', 'm³', 'm'].map(unit => unitOf(unit, units).name)
  return writeCsv(
    ['pour', 'slab', `area (${area})`, `concrete (${volume})`, `joint (${length})`, 'order', 'day', 'date', 'proposed'],
    [...data.pours]
      .sort((p, q) => p.order - q.order)
      .map(p => [
        p.number,
        data.slabs.find(s => s.id === p.slabId)?.name ?? p.slabId,
        inUnit(p.areaM2, 'm²', units),
        inUnit(p.concreteM3, 'm³', units),
        inUnit(pourJointLength(p, data.joints), 'm', units),
        p.order,
        p.day,
        p.date,
        p.proposed ? 'yes' : 'no',
      ]),
  )
}

function shadeTable(data: SheetData): string {
  const columns = [
    ...data.slabs.map(s => ({ title: s.name, row: data.slabShares.find(r => r.id === s.id) })),
    ...data.pours.map(p => ({ title: `Pour ${p.number}`, row: data.pourShares.find(r => r.id === p.id) })),
  ]
  return writeCsv(
    ['time', 'sun height (deg)', 'sun bearing (deg)', ...columns.map(c => `${c.title} in sun (share)`)],
    data.hours.map((hour, i) => [
      hour.time,
      rounded(hour.altitudeDeg),
      rounded(hour.azimuthDeg),
      ...columns.map(c => {
        const share = c.row?.sunShare[i]
        return share === undefined || share === null ? null : rounded(share)
      }),
    ]),
  )
}

function borderTable(data: SheetData): string {
  const { units } = data
  const [area, length] = ['m²', 'm'].map(unit => unitOf(unit, units).name)
  return writeCsv(
    [
      'id',
      'slab',
      'kind',
      'name',
      'finish',
      `width (${length})`,
      `area (${area})`,
      `length (${length})`,
      `inner length (${length})`,
      `center length (${length})`,
    ],
    data.slabs.flatMap(slab =>
      slab.finishParts.map(part => [
        part.id,
        slab.name,
        part.kind,
        part.name ?? null,
        part.finishName,
        inUnit(part.widthM, 'm', units),
        inUnit(part.areaM2, 'm²', units),
        inUnit(part.lengthM, 'm', units),
        inUnit(part.innerLengthM, 'm', units),
        inUnit(part.centerLengthM, 'm', units),
      ]),
    ),
  )
}

/** The bid last, where there is one. */
export const csvTables = (data: SheetData): CsvTable[] => [
  { name: 'quantities', text: quantityTable(data) },
  { name: 'pours', text: pourTable(data) },
  { name: 'shade', text: shadeTable(data) },
  { name: 'borders', text: borderTable(data) },
  ...bidTables(data),
]
