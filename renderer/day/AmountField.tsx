import { printNumber } from '../../core/units/printNumber'
import { TypedField } from '../pours/TypedField'

export interface Scale {
  readonly unit: string
  /** Shown = stored × `by` + `plus`. */
  readonly by: number
  readonly plus?: number
  readonly least: number
  readonly most: number
}

/** A number typed in the unit of the scale; undefined for an empty box, null for what is none or out of range. */
export function parseAmount(text: string, { by, plus = 0, least, most }: Scale): number | undefined | null {
  const trimmed = text
    .trim()
    .replace(/,(?=\d{3}\b)/g, '')
    .replace(',', '.')
    .replace('−', '-')
  if (trimmed === '') return undefined
  const value = Number(/^[+-]?\d*\.?\d+/.exec(trimmed)?.[0] ?? Number.NaN)
  const rest = trimmed.replace(/^[+-]?\d*\.?\d+/, '').trim()
  // A unit may stand behind it; what else stands there is no number.
  if (!/^(?:°|%|[a-z/°³ ]*)$/i.test(rest) || !(value >= least && value <= most)) return null
  return (value - plus) / by
}

export const amountText = (value: number | undefined, { by, plus = 0 }: Scale, places = 0): string =>
  value === undefined ? '' : printNumber(value * by + plus, places)

/** One number that may be left out. */
export function AmountField({
  label,
  value,
  scale,
  places = 0,
  onSet,
}: {
  readonly label: string
  readonly value: number | undefined
  readonly scale: Scale
  readonly places?: number
  readonly onSet: (value: number | undefined) => void
}) {
  return (
    <TypedField
      label={`${label}, ${scale.unit}`}
      text={amountText(value, scale, places)}
      onText={typed => {
        const read = parseAmount(typed, scale)
        if (read === null) return `“${typed}” is not taken: a number from ${scale.least} to ${scale.most}.`
        onSet(read)
        return null
      }}
    />
  )
}
