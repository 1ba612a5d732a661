/** What the sun stage lays on the plan: the sun-hours map under the shade, hour lines, pin and marks over it. */

import { memo } from 'react'
import { Shape } from 'react-konva/lib/ReactKonvaCore'
import { useStore } from 'zustand'
import type { OtherDay, SunMap } from '../../core/plan/deriveScreen'
import type { Measures } from '../../core/units/measures'
import type { Pt } from '../../shared/document/primitives'
import { useView } from '../app/session'
import { toScreen } from '../editor/camera/camera'
import { drawPoints, placePoints } from '../editor/layers/drawAccess'
import { type Canvas, drawing } from '../editor/layers/drawing'
import { drawMarkNames } from '../editor/layers/drawMarkNames'
import { drawCasterNames } from '../editor/layers/drawNames'
import { drawParts } from '../editor/layers/drawParts'
import { drawSlabEdges } from '../editor/layers/drawSlabs'
import { furniture } from '../editor/layers/furniture'
import { labelRoom } from '../editor/layers/labelRoom'
import { letter, letterWidth } from '../editor/layers/lettering'
import { PictureLayer } from '../editor/layers/PictureLayer'
import { inPlan, type Pen, weight } from '../editor/layers/pen'
import { addShadow } from '../editor/layers/ringPath'
import { spareDrawn } from '../editor/layers/spareDrawn'
import type { LivePlan } from '../store/livePlan'
import type { PlanStore } from '../store/planStore'
import type { ViewState } from '../store/viewStore'
import { bandSpots } from './bandSpots'
import { drawHourLines, type HourLine } from './drawHourLines'
import { drawSunMap } from './drawSunMap'
import { bandInk, type SunBands } from './sunBands'
import { useOtherHour } from './useSunStage'

/** Inside the layer of what is drawn: over the slabs, under what stands around. */
export const SunMapShape = memo(function SunMapShape({
  live,
  maps,
  bands,
  ...canvas
}: Canvas & { readonly live: LivePlan; readonly maps: readonly SunMap[]; readonly bands: SunBands }) {
  const { site, slabs } = live
  return (
    <Shape
      sceneFunc={drawing(canvas, pen => {
        drawSunMap(pen, maps, bands, slabs)
        drawSlabEdges(pen, { slabs, sources: site.slabs, finishes: site.finishes, inColor: false })
        drawParts(pen, site, slabs)
      })}
    />
  )
})

/** The rim of the other day's shade at the shown hour: the line of all that throws it, then what lies inside rubbed out. */
export const OtherShadeLayer = memo(function OtherShadeLayer({
  live,
  other,
  ...canvas
}: Canvas & { readonly live: LivePlan; readonly other: OtherDay }) {
  const hour = useOtherHour(live, other)
  return (
    <PictureLayer>
      <Shape
        sceneFunc={drawing(canvas, pen => {
          const parts = hour?.shade[0]?.parts ?? []
          inPlan(pen, () => {
            const path = new Path2D()
            for (const part of parts) addShadow(path, part)
            pen.ctx.strokeStyle = pen.inks.paint
            pen.ctx.lineWidth = weight(pen, 5)
            pen.ctx.setLineDash([weight(pen, 10), weight(pen, 5)])
            pen.ctx.stroke(path)
            pen.ctx.globalCompositeOperation = 'destination-out'
            pen.ctx.fill(path, 'nonzero')
          })
        })}
      />
    </PictureLayer>
  )
})

const crossAt = ({ ctx, inks, camera }: Pen, at: Pt): void => {
  const [x, y] = toScreen(camera, at)
  ctx.strokeStyle = inks.chalk
  ctx.lineWidth = 2.5 * inks.weight
  ctx.fillStyle = inks.raised
  ctx.fillRect(x - 5, y - 5, 10, 10)
  ctx.strokeRect(x - 5, y - 5, 10, 10)
}

const bandStyle = { sizePx: 14, weight: 700 } as const

/** The hour lines follow the shown hour only in which of them is drawn bold. */
export const SunLinesShape = memo(function SunLinesShape({
  live,
  plan,
  print,
  hours,
  maps,
  bands,
  pin,
  pinWords,
  marking,
  ...canvas
}: Canvas & {
  readonly print: Measures
  readonly live: LivePlan
  readonly plan: PlanStore
  readonly hours: readonly HourLine[]
  readonly maps: readonly SunMap[]
  readonly bands: SunBands
  readonly pin: ViewState['pin']
  readonly pinWords: string
  readonly marking: readonly Pt[] | null
}) {
  const clientView = useView(state => state.clientView)
  const shownMs = useStore(plan, ({ hour }) => hours.find(({ ms }) => ms === hour?.hourMs)?.ms ?? null)
  return (
    <Shape
      sceneFunc={drawing(canvas, pen => {
        const { width, height } = canvas.size
        const room = labelRoom({ x: 0, y: 0, width, height })
        for (const corner of furniture(canvas.size, 'sun')) room.block(corner)
        spareDrawn(pen, live.slabs, live.site, room)
        const asked = pin ? [{ id: 'pin', name: pinWords, at: pin.at, slabId: pin.slabId }] : []
        const points = placePoints(pen, [...asked, ...live.site.points], room)
        drawHourLines(pen, hours, shownMs, room)
        for (const map of maps) {
          const { zoom } = pen.camera
          const widthsPx = bands.names.map(name => letterWidth(pen, name, bandStyle) + 6)
          const heightPx = 17 * pen.inks.letterScale
          const spots = bandSpots(
            map,
            bands,
            widthsPx.map(px => px / zoom),
            heightPx / zoom,
          )
          for (const [band, wishes] of spots.entries()) {
            const free = room.take(
              wishes.map(at => toScreen(pen.camera, at)),
              widthsPx[band]!,
              heightPx,
            )
            if (!free) continue
            const ink = bandInk(bands, band)
            letter(pen, bands.names[band]!, free, {
              ...bandStyle,
              ink: ink >= 4 ? pen.inks['sh-ink-dark'] : pen.inks['sh-ink-light'],
              halo: pen.inks[`sh-${ink as 1 | 2 | 3 | 4 | 5 | 6 | 7}`],
            })
          }
        }
        drawMarkNames(pen, live.site, live.site.points, room, !clientView)
        drawCasterNames(pen, live.site.casters, live.slabs, print, room)
        drawPoints(pen, points)
        if (marking && marking.length > 0) {
          const [first, second] = marking.map(at => toScreen(pen.camera, at))
          if (first && second) {
            pen.ctx.strokeStyle = pen.inks.chalk
            pen.ctx.lineWidth = 2.5 * pen.inks.weight
            pen.ctx.beginPath()
            pen.ctx.moveTo(first[0], first[1])
            pen.ctx.lineTo(second[0], second[1])
            pen.ctx.stroke()
          }
          for (const at of marking) crossAt(pen, at)
        }
      })}
    />
  )
})
