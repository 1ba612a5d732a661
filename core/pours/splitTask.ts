/** What one split stands on: the faces that required joints leave, the pours for each, and what each is searched by. */
import { limits } from '../../shared/limits'
import type { Finding } from '../../shared/problem'
import type { CostContext } from './pourCost'
import type { SplitInput } from './proposal'
import type { CutRegion } from './region/cutRegion'
import { minimumBox } from './region/minimumBox'
import { type Direction, poursNeeded } from './search/searchContext'
import type { SearchGround } from './search/searchPlan'
import { resolveWeights } from './weights'
import { type FixedFaces, fixedFaces } from './wishes/fixedFaces'
import { forbiddenGround } from './wishes/forbiddenGround'
import { keptWhole } from './wishes/keptWhole'
import { sharePours } from './wishes/planFaces'
import { refusedIn } from './wishes/refusedPours'
import { tellForbiddenRequired, tellSmallFaces } from './wishes/tellUnmet'
import { hidingDirections, wishGround } from './wishes/wishCost'

/** A pour smaller than 4 ft × 4 ft takes no mat with a finisher beside it (m²): common practice, no source. */
export const smallestPourM2 = 1.2192 * 1.2192

/** What a face is searched by, but for what lies beside it. */
export type FaceGround = Omit<SearchGround, 'beside' | 'rest'>

export interface SplitTask {
  readonly input: SplitInput
  readonly slab: CutRegion
  /** Fewest pours the area needs. */
  readonly lowerBound: number
  /** Pours asked for, no fewer than that. */
  readonly asked: number
  readonly fixed: FixedFaces
  /** Pours for each face, and in all. */
  readonly counts: readonly number[]
  readonly pours: number
  readonly leastWidthM: number
  /** Largest area of each face that no joint may part, m²; 0 where all of it can be split small enough. */
  readonly keptM2: readonly number[]
  readonly base: Omit<CostContext, 'meanM2'> & Pick<FaceGround, 'wished' | 'along' | 'forbidden'>
  /** The wishes a face is searched by, the strictest first; none where joints are forbidden on too much of it. */
  groundsOf(face: number): readonly FaceGround[]
  /** What is to be told before anything is searched. */
  readonly findings: readonly Finding[]
}

function wishedDirections(input: SplitInput, slab: CutRegion): Direction[] {
  const at = (deg: number): Direction => ({ ux: Math.cos((deg * Math.PI) / 180), uy: Math.sin((deg * Math.PI) / 180) })
  if (input.directions === 'any') {
    const box = minimumBox(slab.rings[0]!)
    const base = input.patternDeg ?? (Math.atan2(box.uy, box.ux) * 180) / Math.PI
    return Array.from({ length: 12 }, (_, i) => at(base + 15 * i))
  }
  const degs = [...(input.patternDeg === undefined ? [] : [input.patternDeg]), ...(input.wishes?.directionsDeg ?? [])]
  return degs.flatMap(deg => [at(deg), at(deg + 90)])
}

/** What a split stands on; the finding that refuses it where a pour would be too small, or the pours too many. */
export function splitTask(input: SplitInput, slab: CutRegion): SplitTask | Finding {
  const { capM2, slabId, wishes = {} } = input
  const lowerBound = poursNeeded(slab.areaM2, capM2)
  const tooSmall: Finding = {
    code: 'capacityTooSmall',
    severity: 'stop',
    values: { capM2, leastM2: Math.max(smallestPourM2, slab.areaM2 / limits.pours) },
    field: '/capacity/capM2',
    at: { entityId: slabId },
  }
  if (slab.areaM2 > capM2 && (capM2 < smallestPourM2 || lowerBound > limits.pours)) return tooSmall
  const asked = Math.max(lowerBound, input.pourCount ?? 0)
  const fixed = fixedFaces(slab, wishes.required ?? [])
  const { faces } = fixed
  const counts = sharePours(faces, capM2, asked)
  const pours = counts.reduce((sum, count) => sum + count, 0)
  if (pours > limits.pours) return tooSmall
  const weights = resolveWeights(input.weights)
  const slabWidthM = (2 * slab.areaM2) / slab.perimeterM
  const leastWidthM = wishes.leastWidthM ?? 0
  const costly = wishGround(wishes)
  const base = {
    weights,
    capM2,
    slabWidthM,
    grid: input.grid ?? [],
    wishes: costly,
    loads: input.loads ?? null,
    site: null,
    wished: wishedDirections(input, slab),
    along: hidingDirections(costly),
    forbidden: forbiddenGround(wishes),
  }
  const forbiddenAreas = wishes.forbiddenAreas ?? []
  const keptM2 = faces.map(face => (face.areaM2 > capM2 ? keptWhole(face, forbiddenAreas, capM2) : 0))
  const groundsOf = (face: number): FaceGround[] => {
    if (keptM2[face]! > 0) return []
    const free = { ...base, refuses: refusedIn(faces[face]!, 0) }
    return leastWidthM > 0 ? [{ ...base, refuses: refusedIn(faces[face]!, leastWidthM) }, free] : [free]
  }
  const tooFew: Finding[] =
    input.pourCount !== undefined && input.pourCount < lowerBound
      ? [
          {
            code: 'tooFewPours',
            severity: 'check',
            values: { asked: input.pourCount, needed: lowerBound, capM2 },
            at: { entityId: slabId },
          },
        ]
      : []
  const findings = [
    ...tooFew,
    ...fixed.findings,
    ...tellForbiddenRequired(fixed, wishes),
    ...tellSmallFaces(fixed, slabWidthM, smallestPourM2, weights),
  ]
  return { input, slab, lowerBound, asked, fixed, counts, pours, leastWidthM, keptM2, base, groundsOf, findings }
}
