/** The plan itself, drawn into a window of a page. */
import type { Measures } from '../units/measures'
import { crownRings, drawCasterNames, drawCasterShapes } from './drawCasters'
import { drawDimensions } from './drawDimensions'
import {
  drawConstructionJoints,
  drawContractionJoints,
  drawIsolationJoints,
  drawPourEdges,
  drawPourGrounds,
  drawPourPlates,
} from './drawPours'
import { drawShade } from './drawShade'
import { drawFurnishings, drawNotes, drawTapes } from './drawShown'
import {
  drawFinishParts,
  drawOpeningNames,
  drawOutlines,
  drawPoints,
  drawSlabGrounds,
  drawSteps,
  drawThickened,
  stepRings,
} from './drawSlabs'
import { drawWishes } from './drawWishes'
import type { Frame } from './frame'
import type { Layer, PageRect } from './layer'
import { placeLabels } from './placeLabels'
import type { SheetData } from './sheetData'

export interface PlanLayers {
  /** `full`: ground, hatch and plates; `number`: only the number of each pour. */
  readonly pours: 'full' | 'number' | 'none'
  readonly joints: boolean
  readonly finishes: boolean
  readonly casters: boolean
  readonly dimensions: boolean
  /** ISO times out of `SheetData.hours`. */
  readonly shadeTimes: readonly string[]
}

const nothing: Layer = { svg: '', wishes: [], segments: [] }

/** SVG of everything inside the window; labels are placed for this window alone, so each sheet of a set is complete. */
export function drawPlan(
  data: SheetData,
  frame: Frame,
  window: PageRect,
  layers: PlanLayers,
  measures: Measures,
): string {
  const levelM = data.slabs.reduce((low, slab) => Math.min(low, slab.levelM), Infinity)
  const outlines = drawOutlines(data, frame)
  const joints = layers.joints ? drawConstructionJoints(data, frame, measures) : nothing
  const plates = layers.pours === 'none' ? nothing : drawPourPlates(data, frame, window, measures, layers.pours)
  const dimensions = layers.dimensions
    ? drawDimensions(
        data.slabs.map(slab => slab.outline),
        frame,
        measures,
        { crowns: layers.casters ? crownRings(data, frame) : [], steps: stepRings(data, frame) },
      )
    : nothing
  const wishes = layers.joints ? drawWishes(data.wishes ?? [], frame) : nothing
  const shade = drawShade(data, frame, layers.shadeTimes)
  const names = layers.casters ? drawCasterNames(data, frame, window, levelM, measures) : nothing
  const openings = drawOpeningNames(data, frame, window, measures)
  const points = drawPoints(data, frame)
  const thickened = drawThickened(data, frame)
  const steps = drawSteps(data, frame)
  const tapes = layers.dimensions ? drawTapes(data.tapes ?? [], frame, measures) : nothing
  const notes = layers.dimensions ? drawNotes(data.notes ?? [], frame) : nothing
  const labeled = [plates, dimensions, joints, shade, openings, names, points, tapes, notes]
  const places = placeLabels(
    labeled.flatMap(layer => layer.wishes),
    {
      segments: [outlines, wishes, ...labeled].flatMap(layer => layer.segments),
      boxes: [],
      bounds: { x0: window.x, y0: window.y, x1: window.x + window.width, y1: window.y + window.height },
    },
  )
  return [
    layers.casters ? drawCasterShapes(data.casters, frame, true) : '',
    layers.pours === 'full' ? drawPourGrounds(data, frame) : drawSlabGrounds(data, frame),
    layers.pours === 'number' ? drawPourEdges(data, frame) : '',
    layers.finishes ? drawFinishParts(data, frame) : '',
    layers.joints ? drawContractionJoints(data, frame) : '',
    joints.svg,
    ...(layers.dimensions && thickened ? [thickened] : []),
    outlines.svg,
    ...(steps ? [steps] : []),
    layers.joints ? drawIsolationJoints(data, frame) : '',
    ...(wishes.svg ? [wishes.svg] : []),
    ...(layers.casters && data.furnishings ? [drawFurnishings(data.furnishings, frame)] : []),
    shade.svg,
    layers.casters ? drawCasterShapes(data.casters, frame, false) : '',
    ...(tapes.svg ? [tapes.svg] : []),
    points.svg,
    ...(notes.svg ? [notes.svg] : []),
    ...places.map(place => place?.() ?? ''),
  ].join('\n')
}
