import type { Measures } from '../../core/units/measures'
import { usePlan, useSession, useView } from '../app/session'
import type { Camera, Size } from '../editor/camera/camera'
import type { Inks } from '../theme/inks'
import { SetMapShape, StripsShape } from './DayLayers'

const noDays: never[] = []

/** The set map where it is asked for, and the strips of the pours. */
export function DayShapes({
  print,
  ...canvas
}: {
  readonly camera: Camera
  readonly size: Size
  readonly inks: Inks
  readonly print: Measures
}) {
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
