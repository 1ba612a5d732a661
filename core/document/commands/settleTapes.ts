/** After an edit: tape dimensions go along with the corners and edges they hold on to. */
import type { Id } from '../../../shared/document/primitives'
import type { TapeDimension, TapeEnd } from '../../../shared/document/shown'
import type { Site } from '../../../shared/document/site'
import { endAt, placeOfEnd } from '../tapeEnds'
import type { Edit } from './editSite'

/** What became of an edge or a corner, through all the cuts and merges of one edit. */
const followed = (id: Id, edit: Edit): readonly Id[] => {
  const next = edit.successors.get(id)
  return next === undefined ? [id] : next.flatMap(each => (each === id ? [each] : followed(each, edit)))
}

function settleEnd(end: TapeEnd, tapeId: Id, after: Site, edit: Edit): TapeEnd {
  const { on, last } = end
  if (on.on === 'free') return end
  const id = on.on === 'edge' ? on.edgeId : on.vertexId
  const at = edit.successors.has(id) && on.on === 'edge' ? undefined : placeOfEnd(after, end)
  if (at !== undefined) return Math.hypot(at[0] - last[0], at[1] - last[1]) < 1e-12 ? end : { on, last: [at[0], at[1]] }
  const next = on.on === 'edge' ? endAt(after, last, followed(id, edit)) : endAt(after, last)
  if (next.on.on === 'free') edit.tell('anchorLost', 'check', tapeId, { anchor: id })
  return next
}

export function settleTapes(after: Site, edit: Edit): Site {
  if (!after.tapes || after.tapes.length === 0) return after
  const tapes = after.tapes.map((tape): TapeDimension => {
    const [a, b] = tape.ends
    const ends: TapeDimension['ends'] = [settleEnd(a, tape.id, after, edit), settleEnd(b, tape.id, after, edit)]
    return ends[0] === a && ends[1] === b ? tape : { ...tape, ends }
  })
  return tapes.some((tape, i) => tape !== after.tapes![i]) ? { ...after, tapes } : after
}
