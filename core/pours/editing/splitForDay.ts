/** A pour split into as many as its own day asks for. */
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { EditResult } from '../../document/commands/editSite'
import { resolveSlab } from '../../geometry/resolveSlab'
import { proposePours } from '../proposePours'
import { resolveWishes } from '../wishes/resolveWishes'
import { acceptPours } from './acceptPours'
import { cutPart, findPour, missingPour, refuse, whyFixed } from './editPart'
import { jointGround } from './jointGround'
import type { PourCaps } from './pourCaps'

/**
 * Splits a pour into pours of at most `dayM2` (m², > 0), what the crew takes on its day from its first truck on. The
 * largest keeps id, number, day and first truck; the others get the next free numbers and no day. All other pours and
 * joints stay. Fails where the pour is poured or locked, and where no split is found.
 */
export function splitForDay(site: Site, pourId: Id, dayM2: number, caps?: PourCaps): EditResult {
  const found = findPour(site, pourId)
  if (!found) return refuse(missingPour(pourId))
  const { accepted, slab, pour } = found
  const fixed = whyFixed(pour)
  if (fixed) return refuse(fixed)
  const { slabId, part } = accepted
  const face = cutPart(jointGround(slab, accepted).regions, accepted).faces.find(row => row.pourId === pourId)
  if (!face)
    return refuse({ code: 'pourLost', severity: 'stop', values: { number: pour.number }, at: { entityId: pourId } })
  const wishes = resolveWishes(site, slab, resolveSlab(slab), part, accepted)
  const split = proposePours({ slabId, part, region: face.region, capM2: dayM2, ...(wishes ? { wishes } : {}) })
  const stop = split.findings.find(({ severity }) => severity === 'stop')
  if (stop) return refuse({ ...stop, at: { entityId: pourId, point: pour.seed } })
  const largest = split.pours.reduce((most, own) => (own.areaM2 > most.areaM2 + 1e-9 ? own : most))
  return acceptPours(
    site,
    {
      slabId,
      part,
      pours: split.pours.map(own => (own === largest ? { ...own, goesOnAs: pourId } : own)),
      joints: split.joints,
      keptJoints: accepted.joints,
      keptPourIds: accepted.pours.flatMap(({ id }) => (id === pourId ? [] : [id])),
    },
    caps,
  )
}
