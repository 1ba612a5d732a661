/** Findings on wishes that could not be met, or only at a price. */
import type { Pt } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'
import type { CutRegion } from '../region/cutRegion'
import { insidePoint } from '../region/insidePoint'
import { minimumBox } from '../region/minimumBox'
import type { Weights } from '../weights'
import { type FixedFaces, firstFixed } from './fixedFaces'
import { forbiddenGround } from './forbiddenGround'
import type { JointWishes } from './jointWishes'

/** Wishes left out one by one to find the one that stands in the way. */
const mostTried = 8

interface OneForbidden {
  readonly id: string
  readonly at: Pt
  readonly only: JointWishes
  readonly without: JointWishes
}

/** Each forbidding wish by itself, and all without it. */
function eachForbidden({ forbiddenLines = [], forbiddenAreas = [] }: JointWishes): OneForbidden[] {
  return [
    ...forbiddenAreas.flatMap((area): OneForbidden[] => {
      const first = area.ring[0]
      if (!first) return []
      const others = forbiddenAreas.filter(other => other !== area)
      return [
        {
          ...{ id: area.id, at: first.from, only: { forbiddenAreas: [area] } },
          without: { forbiddenLines, forbiddenAreas: others },
        },
      ]
    }),
    ...forbiddenLines.map((line): OneForbidden => {
      const others = forbiddenLines.filter(other => other !== line)
      return {
        ...{ id: line.id, at: line.line[0]!, only: { forbiddenLines: [line] } },
        without: { forbiddenLines: others, forbiddenAreas },
      }
    }),
  ]
}

/** Required joints that lie where no joint may. */
export function tellForbiddenRequired({ joints }: FixedFaces, wishes: JointWishes): Finding[] {
  const all = forbiddenGround(wishes)
  if (!all) return []
  const work = { done: 0 }
  return joints.flatMap(({ wishId, ax, ay, bx, by }): Finding[] => {
    if (!all.forbids(ax, ay, bx, by, work)) return []
    const other = eachForbidden(wishes).find(({ only }) => forbiddenGround(only)?.forbids(ax, ay, bx, by, work))
    return [
      {
        code: 'requiredForbidden',
        severity: 'check',
        values: { wishId: other?.id ?? '' },
        at: { entityId: wishId, point: [(ax + bx) / 2, (ay + by) / 2] },
      },
    ]
  })
}

/** Faces of required joints that no mat fits. */
export function tellSmallFaces(fixed: FixedFaces, slabWidthM: number, smallestM2: number, w: Weights): Finding[] {
  if (fixed.joints.length === 0) return []
  return fixed.faces.flatMap((face): Finding[] => {
    const { shortM } = minimumBox(face.rings[0]!)
    const isNarrow = shortM < w.narrowM && shortM < slabWidthM - 0.003
    if (!isNarrow && face.areaM2 >= smallestM2) return []
    const side = face.rings.flatMap(({ sides }) => sides).find(({ joint }) => joint >= firstFixed)
    const wish = fixed.joints[(side?.joint ?? firstFixed) - firstFixed]
    return [
      {
        code: 'requiredSmall',
        severity: 'check',
        values: { areaM2: face.areaM2, widthM: shortM, leastM: w.narrowM },
        at: { entityId: wish?.wishId ?? '', point: insidePoint(face) },
      },
    ]
  })
}

/**
 * A face that could not be split off forbidden ground: with the one wish that stands in the way, if it is one. `keptM2`
 * (m²) is what the wishes are proven to keep in one pour, 0 where the search only found nothing.
 */
export function tellNoJointAllowed(
  slabId: string,
  face: CutRegion,
  capM2: number,
  keptM2: number,
  wishes: JointWishes,
  canSplit: (wishes: JointWishes) => boolean,
): Finding {
  const guilty = eachForbidden(wishes)
    .slice(0, mostTried)
    .find(({ without }) => canSplit(without))
  return {
    code: 'noJointAllowed',
    severity: 'stop',
    values: { areaM2: face.areaM2, capM2, keptM2, wishId: guilty?.id ?? '' },
    at: { entityId: guilty?.id ?? slabId, point: guilty?.at ?? insidePoint(face) },
  }
}

/** The narrowest of the pours, when it is narrower than wished. */
export function tellNarrow(slabId: string, pours: readonly CutRegion[], leastM: number): Finding[] {
  let narrowest: CutRegion | null = null
  let widthM = Number.POSITIVE_INFINITY
  for (const pour of pours) {
    const { shortM } = minimumBox(pour.rings[0]!)
    if (shortM >= widthM) continue
    widthM = shortM
    narrowest = pour
  }
  if (!narrowest || widthM >= leastM - 1e-6) return []
  return [
    {
      code: 'narrowerThanWished',
      severity: 'check',
      values: { leastM, widthM },
      at: { entityId: slabId, point: insidePoint(narrowest) },
    },
  ]
}
