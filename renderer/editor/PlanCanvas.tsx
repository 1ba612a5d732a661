import './editor.css'
import { type ReactNode, useEffect, useMemo, useState } from 'react'
import { useStore } from 'zustand'
import { printMeasures } from '../../core/units/printMeasures'
import { useCalmPlan, useSite, useView } from '../app/session'
import { useJointHand } from '../pours/useJointHand'
import type { LivePlan } from '../store/livePlan'
import { SunLegend } from '../sun/SunLegend'
import { ActionList } from './ActionList'
import { CameraActs } from './CameraActs'
import { useClickChoice } from './canvas/useClickChoice'
import { useFocusOnPlan } from './canvas/useFocusOnPlan'
import { useInks } from './canvas/useInks'
import { usePlanCamera } from './canvas/usePlanCamera'
import { usePlanClipboard } from './canvas/usePlanClipboard'
import { usePlanKeys } from './canvas/usePlanKeys'
import { usePointers } from './canvas/usePointers'
import { DimensionFields } from './DimensionFields'
import { Entry } from './Entry'
import { Loupe } from './Loupe'
import { loadPicture } from './layers/drawPicture'
import { actionsPx } from './layers/furniture'
import { PlanStage } from './layers/PlanStage'
import { NorthMark } from './NorthMark'
import { Prompt } from './Prompt'
import { ScaleBar } from './ScaleBar'
import { useEditorState } from './useEditor'

/**
 * The plan, drawn from the document on screen by the canvases themselves. What stands over it follows a moving hand at a
 * reader's pace, and stands in the order of the eye, for the Tab key: `children` come after the drawing actions.
 */
export function PlanCanvas({ children }: { readonly children: ReactNode }) {
  const live = useCalmPlan(state => state.live)
  return live ? (
    <Sheet key={live.site.id} live={live}>
      {children}
    </Sheet>
  ) : null
}

function Sheet({ live, children }: { readonly live: LivePlan; readonly children: ReactNode }) {
  const { site } = live
  const isPreviewed = useSite(({ preview }) => preview !== null)
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const isDrawing = stage === 'slab' && !clientView
  const hand = useEditorState(({ action, picking, carrying, drawing, traced }) => ({
    ...{ action, picking, carrying, traced },
    placed: drawing?.placed,
  }))
  const camera = usePlanCamera(stage, isDrawing ? actionsPx : 0, hand.placed, hand.traced)
  const { eye, size, sheet, attach } = camera
  const jointHand = useJointHand()
  const { handlers, lastPoint } = usePointers(camera, jointHand, useClickChoice())
  const onKeyDown = usePlanKeys(site, camera, jointHand)
  usePlanClipboard(camera, lastPoint)
  useFocusOnPlan(sheet)

  const isSeen = useStore(eye, seen => seen !== null)
  const inks = useInks()
  const canvas = isSeen && inks !== null && size.width > 0 ? { eye, size, inks } : null
  const print = useMemo(() => printMeasures(site.units), [site.units])
  const [ready, setReady] = useState(0)
  useEffect(() => loadPicture(site, () => setReady(n => n + 1)), [site])
  const isChoosing = hand.action === 'select' && hand.picking === null

  return (
    <>
      <div
        className="sheet"
        ref={attach}
        role="application"
        aria-roledescription="plan"
        aria-label={`Plan of ${site.name}. Arrow keys move it, plus and minus change its scale. Its parts are listed in the outline.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is moved by keys; its parts are in the outline
        tabIndex={0}
        data-drawing={(isDrawing && !isChoosing) || undefined}
        data-carrying={hand.carrying || undefined}
        {...handlers}
        onKeyDown={onKeyDown}
      >
        {canvas ? <PlanStage {...canvas} ready={ready} /> : null}
      </div>
      <Prompt live={live} />
      {isDrawing ? <ActionList /> : null}
      {children}
      {isDrawing && !isPreviewed && isChoosing ? <DimensionFields eye={eye} size={size} print={print} /> : null}
      {isDrawing ? <Loupe sheet={sheet} eye={eye} size={size} /> : null}
      <ScaleBar eye={eye} units={site.units} />
      {stage === 'sun' ? <SunLegend live={live} /> : null}
      <NorthMark northDeg={site.place.northDeg} />
      <CameraActs {...camera} />
      {isDrawing ? <Entry site={site} eye={eye} size={size} print={print} /> : null}
    </>
  )
}
