import type { Region, Ring } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import { segmentDistance } from '../geometry/segmentDistance'
import { type Frame, toPage } from './frame'
import { type DrawLabel, type Layer, planLetterPt } from './layer'
import type { Candidate, LabelBox, LabelWish } from './placeLabels'
import type { SheetData, SheetHour, SheetShadow, SheetSlab } from './sheetData'
import { drawPath, drawRect, drawText, ink, moveLine, openPath, softInk, widthOf, type XY } from './svgPen'

/** A shade edge this near the slab's own edge is that edge, not the end of shade on the slab; chords of arcs differ so much. */
const sameLineM = 0.008

export const afternoonDash = '7 4'

const onBoundary = (p: readonly [number, number], rings: readonly Ring[]): boolean =>
  rings.some(ring =>
    ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length]!
      return segmentDistance(p[0], p[1], a[0], a[1], b[0], b[1]) < sameLineM
    }),
  )

/** The parts of a shade ring that run across the slab, as polylines in the order of the ring. */
export function shadeLines(ring: Ring, boundary: readonly Ring[]): Ring[] {
  const keep = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length]!
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const
    return !(onBoundary(middle, boundary) && onBoundary(a, boundary) && onBoundary(b, boundary))
  })
  if (keep.every(k => k)) return [[...ring, ring[0]!]]
  const start = keep.findIndex((k, i) => k && !keep.at(i - 1)!)
  if (start === -1) return []
  const lines: (readonly [number, number])[][] = []
  for (let n = 0; n < ring.length; n++) {
    const i = (start + n) % ring.length
    if (!keep[i]) continue
    const line = lines.at(-1)
    if (line !== undefined && keep.at(i - 1)) line.push(ring[(i + 1) % ring.length]!)
    else lines.push([ring[i]!, ring[(i + 1) % ring.length]!])
  }
  return lines
}

/** Points every `stepPt` along a line, with the unit direction there. */
function walk(line: readonly XY[], stepPt: number): { at: XY; direction: XY }[] {
  const steps: { at: XY; direction: XY }[] = []
  let next = stepPt / 2
  let run = 0
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length === 0) continue
    const direction: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    for (; next <= run + length; next += stepPt)
      steps.push({ at: [a[0] + direction[0] * (next - run), a[1] + direction[1] * (next - run)], direction })
    run += length
  }
  return steps
}

interface HourLines {
  readonly hour: SheetHour
  /** Edges of full shade. */
  readonly lines: readonly XY[][]
  /** Edges of shade under leaves or slats. */
  readonly thin: readonly XY[][]
}

const ringsOf = (regions: readonly Region[]): Ring[] => regions.flatMap(region => [region.ring, ...region.holes])

const boundaryOf = (slab: SheetSlab): Ring[] =>
  slab.net.flatMap(r => [r.outer, ...r.holes]).map(ring => flattenRing(ring))

function hourLines(data: SheetData, frame: Frame, times: readonly string[]): HourLines[] {
  const boundaries = new Map(data.slabs.map(slab => [slab.id, boundaryOf(slab)]))
  const onPage = (line: Ring): XY[] => line.map(p => toPage(frame, p))
  return data.hours
    .filter(hour => times.includes(hour.time))
    .map(hour => {
      const shadows = data.shadows.filter(shadow => shadow.time === hour.time)
      const edges = (of: (shadow: SheetShadow) => readonly Region[], more: (shadow: SheetShadow) => Ring[]): XY[][] =>
        shadows.flatMap(shadow => {
          const boundary = [...(boundaries.get(shadow.slabId) ?? []), ...more(shadow)]
          return ringsOf(of(shadow)).flatMap(ring => shadeLines(ring, boundary).map(onPage))
        })
      return {
        hour,
        lines: edges(
          s => s.polygons,
          () => [],
        ),
        thin: edges(
          s => s.dapple,
          s => ringsOf(s.polygons),
        ),
      }
    })
}

export const isAfternoon = (hour: SheetHour): boolean => hour.clockMin >= 12 * 60

/** Rings run with the shade on their left; on the page, y down, that is (dy, −dx). */
const ticksInto = (lines: readonly XY[][], stepPt: number, lengthPt: number): string =>
  lines
    .flatMap(line => walk(line, stepPt))
    .map(({ at, direction }) => moveLine(at, [at[0] + direction[1] * lengthPt, at[1] - direction[0] * lengthPt]))
    .join('')

function drawHour({ hour, lines, thin }: HourLines): string {
  const dash = isAfternoon(hour) ? { dash: afternoonDash } : {}
  return (
    drawPath(lines.map(openPath).join(''), { stroke: ink, width: 1.4, ...dash }) +
    drawPath(ticksInto(lines, 13, 4.5), { stroke: ink, width: 0.6 }) +
    drawPath(thin.map(openPath).join(''), { stroke: softInk, width: 0.8, ...dash }) +
    drawPath(ticksInto(thin, 9, 2.5), { stroke: softInk, width: 0.5 })
  )
}

function hourWishes({ hour, lines: full, thin }: HourLines): LabelWish<DrawLabel>[] {
  const width = widthOf(hour.label, planLetterPt, 'planBold') + 10
  // A long edge is named once, its longest line; a second part is named where it is long enough to be lost.
  const byLength = [...full, ...thin]
    .map(line => ({
      line,
      length: line.slice(1).reduce((s, b, i) => s + Math.hypot(b[0] - line[i]![0], b[1] - line[i]![1]), 0),
    }))
    .sort((p, q) => q.length - p.length)
  return byLength
    .filter(({ length }, i) => (i === 0 ? length > 12 : i < 3 && length > 90))
    .map(({ line, length }) => {
      const candidates = walk(line, Math.max(6, Math.min(16, length / 8))).map(
        ({ at }, i, all): Candidate<DrawLabel> => {
          const box: LabelBox = { center: at, width: width + 4, height: 24 }
          return {
            boxes: [box],
            cost: 8 * Math.abs((i + 0.5) / all.length - 0.5),
            place: () =>
              drawRect(at[0] - width / 2, at[1] - 10, width, 20, { fill: '#FFFFFF', stroke: ink, width: 1.1 }) +
              drawText(hour.label, at[0], at[1] + 4.9, { sizePt: planLetterPt, face: 'planBold', anchor: 'middle' }),
          }
        },
      )
      return { candidates, dropAbove: 2500 }
    })
}

/** Edges of the shade at the chosen hours: solid before noon, dashed from noon on, ticks into the shade. */
export function drawShade(data: SheetData, frame: Frame, times: readonly string[]): Layer {
  const hours = hourLines(data, frame, times)
  return {
    svg: hours.map(drawHour).join(''),
    wishes: hours.flatMap(hourWishes),
    segments: hours.flatMap(({ lines, thin }) =>
      [...lines, ...thin].flatMap(line => line.slice(1).map((b, i) => ({ a: line[i]!, b, weight: 5 }))),
    ),
  }
}
