/** The ring beside a chosen corner that rounds it, and beside a chosen edge that bends it to an arc. */
import type { Command } from '../../core/document/commands/editSite'
import { findEdge, findVertex, isClosed } from '../../core/document/commands/findPath'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { setEdgeRise } from '../../core/document/commands/setEdgeRise'
import { tangentAt } from '../../core/geometry/edgeAt'
import { edgeFromRise, resolvePath } from '../../core/geometry/resolvePath'
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

/** The ring stands this far from the arc it makes, on the screen; at an edge beyond its dimension. */
const asidePx = { corner: 30, edge: 54 } as const
/** A corner this flat changes its radius by meters for a pixel: it is left to typing. */
const leastPull = 0.02

export interface ShapeHandle {
  /** Names the undo step, and what the measure is. */
  readonly step: 'corner radius' | 'arc'
  readonly words: 'Radius' | 'Rise'
  readonly at: Pt
  /** The middle of the arc, or of the straight edge. */
  readonly foot: Pt
  /** Radius or rise, meters, for a pointer there. */
  readonly measure: (at: Pt) => number
  readonly command: (measureM: number) => Command
  /** False where the shape has no room for what was set. */
  readonly fits: (site: Site) => boolean
}

const edgeOf = (path: Path, index: number) => {
  const n = path.vertices.length
  const edge = path.edges[(index + path.edges.length) % path.edges.length]!
  return edgeFromRise(edge.id, path.vertices[(index + n) % n]!.at, path.vertices[(index + 1 + n) % n]!.at, edge.riseM)
}

const toward = ([x, y]: Pt, [ux, uy]: Pt, far: number): Pt => [x + ux * far, y + uy * far]
const along = (from: Pt, [ux, uy]: Pt, at: Pt): number => (at[0] - from[0]) * ux + (at[1] - from[1]) * uy

/** `zoom` in pixels per meter; null where nothing or more than one thing is chosen. */
export function shapeHandle(site: Site, selection: readonly Id[], zoom: number): ShapeHandle | null {
  const [id, more] = selection
  if (id === undefined || more !== undefined) return null
  const vertex = findVertex(site, id)
  if (vertex) return roundHandle(vertex.path, vertex.index, asidePx.corner / zoom)
  const edge = findEdge(site, id)
  return edge ? bendHandle(edge.path, edge.index, asidePx.edge / zoom) : null
}

/** A rounding of radius r touches the line that halves its corner's angle θ at r(1/sin(θ/2) − 1) from the corner. */
function roundHandle(path: Path, index: number, asideM: number): ShapeHandle | null {
  const { id, at, roundM = 0 } = path.vertices[index]!
  if (!isClosed(path) && (index === 0 || index === path.vertices.length - 1)) return null
  const [bx, by] = tangentAt(edgeOf(path, index - 1), 1)
  const [ax, ay] = tangentAt(edgeOf(path, index), 0)
  const [sx, sy] = [ax - bx, ay - by]
  const long = Math.hypot(sx, sy)
  if (long < 1e-9) return null
  // |a − b| = 2 cos(θ/2) of the unit directions that leave the corner along both edges.
  const halfSin = Math.sqrt(Math.max(0, 1 - (long / 2) ** 2))
  const pull = 1 / halfSin - 1
  if (!(pull > leastPull && Number.isFinite(pull))) return null
  const u: Pt = [sx / long, sy / long]
  return {
    step: 'corner radius',
    words: 'Radius',
    at: toward(at, u, roundM * pull + asideM),
    foot: toward(at, u, roundM * pull),
    measure: to => Math.max(0, (along(at, u, to) - asideM) / pull),
    command: radiusM => setCornerRadius(id, radiusM > 0 ? radiusM : undefined),
    fits: site => {
      const found = findVertex(site, id)
      if (!found) return false
      const { findings } = resolvePath(found.path, found.path.id, isClosed(found.path))
      return !findings.some(({ code, values }) => code === 'roundTooLarge' && values.vertexId === id)
    },
  }
}

function bendHandle(path: Path, index: number, asideM: number): ShapeHandle | null {
  const { id, riseM = 0 } = path.edges[index]!
  const { from, to } = edgeOf(path, index)
  const chordM = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (chordM < 1e-9) return null
  const middle: Pt = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  // To the right of travel, as a rise counts.
  const right: Pt = [(to[1] - from[1]) / chordM, -(to[0] - from[0]) / chordM]
  const aside = riseM < 0 ? -asideM : asideM
  return {
    step: 'arc',
    words: 'Rise',
    at: toward(middle, right, riseM + aside),
    foot: toward(middle, right, riseM),
    measure: at => along(middle, right, at) - aside,
    command: rise => setEdgeRise(id, rise),
    fits: () => true,
  }
}
