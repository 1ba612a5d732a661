import type { KeyboardEvent } from 'react'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { arrowKeys } from '../../app/arrowKeys'
import { useSession, useView } from '../../app/session'
import type { JointHand } from '../../pours/useJointHand'
import { goToForm } from '../../slab/goToForm'
import { panBy, toPlan } from '../camera/camera'
import { useEditor } from '../useEditor'
import type { PlanCamera } from './usePlanCamera'

const roundPoint = ([x, y]: Pt, step: number): Pt => [Math.round(x / step) * step, Math.round(y / step) * step]

/** A step of the arrow keys, meters. */
const unitStep = (units: Site['units'], isLarge: boolean): number =>
  units === 'ftin' ? (isLarge ? 0.3048 : 0.0254) : isLarge ? 0.25 : 0.01

/** Keys while the plan has the focus: to the joint that is chosen, to the boxes, to the editor, else to the camera. */
export function usePlanKeys(
  site: Site,
  { eye, move, zoomMiddle, middle }: PlanCamera,
  jointHand: JointHand,
): (event: KeyboardEvent<HTMLDivElement>) => void {
  const { view } = useSession()
  const editor = useEditor()
  const { selection, isEditing } = useView(({ selection, stage, clientView }) => ({
    selection,
    isEditing: stage === 'slab' && !clientView,
  }))
  const { units } = site

  /** Arrows carry the aim of a drawing, push what is chosen, else move the plan. */
  const onArrow = (by: Pt, isShift: boolean) => {
    const { drawing } = editor.getState()
    if (isEditing && drawing) {
      const step = unitStep(units, !isShift)
      const camera = eye.getState()
      // A key may come before the plan has its size.
      const from: Pt = camera ? toPlan(camera, middle()) : [0, 0]
      editor.carry([by[0] * step, by[1] * step], roundPoint(from, step))
    } else if (isEditing && selection.length > 0) {
      const step = unitStep(units, isShift)
      editor.nudge([by[0] * step, by[1] * step])
    } else {
      const stepPx = isShift ? 160 : 40
      move(c => panBy(c, -by[0] * stepPx, by[1] * stepPx))
    }
  }
  /** True where the key was one of the editor's. */
  const onEditKey = (event: KeyboardEvent): boolean => {
    const { key } = event
    const letter = event.ctrlKey || event.metaKey ? key.toLowerCase() : ''
    if (key === 'Enter') {
      const { drawing, action } = editor.getState()
      if (drawing || action !== 'select' || !goToForm()) editor.enter()
    } else if (key === 'Backspace' || key === 'Delete') {
      if (!editor.back()) editor.remove()
    } else if (letter === 'a') {
      const all = [...site.slabs, ...site.casters].map(({ id }) => id)
      view.setState({ selection: all })
      editor.tell(`${all.length} chosen.`)
    } else if (letter === 'z' && !event.shiftKey && editor.back()) event.stopPropagation()
    else return false
    return true
  }
  /** True where the key was one of the plan's. */
  const onKey = (event: KeyboardEvent): boolean => {
    const { key } = event
    const isPlain = !event.ctrlKey && !event.metaKey && !event.altKey
    if (jointHand.key(event, units === 'ftin' ? 0.0762 : 0.05)) return true
    if (isPlain && isEditing && editor.key(key)) return true
    const by = arrowKeys[key]
    if (by) onArrow(by, event.shiftKey)
    else if (isPlain && (key === '+' || key === '=')) zoomMiddle(1.25)
    else if (isPlain && key === '-') zoomMiddle(0.8)
    else if (key === 'Escape') editor.escape()
    else return isEditing && onEditKey(event)
    return true
  }
  return event => {
    if (onKey(event)) event.preventDefault()
  }
}
