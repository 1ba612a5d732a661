/** The day on the plan: strips with their letters and doses, the marks on the forms, and minutes to ready at the hour. */

import { memo } from 'react'
import { Shape } from 'react-konva/lib/ReactKonvaCore'
import { useStore } from 'zustand'
import { ringBounds } from '../../core/geometry/bounds'
import { centroid } from '../../core/geometry/centroid'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { PourSetMap } from '../../core/pours/day/setMap'
import type { Measures } from '../../core/units/measures'
import { toScreen } from '../editor/camera/camera'
import { type Canvas, drawing } from '../editor/layers/drawing'
import { letter, letterWidth } from '../editor/layers/lettering'
import { inPlan, type Pen, weight } from '../editor/layers/pen'
import { regionsPath } from '../editor/layers/ringPath'
import type { PlanStore } from '../store/planStore'
import type { Inks } from '../theme/inks'
import { setBandOf, setBands } from './setBands'

/** Strips are drawn where they are wide enough to be told apart. */
const leastStripPx = 22

function drawStripEnds(pen: Pen, day: PourDayPlan): void {
  inPlan(pen, () => {
    const { ctx, inks } = pen
    ctx.strokeStyle = inks.ink
    ctx.lineWidth = weight(pen, 1.6)
    ctx.setLineDash([weight(pen, 2), weight(pen, 4)])
    ctx.beginPath()
    for (const shape of day.shapes)
      for (const { from, to } of shape.ends) {
        ctx.moveTo(from[0], from[1])
        ctx.lineTo(to[0], to[1])
      }
    ctx.stroke()
  })
}

/** The pour from left to right on the screen. */
function screenSpan({ camera }: Pen, day: PourDayPlan): readonly [leftPx: number, rightPx: number] {
  const boxes = day.shapes.flatMap(({ regions }) => regions.map(({ outer }) => ringBounds(outer)))
  const xs = boxes.flatMap(({ minX, minY, maxX, maxY }) =>
    [minX, maxX].flatMap(x => [minY, maxY].map(y => toScreen(camera, [x, y])[0])),
  )
  return [Math.min(...xs), Math.max(...xs)]
}

/** As near as can be, with `marginPx` to either end where there is room for it. */
const within = (x: number, [left, right]: readonly [number, number], marginPx: number): number =>
  right - left < 2 * marginPx ? x : Math.min(right - marginPx, Math.max(left + marginPx, x))

/** A plate stands clear of the line around a chosen pour. */
const edgePx = 8

/** Where along the strip a plate hides least: a quarter of its front from its middle, across the placing direction. */
function drawStripNames(pen: Pen, day: PourDayPlan): void {
  const { camera, inks, ctx } = pen
  const [ux, uy] = day.direction
  const across = screenSpan(pen, day)
  day.shapes.forEach((shape, i) => {
    const center = centroid(shape.regions)
    if (!center || shape.depthM * camera.zoom < leastStripPx) return
    // Plates of narrow strips stand in two rows.
    const aside = shape.frontM * 0.34 - (i % 2) * (24 / camera.zoom)
    const [wantedX, y] = toScreen(camera, [center[0] + uy * aside, center[1] - ux * aside])
    const strip = day.plan.strips[i]!
    const words = `${day.number}${shape.id}  ${strip.doseMin > 0 ? `+${strip.doseMin} min` : 'plain'}`
    const style = { sizePx: 13, weight: 600 } as const
    const width = letterWidth(pen, words, style) + 12
    const x = within(wantedX, across, width / 2 + edgePx)
    ctx.fillStyle = inks.raised
    ctx.strokeStyle = inks.ink
    ctx.lineWidth = inks.weight
    ctx.fillRect(x - width / 2, y - 10, width, 20)
    ctx.strokeRect(x - width / 2, y - 10, width, 20)
    letter(pen, words, [x, y], style)
  })
}

/** A cross on the form with its tape distance. */
function drawDoseMarks(pen: Pen, day: PourDayPlan, print: Measures): void {
  const { camera, inks, ctx } = pen
  const center = centroid(day.shapes.flatMap(({ regions }) => regions))
  for (const { marks } of day.doseMarks)
    for (const mark of marks) {
      const [x, y] = toScreen(camera, mark.at)
      const isLower = center !== undefined && mark.at[1] < center[1]
      ctx.strokeStyle = inks.paint
      ctx.lineWidth = 3 * inks.weight
      ctx.beginPath()
      ctx.moveTo(x - 6, y - 6)
      ctx.lineTo(x + 6, y + 6)
      ctx.moveTo(x - 6, y + 6)
      ctx.lineTo(x + 6, y - 6)
      ctx.stroke()
      letter(pen, `${print.length(mark.distanceM)} from ${mark.corner}`, [x, y + (isLower ? 18 : -16)], {
        ...{ sizePx: 13, weight: 600, ground: inks.raised },
      })
    }
}

/** Only the chosen pour has its strips drawn; without a choice every pour has. */
export const StripsShape = memo(function StripsShape({
  days,
  chosen,
  print,
  ...canvas
}: Canvas & { readonly days: readonly PourDayPlan[]; readonly chosen: string | undefined; readonly print: Measures }) {
  return (
    <Shape
      sceneFunc={drawing(canvas, pen => {
        for (const day of days) {
          drawStripEnds(pen, day)
          if (day.pourId !== chosen) continue
          drawStripNames(pen, day)
          drawDoseMarks(pen, day, print)
        }
      })}
    />
  )
})

const channels = (color: string): readonly [number, number, number] => {
  const hex = Number.parseInt(color.slice(1), 16)
  return [(hex >> 16) & 255, (hex >> 8) & 255, hex & 255]
}

function paintMap(pen: Pen, map: PourSetMap, atMs: number, day: PourDayPlan | undefined): void {
  const { columns, rows, minX, minY, cellM } = map.grid
  const canvas = document.createElement('canvas')
  canvas.width = columns
  canvas.height = rows
  const own = canvas.getContext('2d')!
  const image = own.createImageData(columns, rows)
  const inks = setBands.map(({ ink }) =>
    ink === null ? null : channels(pen.inks[`sh-${ink}` as keyof Inks] as string),
  )
  for (let cell = 0; cell < columns * rows; cell++) {
    const rgb = inks[setBandOf(atMs, map.placedMs[cell]!, map.readyMs[cell]!, map.tooHardMs[cell]!)]
    if (!rgb) continue
    const at = 4 * ((rows - 1 - Math.floor(cell / columns)) * columns + (cell % columns))
    image.data.set([...rgb, 255], at)
  }
  own.putImageData(image, 0, 0)
  inPlan(pen, () => {
    const { ctx } = pen
    if (day) ctx.clip(regionsPath(day.shapes.flatMap(({ regions }) => regions)), 'evenodd')
    ctx.imageSmoothingEnabled = false
    ctx.translate(minX, minY + rows * cellM)
    ctx.scale(1, -1)
    ctx.drawImage(canvas, 0, 0, columns * cellM, rows * cellM)
  })
}

/** Follows the hour by itself. Pours of another day are shown at the same clock of theirs. */
export const SetMapShape = memo(function SetMapShape({
  maps,
  days,
  date,
  plan,
  ...canvas
}: Canvas & {
  readonly maps: readonly PourSetMap[]
  readonly days: readonly PourDayPlan[]
  readonly date: string
  readonly plan: PlanStore
}) {
  const hourMs = useStore(plan, ({ hour }) => hour?.hourMs ?? 0)
  return (
    <Shape
      sceneFunc={drawing(canvas, pen => {
        for (const map of maps) {
          const day = days.find(({ pourId }) => pourId === map.pourId)
          const movedMs = Date.parse(`${day?.date ?? date}T00:00Z`) - Date.parse(`${date}T00:00Z`)
          paintMap(pen, map, hourMs + movedMs, day)
        }
      })}
    />
  )
})
