/** A band laid over a joint, so that nobody sees it. */
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Placed, Slab } from '../../../shared/document/slab'
import { addWish } from '../../document/commands/addWish'
import { type Command, missing } from '../../document/commands/editSite'
import { addBand } from '../../document/commands/slabParts'
import { anchorAt, jointGround } from '../editing/jointGround'

export interface JointBand {
  readonly slabId: Id
  /** Ends of the joint, accepted or proposed. */
  readonly from: Pt
  readonly to: Pt
  /** > 0 */
  readonly widthM: number
  readonly finishId: Id
  readonly placed?: Placed
}

/** Ends of two lines this close are the same (m). */
const sameM = 1e-3

const isNear = (a: Pt, b: Pt): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < sameM

const runsAlong = (first: Pt, last: Pt, from: Pt, to: Pt): boolean =>
  (isNear(first, from) && isNear(last, to)) || (isNear(first, to) && isNear(last, from))

/** True where a band already runs from one end to the other. */
export const hasBandAlong = ({ bands }: Pick<Slab, 'bands'>, from: Pt, to: Pt): boolean =>
  bands.some(({ line }) => {
    const [first, last] = [line?.vertices[0], line?.vertices.at(-1)]
    return first !== undefined && last !== undefined && runsAlong(first.at, last.at, from, to)
  })

/**
 * Puts a band along the joint and requires the joint there, so that a new plan keeps it under the band. The band and,
 * where none was required yet, the required joint are made, in this order.
 */
export const bandOnJoint =
  ({ slabId, from, to, widthM, finishId, placed = 'withField' }: JointBand): Command =>
  site => {
    const slab = site.slabs.find(({ id }) => id === slabId)
    if (!slab) return { ok: false, error: [missing('slab', slabId)] }
    const ground = jointGround(slab, { slabId, part: 'whole', joints: [], pours: [] })
    const laid = addBand(slabId, { line: { corners: [{ at: from }, { at: to }] }, widthM, finishId, placed })(site)
    const isRequired = site.wishes.some(
      wish =>
        wish.kind === 'required' && wish.slabId === slabId && runsAlong(wish.line[0].last, wish.line[1].last, from, to),
    )
    if (!laid.ok || isRequired) return laid
    const required = addWish(slabId, {
      kind: 'required',
      line: [anchorAt(ground, from, null), anchorAt(ground, to, null)],
    })(laid.value)
    if (!required.ok) return required
    return {
      ...required,
      findings: [...laid.findings, ...required.findings],
      made: [...laid.made, ...required.made],
    }
  }
