/** Who has which ground of a slab: what two claims want counts once, for the first. */
import { onceFrozen } from '../../shared/onceFrozen'
import { boxesMeet, ringBounds } from './bounds'
import { regionContains } from './contains'
import type { CurveRegion } from './curve'
import { subtractCurves } from './curveBoolean'
import { ringsClear } from './offsetRing'
import { curveArea } from './ringArea'
import { ringLength } from './ringLength'
import { sameRegions } from './sameRegions'

/** A scrap of a claim thinner than this on average is left to the field: a few times what chords may stray by. */
const hairlineM = 5e-4

/** True where regions certainly share no ground: their boundaries keep clear and neither lies in the other. */
function regionsApart(a: CurveRegion, b: CurveRegion): boolean {
  if (!boxesMeet(ringBounds(a.outer), ringBounds(b.outer))) return true
  const ringsOf = (r: CurveRegion) => [r.outer, ...r.holes]
  if (regionContains(a, b.outer[0]!.from) || regionContains(b, a.outer[0]!.from)) return false
  return ringsOf(a).every(p => ringsOf(b).every(q => ringsClear(p, q)))
}

interface Claimed {
  readonly regions: readonly CurveRegion[]
  readonly rivals: readonly CurveRegion[]
  readonly shape: readonly CurveRegion[]
  readonly chordsKept: boolean
}

/** While a corner is dragged most claims stay as they are. */
const leftOnce = onceFrozen(
  (_entity: { readonly id: string }, regions: readonly CurveRegion[], rivals: readonly CurveRegion[]): Claimed => ({
    regions,
    rivals,
    ...leaveClaim(regions, rivals),
  }),
  (known, regions, rivals) => sameRegions(known.regions, regions) && sameRegions(known.rivals, rivals),
)

/** Takes off what others have claimed before, and keeps the claim. */
export class Claims {
  private readonly taken: { readonly id: string; readonly region: CurveRegion }[] = []

  /** `clearOf`: earlier claims that it shares no ground with by construction. */
  claim(
    entity: { readonly id: string },
    regions: readonly CurveRegion[],
    clearOf: readonly string[] = [],
  ): Pick<Claimed, 'shape' | 'chordsKept'> {
    const rivals = this.taken
      .filter(t => !clearOf.includes(t.id) && regions.some(r => !regionsApart(r, t.region)))
      .map(t => t.region)
    const claimed = leftOnce(entity, regions, rivals)
    for (const region of claimed.shape) this.taken.push({ id: entity.id, region })
    return claimed
  }

  /** What the claims other than `known` leave of regions; `leftM2` is its area. */
  left(regions: readonly CurveRegion[], known: ReadonlySet<string>, leftM2: number): readonly CurveRegion[] {
    const rivals = this.taken.filter(t => !known.has(t.id)).map(t => t.region)
    return subtractCurves(regions, rivals, leftM2).regions
  }
}

function leaveClaim(regions: readonly CurveRegion[], rivals: readonly CurveRegion[]) {
  const { regions: left, chordsKept } = subtractCurves(regions, rivals)
  return { shape: left.filter(r => curveArea([r]) > hairlineM * (ringLength(r.outer) / 2)), chordsKept }
}
