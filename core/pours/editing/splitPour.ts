/** One pour made two by a joint drawn across it. */
import type { Joint } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { EditResult } from '../../document/commands/editSite'
import { cutPart, findPour, missingPour, putPart, refuse, whyFixed } from './editPart'
import { anchorAt, jointGround, settleLine } from './jointGround'
import type { PourCaps } from './pourCaps'

/**
 * Draws a joint along `line` from edge to edge of the pour. The larger part keeps id, number, date and notes; the other
 * gets the next free number.
 */
export function splitPour(site: Site, pourId: Id, line: readonly [Pt, Pt], caps?: PourCaps): EditResult {
  const found = findPour(site, pourId)
  if (!found) return refuse(missingPour(pourId))
  const { accepted, slab, pour } = found
  const fixed = whyFixed(pour)
  if (fixed) return refuse(fixed)
  const ground = jointGround(slab, accepted)
  const before = cutPart(ground.regions, accepted)
  const face = before.faces.find(row => row.pourId === pourId)
  const misses = refuse({
    code: 'splitMisses',
    severity: 'stop',
    values: { number: pour.number },
    at: { entityId: pourId, point: line[0] },
  })
  if (!face) return misses
  const own = { ...ground, regions: [face.region], rings: [face.region.outer, ...face.region.holes], lines: [] }
  const settled = settleLine(own, line[0], line[1], null)
  if (!settled) return misses
  const joint: Joint = {
    id: `j${site.nextId}`,
    ends: [anchorAt(ground, settled[0], null), anchorAt(ground, settled[1], null)],
    locked: false,
    kind: 'construction',
  }
  const joints = [...accepted.joints, joint]
  if (cutPart(ground.regions, { ...accepted, joints }).faces.length <= before.faces.length) return misses
  return putPart(site, found, {
    joints,
    pours: accepted.pours,
    nextId: site.nextId + 1,
    newPours: true,
    made: [joint.id],
    caps,
  })
}
