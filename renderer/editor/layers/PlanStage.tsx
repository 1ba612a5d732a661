import type { Stage as StageNode } from 'konva/lib/Stage'
import { memo, useEffect, useMemo, useRef } from 'react'
import { Stage } from 'react-konva/lib/ReactKonvaCore'
import { printMeasures } from '../../../core/units/printMeasures'
import { usePlan, useSession, useView } from '../../app/session'
import { DayShapes } from '../../day/DayShapes'
import { usePlates } from '../../pours/usePlates'
import type { LivePlan } from '../../store/livePlan'
import type { ViewState } from '../../store/viewStore'
import { OtherShadeLayer, SunLinesShape, SunMapShape } from '../../sun/SunLayers'
import { useHourLines, usePin, useSunMap } from '../../sun/useSunStage'
import { useInHand } from '../canvas/useInHand'
import { useMarks } from '../canvas/useMarks'
import { useDimensioned } from '../useDimensioned'
import type { Canvas } from './drawing'
import { DrawnLayer, GroundLayer, HandlesLayer, ShadeLayer } from './PlanLayers'

/** The shade is in full where the stage is about it, and quiet where something else is. */
const shadeStrength: Readonly<Record<ViewState['stage'], number>> = {
  slab: 0.4,
  sun: 1,
  pours: 0.45,
  numbers: 0,
  sheets: 0.4,
  log: 0.4,
}

export interface PlanStageOf extends Canvas {
  /** Rises when the picture under the plan has been read. */
  readonly ready: number
}

/** Shade over the set map would turn one of its colors into another. */
const underSetMap = 0.12

/** The canvases of the plan. They follow eye and document by themselves: a moving hand leaves the page around them alone. */
export const PlanStage = memo(function PlanStage(canvas: PlanStageOf) {
  const { eye, size } = canvas
  const node = useRef<StageNode>(null)
  useEffect(() => eye.subscribe(() => node.current?.batchDraw()), [eye])
  return (
    <Stage ref={node} width={size.width} height={size.height} listening={false}>
      <LiveCanvases {...canvas} />
    </Stage>
  )
})

function LiveCanvases(canvas: PlanStageOf) {
  const live = usePlan(state => state.live)
  return live ? <Canvases {...canvas} live={live} /> : null
}

/** Four, and one more for another day's shade: ground, plan, shade, handles. */
function Canvases({ eye, size, inks, ready, live }: PlanStageOf & { readonly live: LivePlan }) {
  const { plan } = useSession()
  const { site } = live
  const { stage, selection, clientView, other, marking, setMapShown } = useView(
    ({ stage, selection, clientView, other, marking, setMapShown }) => ({
      ...{ stage, selection, clientView, other, marking, setMapShown },
    }),
  )
  const isDrawing = stage === 'slab' && !clientView
  const print = useMemo(() => printMeasures(site.units), [site.units])
  const { chosen, lit } = useMarks(live)
  const inHand = useInHand(site, isDrawing)
  const dimensioned = useDimensioned(live, isDrawing)
  const showsDay = stage === 'pours' && !clientView
  // What was logged is looked up on the plan as well.
  const showsPours = showsDay || (stage === 'log' && !clientView)
  const showsSun = stage === 'sun'
  const { plates, joints } = usePlates(live, showsPours)
  const shownPlates = showsPours ? plates : null
  const sunMap = useSunMap()
  const hours = useHourLines(live, showsSun)
  const { pin, words } = usePin(live)
  const canvas = useMemo((): Canvas => ({ eye, size, inks }), [eye, size, inks])
  // A layer is painted again when its children are other elements.
  const overSlabs = useMemo(
    () =>
      showsSun && sunMap.maps.length > 0 ? (
        <SunMapShape {...canvas} live={live} {...sunMap} />
      ) : showsDay ? (
        <DayShapes {...canvas} print={print} />
      ) : null,
    [showsSun, showsDay, sunMap, canvas, live, print],
  )
  const overShade = useMemo(
    () =>
      showsSun ? (
        <SunLinesShape
          {...canvas}
          live={live}
          plan={plan}
          print={print}
          hours={hours}
          {...sunMap}
          pin={pin}
          pinWords={words}
          marking={marking}
        />
      ) : null,
    [showsSun, canvas, live, plan, print, hours, sunMap, pin, words, marking],
  )
  return (
    <>
      <GroundLayer {...canvas} units={site.units} picture={site.place.picture} casters={site.casters} ready={ready} />
      <DrawnLayer {...canvas} live={live} plates={shownPlates} selection={selection} clientView={clientView}>
        {overSlabs}
      </DrawnLayer>
      <ShadeLayer
        {...canvas}
        live={live}
        plan={plan}
        strength={clientView ? 0.6 : showsDay && setMapShown ? underSetMap : shadeStrength[stage]}
      />
      {showsSun && other ? <OtherShadeLayer {...canvas} live={live} other={other} /> : null}
      <HandlesLayer
        {...canvas}
        live={live}
        stage={stage}
        print={print}
        plates={shownPlates}
        joints={joints}
        dimensioned={dimensioned}
        selection={selection}
        chosen={chosen}
        lit={lit}
        inHand={inHand}
      >
        {overShade}
      </HandlesLayer>
    </>
  )
}
