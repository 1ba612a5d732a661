import { DateTime } from 'luxon'
import { flattenRing } from '../../core/geometry/flattenRing'
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import type { HourShadow } from '../../core/plan/plan'
import { shadeLines } from '../../core/reports/drawShade'
import type { Pt } from '../../shared/document/primitives'
import { toScreen } from '../editor/camera/camera'
import type { LabelRoom } from '../editor/layers/labelRoom'
import { letter, letterWidth } from '../editor/layers/lettering'
import type { Pen } from '../editor/layers/pen'

export interface HourLine {
  readonly ms: number
  readonly label: string
  readonly isAfternoon: boolean
  /** Across the slab only: where shade ends at the slab's own edge there is no line. */
  readonly lines: readonly (readonly Pt[])[]
}

const lengthOf = (line: readonly Pt[]): number =>
  line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - line[i]![0], y - line[i]![1]), 0)

/** The edges of full shade on the slabs at the whole hours. */
export function hourLines(
  shadows: readonly HourShadow[],
  slabs: readonly ResolvedSlab[],
  zone: string,
  label: (ms: number) => string,
): HourLine[] {
  return shadows.flatMap(({ ms, slabId, polygons }) => {
    const slab = slabs.find(each => each.id === slabId)
    if (!slab || polygons.length === 0) return []
    const boundary = slab.net.flatMap(region => [region.outer, ...region.holes].map(ring => flattenRing(ring)))
    const lines = polygons.flatMap(region => [region.ring, ...region.holes].flatMap(ring => shadeLines(ring, boundary)))
    if (lines.length === 0) return []
    return [{ ms, label: label(ms), isAfternoon: DateTime.fromMillis(ms, { zone }).hour >= 12, lines }]
  })
}

/** Points along a line, the middle first, then ever farther from it: where a label may stand. */
function labelPlaces(line: readonly Pt[]): Pt[] {
  const whole = lengthOf(line)
  return [0.5, 0.38, 0.62, 0.26, 0.74, 0.14, 0.86].map(share => {
    let left = share * whole
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1]!, line[i]!]
      const length = Math.hypot(b[0] - a[0], b[1] - a[1])
      if (left <= length) return [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length]
      left -= length
    }
    return line[0]!
  })
}

/** Morning edges solid, afternoon edges dashed; an hour whose name finds no free place goes without, never over another. */
export function drawHourLines(pen: Pen, hours: readonly HourLine[], shownMs: number | null, room: LabelRoom): void {
  const { ctx, inks, camera } = pen
  const onScreen = hours.map(hour => ({ hour, lines: hour.lines.map(line => line.map(at => toScreen(camera, at))) }))
  ctx.save()
  ctx.lineJoin = 'round'
  for (const { hour, lines } of onScreen) {
    ctx.setLineDash(hour.isAfternoon ? [7, 4] : [])
    const path = new Path2D()
    for (const line of lines)
      for (const [i, [x, y]] of line.entries()) {
        if (i === 0) path.moveTo(x, y)
        else path.lineTo(x, y)
      }
    // A rim of paper keeps the line apart from dark bands of the map.
    ctx.strokeStyle = inks.paper
    ctx.globalAlpha = 0.55
    ctx.lineWidth = 3.2 * inks.weight
    ctx.stroke(path)
    ctx.globalAlpha = 1
    ctx.strokeStyle = inks['shade-line']
    ctx.lineWidth = (hour.ms === shownMs ? 2.6 : 1.3) * inks.weight
    ctx.stroke(path)
  }
  ctx.restore()
  const style = { sizePx: 13, weight: 600 } as const
  for (const { hour, lines } of onScreen) {
    const longest = lines.reduce((best, line) => (lengthOf(line) > lengthOf(best) ? line : best))
    if (lengthOf(longest) < 24) continue
    const width = letterWidth(pen, hour.label, style) + 12
    const height = 18 * inks.letterScale
    const at = room.take(labelPlaces(longest), width, height)
    if (!at) continue
    ctx.fillStyle = inks.raised
    ctx.strokeStyle = inks['shade-line']
    ctx.lineWidth = inks.weight
    ctx.setLineDash(hour.isAfternoon ? [4, 3] : [])
    ctx.fillRect(at[0] - width / 2, at[1] - height / 2, width, height)
    ctx.strokeRect(at[0] - width / 2, at[1] - height / 2, width, height)
    ctx.setLineDash([])
    letter(pen, hour.label, at, style)
  }
}
