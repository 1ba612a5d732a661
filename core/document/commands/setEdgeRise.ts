import type { Id } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'
import { editEdge } from './editEdge'
import type { Command } from './editSite'

/** The arc of a form would turn by more than 348°: see the path's own check. */
const riseToChordLimit = 10

const setRise = (edgeId: Id, riseFor: (chordM: number) => number | undefined | Finding): Command =>
  editEdge(edgeId, ({ path, edge, from, to }) => {
    const chordM = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1])
    const riseM = riseFor(chordM)
    if (typeof riseM === 'object') return riseM
    if (riseM === undefined || riseM === 0) {
      delete edge.riseM
      return undefined
    }
    if (Math.abs(riseM) > riseToChordLimit * chordM)
      return { code: 'riseTooLarge', severity: 'stop', values: { edgeId, riseM, chordM }, at: { entityId: path.id } }
    edge.riseM = riseM
    return undefined
  })

/** An arc by chord and rise: `riseM` is the mid-ordinate, + = to the right of travel; undefined or 0 = straight. */
export const setEdgeRise = (edgeId: Id, riseM: number | undefined): Command => setRise(edgeId, () => riseM)

export interface ArcSide {
  /** The side of travel to which the arc bulges. */
  readonly bulges: 'left' | 'right'
  /** True for the longer way around. */
  readonly longWay?: boolean
}

/**
 * An arc by radius: rise s = R ∓ √(R² − c²/4), the minus for the shorter way. Refused where R < c/2.
 * Source: circular segment, CRC Standard Mathematical Tables, "Plane figures".
 */
export const setEdgeRadius = (edgeId: Id, radiusM: number, { bulges, longWay = false }: ArcSide): Command =>
  setRise(edgeId, chordM => {
    const leastM = chordM / 2
    // A half circle typed to the eighth of an inch may fall short by rounding alone.
    if (!(radiusM >= leastM * (1 - 1e-12)))
      return { code: 'radiusTooSmall', severity: 'stop', values: { radiusM, leastM }, at: { entityId: edgeId } }
    const toChord = Math.sqrt(Math.max(0, radiusM * radiusM - leastM * leastM))
    // The same as R − √(R² − c²/4) without the loss of digits of a flat arc.
    const riseM = longWay ? radiusM + toChord : (leastM * leastM) / (radiusM + toChord)
    return bulges === 'right' ? riseM : -riseM
  })
