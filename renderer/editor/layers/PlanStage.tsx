import type { Stage as StageNode } from 'konva/lib/Stage'
import { memo, useEffect, useMemo, useRef } from 'react'
import { Stage } from 'react-konva/lib/ReactKonvaCore'
import type { Measures } from '../../../core/units/measures'
import { useSession, useView } from '../../app/session'
import { DayShapes } from '../../day/DayShapes'
import { usePlates } from '../../pours/usePlates'
import type { LivePlan } from '../../store/livePlan'
import type { ViewState } from '../../store/viewStore'
import { OtherShadeLayer, SunLinesShape, SunMapShape } from '../../sun/SunLayers'
import { useHourLines, usePin, useSunMap } from '../../sun/useSunStage'
import type { InHand } from './drawInHand'
import type { Canvas } from './drawing'
import { DrawnLayer, GroundLayer, HandlesLayer, ShadeLayer } from './PlanLayers'
import type { DimensionedRing } from './placeDimension'
import type { PlanGeometry } from './planGeometry'

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
  readonly live: LivePlan
  readonly print: Measures
  /** Rises when the picture under the plan has been read. */
  readonly ready: number
  readonly dimensioned: readonly DimensionedRing[]
  readonly chosen: readonly PlanGeometry[]
  readonly lit: PlanGeometry | null
  readonly inHand: InHand | null
}

/** Shade over the set map would turn one of its colors into another. */
const underSetMap = 0.12

/** The canvases of the plan: ground, plan, shade, handles. Painted again without the page when the eye moves. */
export const PlanStage = memo(function PlanStage({
  eye,
  size,
  inks,
  live,
  print,
  ready,
  dimensioned,
  chosen,
  lit,
  inHand,
}: PlanStageOf) {
  const { plan } = useSession()
  const { stage, selection, clientView, other, marking, setMapShown } = useView(
    ({ stage, selection, clientView, other, marking, setMapShown }) => ({
      ...{ stage, selection, clientView, other, marking, setMapShown },
    }),
  )
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
  const node = useRef<StageNode>(null)
  useEffect(() => eye.subscribe(() => node.current?.batchDraw()), [eye])
  const { site } = live
  return (
    <Stage ref={node} width={size.width} height={size.height} listening={false}>
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
    </Stage>
  )
})
