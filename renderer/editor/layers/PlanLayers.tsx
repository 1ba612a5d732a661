/** The four canvases of the plan. Each draws again only when something it shows has changed. */

import { memo, type ReactNode, useMemo } from 'react'
import { Shape } from 'react-konva/lib/ReactKonvaCore'
import { useStore } from 'zustand'
import type { Measures } from '../../../core/units/measures'
import type { Caster } from '../../../shared/document/caster'
import type { Site, UnitSystem } from '../../../shared/document/site'
import { useView } from '../../app/session'
import { useClient } from '../../slab/client/clientStore'
import type { LivePlan, ShownHour } from '../../store/livePlan'
import type { PlanStore } from '../../store/planStore'
import type { Stage } from '../../store/viewStore'
import { shapeHandle } from '../shapeHandle'
import { dimensionGround } from './dimensionGround'
import { drawAccess, drawPoints, placePoints } from './drawAccess'
import { drawCasters } from './drawCasters'
import { drawDimensions } from './drawDimensions'
import { drawGround } from './drawGround'
import { drawLit, drawRing, drawSelection } from './drawHandles'
import { drawInHand, type InHand } from './drawInHand'
import { type Canvas, drawing } from './drawing'
import { drawMarkNames } from './drawMarkNames'
import { drawCasterNames, drawOpeningNames, drawSlabNames } from './drawNames'
import { drawParts, drawWishes } from './drawParts'
import { drawPicture } from './drawPicture'
import { type DrawnJoint, drawPlates, drawPours, type PourPlate } from './drawPours'
import { drawShade } from './drawShade'
import { drawFurnishings, drawNotes, drawTapes } from './drawShown'
import { drawSlabEdges, drawSlabs } from './drawSlabs'
import { actionsPx, furniture } from './furniture'
import { keptDrawing } from './keptDrawing'
import { labelRoom } from './labelRoom'
import { PictureLayer } from './PictureLayer'
import type { Pen } from './pen'
import type { DimensionedRing } from './placeLine'
import type { PlanGeometry } from './planGeometry'
import { spareDrawn } from './spareDrawn'
import { steadySpots } from './steadySpots'

const isHouse = (caster: Caster): boolean => caster.kind === 'building'

/** Paper and its squares, the picture under the plan, and the houses the slabs lie against. */
export const GroundLayer = memo(function GroundLayer({
  units,
  picture,
  casters,
  ...canvas
}: Canvas & {
  readonly casters: readonly Caster[]
  readonly units: UnitSystem
  readonly picture: Site['place']['picture']
  /** Rises when the picture has been read. */
  readonly ready: number
}) {
  return (
    <PictureLayer>
      <Shape
        sceneFunc={drawing(canvas, pen => {
          drawGround(pen, units)
          if (picture) drawPicture(pen, picture)
          drawCasters(pen, casters.filter(isHouse))
        })}
      />
    </PictureLayer>
  )
})

const drawOthers = (pen: Pen, casters: readonly Caster[]) =>
  drawCasters(
    pen,
    casters.filter(caster => !isHouse(caster)),
  )

/** Slabs with their finishes, pours where the stage is about them, what stands around but the houses. */
export const DrawnLayer = memo(function DrawnLayer({
  live,
  plates,
  selection,
  clientView,
  children,
  ...canvas
}: Canvas & {
  /** What a stage lays over the slabs. */
  readonly children?: ReactNode
  readonly live: LivePlan
  /** Null where pours are not shown. */
  readonly plates: readonly PourPlate[] | null
  readonly selection: readonly string[]
  readonly clientView: boolean
}) {
  const { site, slabs } = live
  // A hand at the slab leaves a hundred trees as they stand.
  const drawTrees = useMemo(() => keptDrawing(drawOthers), [])
  const scene = {
    slabs,
    sources: site.slabs,
    finishes: site.finishes,
    inColor: clientView,
    textured: plates === null,
  }
  return (
    <PictureLayer>
      <Shape
        sceneFunc={drawing(canvas, pen => {
          drawSlabs(pen, scene)
          if (plates) drawPours(pen, { plates, selection })
          drawSlabEdges(pen, scene)
          if (site.furnishings && !plates) drawFurnishings(pen, site.furnishings)
          drawTrees(pen, site.casters)
          drawParts(pen, site, slabs)
          if (site.access && !clientView) drawAccess(pen, site.access)
          if (!clientView) drawWishes(pen, site, slabs)
        })}
      />
      {children}
    </PictureLayer>
  )
})

const noShade: ShownHour['shade'] = []
const noSlabs: LivePlan['slabs'] = []
const noFlags: Site['points'] = []

/** The shade follows the hour by itself, and is not painted again by an edit that leaves it as it lies. */
export const ShadeLayer = memo(function ShadeLayer({
  live,
  plan,
  strength,
  eye,
  size,
  inks,
}: Canvas & { readonly live: LivePlan; readonly plan: PlanStore; readonly strength: number }) {
  const shade = useStore(plan, state => state.hour?.shade) ?? noShade
  const { casters } = live.site
  // On one level it lies on the slabs as on the ground.
  const slabs = shade.length > 1 ? live.slabs : noSlabs
  const scene = useMemo(
    () => drawing({ eye, size, inks }, pen => drawShade(pen, { shade, slabs, casters, strength })),
    [eye, size, inks, shade, slabs, casters, strength],
  )
  return (
    <PictureLayer>
      <Shape sceneFunc={scene} />
    </PictureLayer>
  )
})

/** Letters, plates, what is lit and what is selected: over the shade, so that they stay readable. */
export const HandlesLayer = memo(function HandlesLayer({
  live,
  stage,
  print,
  plates,
  joints,
  dimensioned,
  selection,
  chosen,
  lit,
  inHand,
  children,
  ...canvas
}: Canvas & {
  readonly children?: ReactNode
  readonly live: LivePlan
  readonly inHand: InHand | null
  readonly stage: Stage
  readonly print: Measures
  readonly plates: readonly PourPlate[] | null
  readonly joints: readonly DrawnJoint[]
  readonly dimensioned: readonly DimensionedRing[]
  readonly selection: readonly string[]
  readonly chosen: readonly PlanGeometry[]
  readonly lit: PlanGeometry | null
}) {
  const { site, slabs } = live
  const clientView = useView(state => state.clientView)
  const [{ showAreas }] = useClient(site)
  const spotOf = useMemo(steadySpots, [])
  const showsNames = stage === 'slab' && !lit && (!clientView || showAreas)
  return (
    <PictureLayer>
      <Shape
        sceneFunc={drawing(canvas, pen => {
          const room = labelRoom({ x: 0, y: 0, ...canvas.size })
          const flags = stage === 'slab' && !clientView ? site.points : noFlags
          for (const corner of furniture(canvas.size, stage)) room.block(corner)
          if (stage === 'slab' && !clientView) room.block({ x: 0, y: 0, width: actionsPx, height: canvas.size.height })
          spareDrawn(pen, slabs, site, room)
          if (lit) drawLit(pen, lit)
          if (plates) drawPlates(pen, { plates, joints, selection }, room)
          if (stage === 'slab' || stage === 'numbers')
            drawDimensions(pen, dimensioned, dimensionGround(site, slabs, flags), print, room)
          // Under the letters: a chosen line must not strike out its own length.
          for (const geometry of chosen) drawSelection(pen, geometry)
          if (!clientView && (stage === 'slab' || stage === 'numbers')) {
            drawTapes(pen, site.tapes ?? [], print, room)
            drawNotes(pen, site.notes ?? [], room)
          }
          drawPoints(pen, placePoints(pen, flags, room))
          if (stage === 'slab') drawOpeningNames(pen, slabs, site.slabs, room)
          if (showsNames) drawSlabNames(pen, slabs, print, room, spotOf)
          // In Sun they stand among the hour labels.
          if (stage !== 'sun') {
            drawMarkNames(pen, site, flags, room, !clientView)
            drawCasterNames(pen, site.casters, slabs, print, room)
          }
          const ring = inHand?.shapes ? shapeHandle(site, selection, pen.camera.zoom) : null
          if (ring) drawRing(pen, ring)
          if (inHand) drawInHand(pen, inHand)
        })}
      />
      {children}
    </PictureLayer>
  )
})
