import type { Pt } from '../../../shared/document/primitives'
import { useSession, useView } from '../../app/session'
import { takeSunClick } from '../../sun/takeSunClick'
import { type Camera, toPlan } from '../camera/camera'
import { pickAt } from '../pickAt'
import { pickPart } from '../pickPart'

/** `at` in pixels of the plan's element; `adds`: to what is chosen, or out of it; `pickPx`: how near is on it. */
export type ClickChoice = (at: Pt, camera: Camera, adds: boolean, pickPx: number) => void

/** Chooses what was clicked; a click on a corner or an edge of what is chosen narrows the choice to it. */
export function useClickChoice(): ClickChoice {
  const { view, plan } = useSession()
  const { stage, selection, clientView } = useView(({ stage, selection, clientView }) => ({
    stage,
    selection,
    clientView,
  }))
  const showsPours = stage === 'pours' && !clientView
  return (at, camera, adds, pickPx) => {
    const {
      live,
      parts: { pours, joints },
    } = plan.getState()
    if (!live) return
    const place = toPlan(camera, at)
    const nearM = pickPx / camera.zoom
    if (stage === 'sun' && takeSunClick(view, live, place, nearM)) return
    const part = stage === 'slab' ? pickPart(live.site, selection, place, nearM) : null
    const id =
      part ??
      pickAt(place, {
        live,
        nearM,
        ...(showsPours && pours ? { pours } : {}),
        ...(showsPours && joints ? { joints } : {}),
      })
    view.setState(({ selection: was }) => {
      if (id === null) return { selection: adds ? was : [] }
      if (!adds) return { selection: [id] }
      return { selection: was.includes(id) ? was.filter(each => each !== id) : [...was, id] }
    })
  }
}
