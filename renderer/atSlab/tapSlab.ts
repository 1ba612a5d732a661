/** A tap at the slab: into the log by command, kept at once, and timed. */
import type { Command } from '../../core/document/commands/editSite'
import type { LogTap } from '../../shared/document/day'
import { applyEdit } from '../app/applyEdit'
import type { Session } from '../app/session'

/** What a tap says besides when and by whom. */
export type Happened = Omit<LogTap, 'id' | 'atUtc' | 'source'>

const tapMark = 'slab-tap'
/** From the tap to the new plan on the page. */
export const tapMeasure = 'slab-replanned'

export function tapSlab(session: Session, name: string, command: Command): boolean {
  performance.clearMarks(tapMark)
  performance.mark(tapMark)
  const isDone = applyEdit(session, name, command)
  // A tablet that is dropped or runs empty loses nothing that was tapped.
  if (isDone) void session.keeper.flush()
  return isDone
}

/** Called when the plan of the last tap is on the page. */
export function measureTap(): void {
  if (performance.getEntriesByName(tapMark, 'mark').length === 0) return
  performance.measure(tapMeasure, tapMark)
  performance.clearMarks(tapMark)
}
