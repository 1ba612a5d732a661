import { openingNames } from '../../../core/document/openingNames'
import { type Box, pointBounds, ringBounds } from '../../../core/geometry/bounds'
import { regionContains, ringContains } from '../../../core/geometry/contains'
import type { CurveRegion, CurveRing } from '../../../core/geometry/curve'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Measures } from '../../../core/units/measures'
import type { Caster } from '../../../shared/document/caster'
import type { Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { type Camera, toPlan, toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { type LabelSpot, labelSpot } from './drawPours'
import { around, type LabelRoom, meet, type Rect } from './labelRoom'
import { letter, letterWidth } from './lettering'
import type { Pen } from './pen'

/** More names than this hide the plan; the outline has them all. */
export const mostNames = 24

/** Names of casters with their heights above their own base, where there is room. */
export function drawCasterNames(
  pen: Pen,
  casters: readonly Caster[],
  slabs: readonly ResolvedSlab[],
  print: Measures,
  room: LabelRoom,
): void {
  if (casters.length > mostNames) return
  for (const caster of casters) nameAt(pen, room, caster, slabs, heightOf(caster, print))
}

function heightOf(caster: Caster, print: Measures): string {
  switch (caster.kind) {
    case 'building':
      return `eave ${print.length(caster.eaveM - caster.baseM)}`
    case 'cover':
      return ''
    default:
      return `${print.length(caster.topM - caster.baseM)} high`
  }
}

interface NamePlaces {
  /** Where it may stand where it hides nothing, the best place first. */
  readonly clear: readonly Pt[]
  /** Where it may stand without such a place; none, and the name is left to the outline. */
  readonly spare: readonly Pt[]
}

/** Where a name of that size may stand. */
function placesFor(pen: Pen, caster: Caster, width: number, height: number): NamePlaces {
  switch (caster.kind) {
    case 'tree': {
      const [x, y] = toScreen(pen.camera, caster.at)
      const r = caster.crownRadiusM * pen.camera.zoom
      const beside = r + 6 + width / 2
      const clear: readonly Pt[] = [
        [x, y + r + 22],
        [x, y - r - 22],
        ...[1, -1].map((side): Pt => [x + side * beside, y]),
        ...[1, -1].flatMap(up => [1, -1].map((side): Pt => [x + (side * width) / 2, y + up * (r + 22)])),
        ...[1, -1].flatMap(up => [1, -1].map((side): Pt => [x + side * beside, y + up * 0.6 * r])),
      ]
      // Within its own crown, where that is wide enough to be read as such.
      const holds = Math.hypot(width / 2, 0.5 * r + height / 2) < r
      return {
        clear,
        spare: holds
          ? [
              [x, y + 0.5 * r],
              [x, y - 0.5 * r],
            ]
          : [],
      }
    }
    case 'wall': {
      const points = caster.line.map(p => toScreen(pen.camera, p))
      const beyond = (end: Pt, before: Pt): Pt => {
        const length = Math.hypot(end[0] - before[0], end[1] - before[1]) || 1
        return [end[0] + (38 * (end[0] - before[0])) / length, end[1] + (26 * (end[1] - before[1])) / length]
      }
      const k = Math.floor((points.length - 1) / 2)
      const [from, to] = [points[k]!, points[k + 1]!]
      const sides = [0.5, 0.25, 0.75].flatMap((t): Pt[] => {
        const [x, y] = [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]
        const isUpright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0])
        return isUpright
          ? [
              [x + 46, y],
              [x - 46, y],
            ]
          : [
              [x, y - 26],
              [x, y + 26],
            ]
      })
      const places = [beyond(points.at(-1)!, points.at(-2)!), beyond(points[0]!, points[1]!), ...sides]
      return { clear: places, spare: places }
    }
    default: {
      const path = caster.kind === 'building' ? caster.footprint : caster.outline
      const outline = outlineOf(path)
      const box = pointBounds(outline.map(edge => toScreen(pen.camera, edge.from)))
      // The middle of what is in view, then along it.
      const [x0, x1] = [Math.max(0, box.minX), Math.min(pen.size.width, box.maxX)]
      const [y0, y1] = [Math.max(0, box.minY), Math.min(pen.size.height, box.maxY)]
      // The ridge of a roof runs through the middle of a house that is seen whole.
      const isWhole = y0 === box.minY && y1 === box.maxY
      const rows =
        caster.kind === 'building' && caster.roof.form !== 'flat' && isWhole
          ? [0.3, 0.38, 0.7, 0.62, 0.5]
          : [0.5, 0.25, 0.75, 0.37, 0.63]
      const inside = rows
        .flatMap(v => [0.5, 0.25, 0.75].map((u): Pt => [x0 + (x1 - x0) * u, y0 + (y1 - y0) * v]))
        .filter(at => ringContains(outline, toPlan(pen.camera, at)))
      const [across, up] = [width / 2 + 8, height / 2 + 8]
      const beside: readonly Pt[] = [
        ...[0.5, 0, 1].flatMap((u): readonly Pt[] => [
          [x0 + (x1 - x0) * u, y1 + up],
          [x0 + (x1 - x0) * u, y0 - up],
        ]),
        [x1 + across, (y0 + y1) / 2],
        [x0 - across, (y0 + y1) / 2],
      ]
      return { clear: [...inside, ...beside], spare: inside }
    }
  }
}

const casterStyle = { sizePx: 14, weight: 700 } as const
const detailStyle = { sizePx: 13, weight: 500 } as const

function nameAt(pen: Pen, room: LabelRoom, caster: Caster, slabs: readonly ResolvedSlab[], detail: string): void {
  const { name, kind } = caster
  const line = 16 * pen.inks.letterScale
  const width = Math.max(letterWidth(pen, name, casterStyle), letterWidth(pen, detail, detailStyle)) + 8
  const height = detail ? 2 * line + 4 : line + 4
  const { clear, spare } = placesFor(pen, caster, width, height)
  const on = (at: Pt) => slabs.find(({ outline }) => ringContains(outline, at))
  // The name of a tree beside a slab is not read as one of the slab's parts.
  const own =
    caster.kind === 'tree'
      ? clear.filter(spot => (on(toPlan(pen.camera, spot)) ?? on(caster.at)) === on(caster.at))
      : clear
  const at = room.take(own, width, height, false) ?? room.take(spare, width, height)
  if (!at) return
  const [x, y] = at
  const isOnRoof = kind === 'building' && ringContains(outlineOf(caster.footprint), toPlan(pen.camera, at))
  const halo = isOnRoof ? pen.inks.building : pen.inks.paper
  letter(pen, name, [x, detail ? y - line / 2 : y], { ...casterStyle, halo })
  if (detail) letter(pen, detail, [x, y + line / 2], { ...detailStyle, ink: pen.inks['ink-2'], halo })
}

const openingStyle = { sizePx: 14, weight: 600 } as const

/** What an opening is, where its name has room in it. */
export function drawOpeningNames(
  pen: Pen,
  slabs: readonly ResolvedSlab[],
  sources: readonly Slab[],
  room: LabelRoom,
): void {
  for (const slab of slabs) {
    const names = openingNames(sources.find(each => each.id === slab.id)?.openings ?? [])
    for (const { id, ring } of slab.openings) {
      const name = names.get(id)?.title
      const region = name !== undefined && regionOf(ring)
      if (!region) continue
      const width = letterWidth(pen, name, openingStyle) + 12
      const box = pointBounds(ring.map(({ from }) => from))
      const { at, roomM } = labelSpot(region)
      const zoom = pen.camera.zoom
      if (Math.max(2 * roomM, Math.min(box.maxX - box.minX, 4 * roomM)) * zoom < width || 2 * roomM * zoom < 24)
        continue
      const [x, y] = toScreen(pen.camera, at)
      const spot = room.take(
        [
          [x, y],
          [x, y - 0.4 * roomM * zoom],
          [x, y + 0.4 * roomM * zoom],
        ],
        width,
        22 * pen.inks.letterScale,
      )
      if (spot) letter(pen, name, spot, { ...openingStyle, ground: pen.inks.paper })
    }
  }
}

const regions = new WeakMap<CurveRing, CurveRegion>()

/** Made once for each ring. */
const regionOf = (ring: CurveRing): CurveRegion => {
  const known = regions.get(ring) ?? { outer: ring, holes: [] }
  regions.set(ring, known)
  return known
}

const slabNameMoves: readonly Pt[] = [
  [0, 0],
  [30, 0],
  [-30, 0],
  [60, 0],
  [-60, 0],
  [0, -70],
  [0, 70],
  [0, -120],
  [0, 120],
  [15, 0],
  [-15, 0],
  [15, 70],
  [15, -70],
  [-15, 70],
  [-15, -70],
  [100, 0],
  [-100, 0],
]

/** The area over the name, each by its letters and how far it stands from the middle of both; the area alone. */
const slabNameSizes = [
  { areaPx: 34, namePx: 14, heightPx: 66, linesPx: [11, 17] },
  { areaPx: 20, namePx: 13, heightPx: 42, linesPx: [8, 12] },
  { areaPx: 16, namePx: 13, heightPx: 38, linesPx: [8, 10] },
  { areaPx: 16, namePx: 0, heightPx: 24, linesPx: [0, 0] },
] as const
/** Struck out by an edge only where the slab has no room for it at all. */
const lastSize = slabNameSizes[2]

const screenBox = (camera: Camera, { minX, minY, maxX, maxY }: Box): Rect => {
  const [x, y] = toScreen(camera, [minX, maxY])
  return { x, y, width: (maxX - minX) * camera.zoom, height: (maxY - minY) * camera.zoom }
}

/** The slab's area in large letters where it has most room. */
export function drawSlabNames(
  pen: Pen,
  slabs: readonly ResolvedSlab[],
  print: Measures,
  room: LabelRoom,
  spotOf: (id: string, region: CurveRegion) => LabelSpot,
): void {
  for (const slab of slabs) {
    const region = slab.net[0]
    if (!region || Math.sqrt(slab.netAreaM2) * pen.camera.zoom < 110) continue
    const [x, y] = toScreen(pen.camera, spotOf(slab.id, region).at)
    const area = print.area(slab.netAreaM2)
    const boxOf = (ring: CurveRing): Rect => screenBox(pen.camera, ringBounds(ring))
    const openings = slab.openings.map(({ ring }) => boxOf(ring))
    const shapes = [...openings, ...slab.insets.flatMap(({ shape }) => shape.map(({ outer }) => boxOf(outer)))]
    // Large where most room is, else beside, above or below what stands there, else smaller: on the slab, on no opening,
    // and on an inset only where there is no other place.
    const ways = [
      ...[shapes, ...(slab.insets.length > 0 ? [openings] : [])].flatMap(kept =>
        slabNameSizes.map(size => ({ kept, size, mayHide: false })),
      ),
      { kept: openings, size: lastSize, mayHide: true },
    ]
    for (const { kept, size, mayHide } of ways) {
      const style = { sizePx: size.areaPx, weight: 700, face: 'slab', ground: pen.inks.slab } as const
      const nameStyle = { sizePx: size.namePx, weight: 600, ground: pen.inks.slab } as const
      const scale = pen.inks.letterScale
      const nameWidth = size.namePx > 0 ? letterWidth(pen, slab.name, nameStyle) : 0
      const [width, height] = [Math.max(letterWidth(pen, area, style), nameWidth) + 10, size.heightPx * scale]
      const spots = slabNameMoves
        .map(([dx, dy]): Pt => [x + dx * scale, y + dy * scale])
        .filter(spot => regionContains(region, toPlan(pen.camera, spot)))
        .filter(spot => !kept.some(box => meet(box, around(spot, width, height))))
      const at = room.take(spots, width, height, mayHide)
      if (!at) continue
      const [above, below] = size.linesPx
      letter(pen, area, [at[0], at[1] - above * scale], style)
      if (size.namePx > 0) letter(pen, slab.name, [at[0], at[1] + below * scale], nameStyle)
      break
    }
  }
}
