import type { Measures } from '../../core/units/measures'
import { usePlan, useSession, useView } from '../app/session'
import type { Canvas } from '../editor/layers/drawing'
import { SetMapShape, StripsShape } from './DayLayers'

const noDays: never[] = []

/** The set map where it is asked for, and the strips of the pours. */
export function DayShapes({ print, ...canvas }: Canvas & { readonly print: Measures }) {
  const { plan } = useSession()
  const { days, maps, date } = usePlan(({ parts, date }) => ({
    days: parts.dayPlans ?? noDays,
    maps: parts.setMaps,
    date,
  }))
  const { chosen, setMapShown, trial } = useView(({ selection, setMapShown, trial }) => ({
    chosen: selection.at(-1),
    setMapShown,
    trial,
  }))
  if (trial) return null
  return (
    <>
      {setMapShown && maps ? <SetMapShape {...canvas} maps={maps} days={days} date={date} plan={plan} /> : null}
      <StripsShape {...canvas} days={days} chosen={chosen} print={print} />
    </>
  )
}
