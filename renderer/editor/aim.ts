/** Where the pointer is taken to be: held on what it is near, in words that say on what. */

import { edgeBounds } from '../../core/geometry/bounds'
import type { CurveEdge } from '../../core/geometry/curve'
import { findSnaps, type Snap, type SnapOptions } from '../../core/geometry/field/findSnaps'
import { type SnapEdge, snapIndex } from '../../core/geometry/field/snapIndex'
import { edgeFromRise } from '../../core/geometry/resolvePath'
import type { Measures } from '../../core/units/measures'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { caughtWords } from './caughtWords'

export interface Aim {
  readonly at: Pt
  /** What held it: "On edge" and "of Patio, 8′ 0″", the length from the corner before. Null in the open. */
  readonly caught: { readonly relation: string; readonly rest: string } | null
}

export interface AimOf {
  readonly site: Site
  /** Screen pixels per meter. */
  readonly zoom: number
  /** Never caught. */
  readonly selection: readonly Id[]
  readonly from?: Pt | undefined
  /** Corners already set of what is being drawn. */
  readonly placed?: readonly Pt[]
  readonly print: Measures
}

/** Nearer than this on the screen, the pointer is held. */
const holdPx = 8
/** The drawing catches whole measures at least this far apart on the screen. */
const gridPx = 10
const inch = 0.0254

const gridSteps = {
  ftin: [inch / 8, inch / 4, inch, 3 * inch, 6 * inch, 12 * inch, 48 * inch],
  metric: [0.005, 0.01, 0.05, 0.1, 0.25, 0.5, 1],
} as const

/** The smallest whole measure that is still told apart on the screen. */
const gridStep = (zoom: number, units: Site['units']): number | undefined =>
  gridSteps[units].find(step => step * zoom >= gridPx)

/** The same, and the largest where none is told apart. */
export const wholeStep = (zoom: number, units: Site['units']): number =>
  gridStep(zoom, units) ?? gridSteps[units].at(-1)!

/** The finest measure that is printed. */
export const printedStep = (units: Site['units']): number => (units === 'ftin' ? inch / 8 : 0.001)

const inHand = (placed: readonly Pt[]): readonly SnapEdge[] =>
  placed.slice(1).map((to, i) => {
    const edge: CurveEdge = edgeFromRise('', placed[i]!, to, undefined)
    return { edge, whole: edge, box: edgeBounds(edge), owners: [] }
  })

/** The first edge of an outline of two edges or more: where it would close squarely. */
function beganAs([first, second, third]: readonly Pt[]): Pick<SnapOptions, 'began'> {
  if (!first || !second || !third) return {}
  const long = Math.hypot(second[0] - first[0], second[1] - first[1])
  return { began: { at: first, along: [(second[0] - first[0]) / long, (second[1] - first[1]) / long] } }
}

/** `free` turns catching off. */
export function aimAt(cursor: Pt, of: AimOf, free: boolean): Aim {
  const { site, zoom, selection, from, placed = [], print } = of
  if (free) return { at: cursor, caught: null }
  const radiusM = holdPx / zoom
  const first = placed[0]
  if (first && placed.length > 2 && Math.hypot(first[0] - cursor[0], first[1] - cursor[1]) <= radiusM)
    return { at: first, caught: { relation: 'First corner', rest: 'a click closes it' } }
  const drawn = snapIndex(site)
  const index = {
    ...drawn,
    corners: [...drawn.corners, ...placed.slice(0, -1).map(at => ({ at, owners: [] }))],
    edges: [...drawn.edges, ...inHand(placed)],
  }
  const gridM = gridStep(zoom, site.units)
  const [snap] = findSnaps(cursor, index, radiusM, new Set(selection), {
    ...(from ? { from } : {}),
    ...beganAs(placed),
    ...(gridM === undefined ? {} : { gridM }),
  })
  if (!snap) return { at: cursor, caught: null }
  const at = snap.kind === 'grid' ? snap.at : onGrid(snap, cursor, gridM, from, radiusM)
  if (snap.kind === 'grid') return { at, caught: null }
  const { relation, rest } = caughtWords(site, snap.holds)
  const far = from && print.length(Math.hypot(at[0] - from[0], at[1] - from[1]))
  return { at, caught: { relation, rest: far === undefined ? rest : `${rest}, ${far}` } }
}

/** Held on a line from the last corner, the length still comes out in whole measures. */
function onGrid(snap: Snap, cursor: Pt, gridM: number | undefined, from: Pt | undefined, radiusM: number): Pt {
  const slides = snap.words === 'square to' || snap.words === 'alongside'
  if (!slides || gridM === undefined || from === undefined) return snap.at
  const lengthM = Math.hypot(snap.at[0] - from[0], snap.at[1] - from[1])
  const whole = Math.round(lengthM / gridM) * gridM
  if (!(whole > 0)) return snap.at
  const at: Pt = [
    from[0] + ((snap.at[0] - from[0]) * whole) / lengthM,
    from[1] + ((snap.at[1] - from[1]) * whole) / lengthM,
  ]
  return Math.hypot(at[0] - cursor[0], at[1] - cursor[1]) <= 2 * radiusM ? at : snap.at
}
