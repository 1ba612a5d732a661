import { type KeyboardEvent, useId, useRef, useState } from 'react'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import { oddSize, type TradeSize } from '../../core/units/tradeSizes'
import type { UnitSystem } from '../../shared/document/site'
import { sayLength } from '../editor/entry/sayLength'
import { useToldHere } from '../editor/useToldHere'
import { Fault } from './Fault'
import { useDropOnChange } from './useDropOnChange'

export interface MeasureFieldOf {
  readonly label: string
  readonly lengthM: number
  readonly units: UnitSystem
  /** Returns why the measure was refused, if it was. */
  readonly onSet: (lengthM: number) => string | null
  readonly minM?: number
  /** What is measured, where the trade knows between which sizes it lies. */
  readonly size?: TradeSize | undefined
}

/** A length as a spinbutton: typed as a contractor types it, or an inch up and down by the arrows. */
export function MeasureField({ label, lengthM, units, onSet, minM = 0, size }: MeasureFieldOf) {
  const [text, setText] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const toldHere = useToldHere()
  const id = useId()
  useDropOnChange(lengthM, () => {
    setText(null)
    setFault(null)
  })
  const step = units === 'ftin' ? 0.0254 : 0.01
  // A form that moves the focus once it has its answer makes the box lose it: what is being set is not set twice.
  const isSetting = useRef(false)
  const set = (valueM: number) => {
    if (isSetting.current) return
    isSetting.current = true
    setText(null)
    setFault(valueM === lengthM ? null : toldHere(onSet(valueM)))
    isSetting.current = false
  }
  const commit = () => {
    if (text === null || text.trim() === '') {
      setText(null)
      return
    }
    const read = parseLength(text, units)
    if (!read.ok) {
      setFault(read.error.message)
      return
    }
    const odd = size === undefined || read.value === lengthM ? null : oddSize(size, text, read.value, units)
    if (odd === null) set(read.value)
    else setFault(odd)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') commit()
    else if (event.key === 'Escape' && (text !== null || fault !== null)) {
      setText(null)
      setFault(null)
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      const by = (event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 12 : 1)
      const nextM = (Math.round(lengthM / step) + by) * step
      if (nextM >= minM) set(nextM)
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <div className="measure">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        role="spinbutton"
        autoComplete="off"
        aria-valuenow={Number(lengthM.toFixed(4))}
        aria-valuetext={sayLength(lengthM, units)}
        aria-invalid={fault !== null || undefined}
        aria-describedby={fault ? `${id}-fault` : undefined}
        data-set={text === null || undefined}
        value={text ?? printMeasures(units).length(lengthM)}
        onFocus={event => event.target.select()}
        onChange={event => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
      <Fault words={fault} id={`${id}-fault`} />
    </div>
  )
}
