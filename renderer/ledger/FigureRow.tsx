import './ledger.css'
import { memo, useCallback, useId } from 'react'
import { shownUnits } from '../../core/reports/printAsPriced'
import type { UnitSystem } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import { useSession, useView } from '../app/session'
import { figureWorking } from './figureTerms'
import { figurePhrase, printFigure } from './printFigure'

export interface FigureRowOf {
  readonly quantity: Quantity
  readonly label?: string
  /** What it was measured on, in words. */
  readonly from?: string
  readonly kind?: 'sum' | 'sub'
  /** The figure is of an older drawing and on its way. */
  readonly isWaiting?: boolean
  readonly names: ReadonlyMap<string, string>
  readonly units: UnitSystem
}

/** One ruled line: the sign that opens its working, its name, its figure, its unit. */
export const FigureRow = memo(function FigureRow({
  quantity,
  label,
  from,
  kind,
  isWaiting,
  names,
  units,
}: FigureRowOf) {
  const { view } = useSession()
  const isOpen = useView(state => state.openFigure === quantity.id)
  const id = useId()
  const { figure, unit } = printFigure(quantity.value, quantity.unit, shownUnits(quantity, units))
  const name = label ?? quantity.label
  const toggle = useCallback(
    () => view.setState(({ openFigure }) => ({ openFigure: openFigure === quantity.id ? null : quantity.id })),
    [view, quantity.id],
  )
  return (
    <>
      <ShutRow
        {...{ figure, unit, name, isOpen }}
        workingId={id}
        from={from}
        className={['row', kind ?? '', isOpen ? 'lit' : '', isWaiting ? 'waiting' : ''].join(' ')}
        onToggle={toggle}
      />
      {isOpen ? <OpenedFigure id={id} name={name} from={from} quantity={quantity} names={names} units={units} /> : null}
    </>
  )
})

/** Told in words and strings alone: a drag draws again only the rows that read otherwise. */
const ShutRow = memo(function ShutRow({
  figure,
  unit,
  name,
  from,
  isOpen,
  workingId,
  className,
  onToggle,
}: {
  readonly figure: string
  readonly unit: string
  readonly name: string
  readonly from: string | undefined
  readonly isOpen: boolean
  readonly workingId: string
  readonly className: string
  readonly onToggle: () => void
}) {
  return (
    <div className={className}>
      <button
        type="button"
        className={isOpen ? 'eq on' : 'eq'}
        aria-expanded={isOpen}
        aria-controls={workingId}
        aria-label={`How ${name} is computed`}
        aria-describedby={`${workingId}-figure`}
        onClick={onToggle}
      >
        =
      </button>
      <span>
        {name}
        {from === undefined ? null : <small className="from">← {from}</small>}
      </span>
      <span className="v" id={`${workingId}-figure`}>
        {figure} <small>{unit}</small>
      </span>
    </div>
  )
})

function OpenedFigure({
  id,
  name,
  from,
  quantity,
  names,
  units,
}: {
  readonly id: string
  readonly name: string
  readonly from: string | undefined
  readonly quantity: Quantity
  readonly names: ReadonlyMap<string, string>
  readonly units: UnitSystem
}) {
  const { formula, withNumbers, terms } = figureWorking(quantity, names, units)
  const { figure, unit } = printFigure(quantity.value, quantity.unit, shownUnits(quantity, units))
  const isExact = quantity.source === 'geometry'
  const inOther = figurePhrase(
    quantity.value,
    quantity.unit,
    shownUnits(quantity, units === 'ftin' ? 'metric' : 'ftin'),
  )
  const own = unit === '' ? figure : `${figure} ${unit}`
  return (
    <div className="opened" id={id}>
      <div className="working">
        <p className="formula">
          {name.toLowerCase()} = {formula}
        </p>
        <dl>
          {terms.map(term => (
            <div key={term.name}>
              <dt>{term.name}</dt>
              <dd>{term.value}</dd>
            </div>
          ))}
          {withNumbers === null ? null : (
            <div className="put-in">
              <dt>{withNumbers}</dt>
              <dd />
            </div>
          )}
          <div className="total">
            <dt>{name}</dt>
            <dd>
              {figure} {unit}
            </dd>
          </div>
          {inOther === own ? null : (
            <div>
              <dt>{units === 'ftin' ? 'In metric' : 'In feet and pounds'}</dt>
              <dd>{inOther}</dd>
            </div>
          )}
        </dl>
        <p>
          <b>From</b> {from === undefined ? 'what is lit on the plan' : `${from}, lit on the plan`}. <b>Source</b>{' '}
          {isExact && quantity.id.startsWith('total-')
            ? 'the figures named, each with its own working.'
            : isExact
              ? 'exact: straight edges by coordinates, arcs by circular segments. No rounding before the last line.'
              : `${quantity.source}.`}
        </p>
      </div>
    </div>
  )
}
