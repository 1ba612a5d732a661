import type { Id, Pt } from '../../../shared/document/primitives'
import { pointAt } from '../../geometry/edgeAt'
import { edgeFromRise } from '../../geometry/resolvePath'
import { editEdge } from './editEdge'
import type { Command } from './editSite'
import { isClosed } from './findPath'

/**
 * One measure of an arc, meters; the radius and the rise keep both ends. A length along it, or its chord straight
 * across, keeps its shape and moves what `moves` says, the whole next edge with it, so that straight sides stay square.
 */
export type ArcMeasure =
  | { readonly radiusM: number }
  | { readonly riseM: number }
  | { readonly lengthM: number; readonly moves: 'start' | 'end' | 'both' }
  | { readonly chordM: number; readonly moves: 'start' | 'end' | 'both' }

const refused = (foundM: number, what: string) =>
  ({ code: 'badMeasure', severity: 'stop', values: { foundM, what } }) as const

/**
 * Changes the one arc that edges of one circle make together, given in the order of travel. Its corners keep their
 * share of the way. It stays on its side of the chord; by radius also the shorter or the longer way around it was.
 * Refused for a radius under half the chord, and for measures that are not > 0;
 * a rise of 0 makes a single edge straight.
 * Source: circular segment, CRC Standard Mathematical Tables, "Plane figures": s = R ∓ √(R² − c²/4), s = 2R sin² θ/4.
 */
export const setArc = (edgeIds: readonly Id[], measure: ArcMeasure): Command =>
  editEdge(edgeIds[0] ?? '', ({ path, index }, edit) => {
    edit.onlyMoved = true
    const vertexAt = (k: number) => path.vertices[(index + k) % path.vertices.length]!
    const edges = edgeIds.map((_, k) => path.edges[(index + k) % path.edges.length]!)
    const arcs = edges.map(({ id, riseM }, k) => edgeFromRise(id, vertexAt(k).at, vertexAt(k + 1).at, riseM).arc)
    const sweeps = arcs.map(arc => arc?.sweepRad ?? 0)
    const sweepRad = sweeps.reduce((sum, each) => sum + each, 0)
    const radiusNowM = arcs[0]?.radiusM
    if (radiusNowM === undefined) return refused(0, 'arc')
    const [from, to] = [vertexAt(0).at, vertexAt(edges.length).at]
    const chordNowM = Math.hypot(to[0] - from[0], to[1] - from[1])
    if ('moves' in measure) {
      const [toM, nowM] =
        'chordM' in measure ? [measure.chordM, chordNowM] : [measure.lengthM, radiusNowM * Math.abs(sweepRad)]
      if (!(toM > 0 && Number.isFinite(toM))) return refused(toM, 'length of an arc')
      const grow = toM / nowM
      const n = path.vertices.length
      const takesNext = n > edges.length + 2
      const fixed: Pt =
        measure.moves === 'end' ? from : measure.moves === 'start' ? to : [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
      const carry = (vertex: ReturnType<typeof vertexAt>, [x, y]: Pt) => {
        vertex.at = [vertex.at[0] + (x - fixed[0]) * (grow - 1), vertex.at[1] + (y - fixed[1]) * (grow - 1)]
      }
      const goesOn = (after: boolean) => isClosed(path) || (after ? index + edges.length + 1 < n : index > 0)
      if (takesNext && goesOn(false)) carry(vertexAt(n - 1), from)
      if (takesNext && goesOn(true)) carry(vertexAt(edges.length + 1), to)
      for (let k = 0; k <= edges.length; k++) carry(vertexAt(k), vertexAt(k).at)
      for (const edge of edges) if (edge.riseM !== undefined) edge.riseM *= grow
      return undefined
    }
    const halfM = chordNowM / 2
    const typedM = 'radiusM' in measure ? measure.radiusM : measure.riseM
    if (typedM === 0 && 'riseM' in measure && edges.length === 1) {
      delete edges[0]!.riseM
      return undefined
    }
    if (!(typedM > 0 && Number.isFinite(typedM))) return refused(typedM, 'measure of an arc')
    let riseM = typedM
    if ('radiusM' in measure) {
      // A half circle typed to the eighth of an inch may fall short by rounding alone.
      if (typedM < halfM * (1 - 1e-12))
        return {
          code: 'radiusTooSmall',
          severity: 'stop',
          values: { radiusM: typedM, leastM: halfM },
          at: { entityId: path.id },
        }
      const toChordM = Math.sqrt(Math.max(0, typedM * typedM - halfM * halfM))
      // The same as R − √(R² − c²/4) without the loss of digits of a flat arc.
      riseM = Math.abs(sweepRad) > Math.PI ? typedM + toChordM : (halfM * halfM) / (typedM + toChordM)
    }
    if (riseM > 20 * halfM)
      return {
        code: 'riseTooLarge',
        severity: 'stop',
        values: { riseM, chordM: 2 * halfM },
        at: { entityId: path.id },
      }
    const whole = edgeFromRise('', from, to, Math.sign(sweepRad) * riseM)
    let run = 0
    for (const [k, edge] of edges.entries()) {
      const share = sweeps[k]! / sweepRad
      const turned = Math.abs(whole.arc!.sweepRad) * share
      edge.riseM = Math.sign(sweepRad) * whole.arc!.radiusM * 2 * Math.sin(turned / 4) ** 2
      run += share
      if (k + 1 < edges.length) vertexAt(k + 1).at = pointAt(whole, run)
    }
    return undefined
  })
