/** Numbers, dates and locks of accepted pours and joints. */
import type { Joint, Pour } from '../../../shared/document/pours'
import type { Id, LocalTime } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { isCalendarDate } from '../../document/calendarDate'
import type { EditResult } from '../../document/commands/editSite'
import { cutPart, findJoint, findPour, missingJoint, missingPour, refuse } from './editPart'
import { anchorAt, type JointGround, jointGround } from './jointGround'

const done = (value: Site): EditResult => ({ ok: true, value, findings: [], made: [] })

const withPours = (site: Site, change: (pour: Pour) => Pour): Site => ({
  ...site,
  accepted: site.accepted.map(part => {
    const pours = part.pours.map(change)
    return pours.some((pour, i) => pour !== part.pours[i]) ? { ...part, pours } : part
  }),
})

const changePour = (site: Site, pourId: Id, change: (pour: Pour) => Pour): EditResult =>
  findPour(site, pourId)
    ? done(withPours(site, pour => (pour.id === pourId ? change(pour) : pour)))
    : refuse(missingPour(pourId))

/**
 * Locks or frees the shape or the time of a pour; what is not named stays. A locked shape locks the joints along it to
 * their lines, so that no edit of the slab carries them off; freeing it frees those that bound no other locked or
 * poured one.
 */
export function lockPour(site: Site, pourId: Id, lock: Partial<Pour['lock']>): EditResult {
  const found = findPour(site, pourId)
  if (!found) return refuse(missingPour(pourId))
  const changed = changePour(site, pourId, pour => ({ ...pour, lock: { ...pour.lock, ...lock } }))
  const { shape } = lock
  if (!changed.ok || shape === undefined || shape === found.pour.lock.shape) return changed
  const { accepted, slab } = found
  const ground = jointGround(slab, accepted)
  const rows = cutPart(ground.regions, accepted).joints
  const holds = new Set(accepted.pours.filter(each => each.lock.shape || each.poured).map(({ id }) => id))
  const isHeld = (jointId: Id): boolean =>
    rows.some(row => row.id === jointId && row.pourIds.some(id => id !== pourId && holds.has(id)))
  const joints = accepted.joints.map((joint): Joint => {
    const isAlong = rows.some(row => row.id === joint.id && row.pourIds.includes(pourId))
    if (!isAlong || joint.locked === shape || (!shape && isHeld(joint.id))) return joint
    return lockedAsItRuns(ground, joint, shape)
  })
  const value = {
    ...changed.value,
    accepted: changed.value.accepted.map(part =>
      part.slabId === accepted.slabId && part.part === accepted.part ? { ...part, joints } : part,
    ),
  }
  return { ...changed, value }
}

/** As it runs now, whatever its ends were fixed to before: neither locking nor freeing moves a joint. */
const lockedAsItRuns = (ground: JointGround, joint: Joint, locked: boolean): Joint => {
  const { from, to } = ground.lines.find(({ id }) => id === joint.id)!
  return { ...joint, locked, ends: [anchorAt(ground, from, joint.id), anchorAt(ground, to, joint.id)] }
}

/** Locks a joint to its line, or lets it follow what its ends lie on. */
export function lockJoint(site: Site, jointId: Id, locked: boolean): EditResult {
  const found = findJoint(site, jointId)
  if (!found) return refuse(missingJoint(jointId))
  if (found.joint.locked === locked) return done(site)
  const ground = jointGround(found.slab, found.accepted)
  const set = (joint: Joint): Joint => (joint.id === jointId ? lockedAsItRuns(ground, joint, locked) : joint)
  return done({
    ...site,
    accepted: site.accepted.map(part => (part === found.accepted ? { ...part, joints: part.joints.map(set) } : part)),
  })
}

/** Gives a pour a number of its own; refused when another pour of the site has it. */
export function renumberPour(site: Site, pourId: Id, number: string): EditResult {
  const wanted = number.trim()
  const other = site.accepted.flatMap(part => part.pours).find(pour => pour.number === wanted && pour.id !== pourId)
  if (wanted === '' || other)
    return refuse({
      code: 'numberTaken',
      severity: 'stop',
      values: { number: wanted },
      at: { entityId: other?.id ?? pourId },
    })
  return changePour(site, pourId, pour => ({ ...pour, number: wanted }))
}

/** Numbers all accepted pours 1, 2, 3 … in the given order of ids; those left out follow in document order. */
export function renumberAll(site: Site, order: readonly Id[]): EditResult {
  const all = site.accepted.flatMap(part => part.pours.map(({ id }) => id))
  const unknown = order.find(id => !all.includes(id))
  if (unknown !== undefined) return refuse(missingPour(unknown))
  const sequence = [...new Set([...order, ...all])]
  return done(withPours(site, pour => ({ ...pour, number: String(sequence.indexOf(pour.id) + 1) })))
}

export interface When {
  readonly date?: string | null
  readonly start?: LocalTime | null
  readonly order?: number | null
}

/** Sets what is given of date, start and order; null takes it away, so that the computed one holds again. */
export function redatePour(site: Site, pourId: Id, when: When): EditResult {
  const found = findPour(site, pourId)
  if (!found) return refuse(missingPour(pourId))
  const at = { entityId: pourId }
  if (found.pour.poured)
    return refuse({ code: 'pourIsPoured', severity: 'stop', values: { number: found.pour.number }, at })
  if (typeof when.date === 'string' && !isCalendarDate(when.date))
    return refuse({ code: 'badDate', severity: 'stop', values: { value: when.date }, at })
  return changePour(site, pourId, pour => {
    const { date, start, order, ...rest } = pour
    const pick = <K extends keyof When>(key: K, own: Pour[K]) => {
      const value = when[key] === undefined ? own : when[key]
      return value === undefined || value === null ? {} : { [key]: value }
    }
    return { ...rest, ...pick('order', order), ...pick('date', date), ...pick('start', start) }
  })
}
