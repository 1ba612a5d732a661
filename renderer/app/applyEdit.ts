/** An edit whose words stand as the notice of the stage. */
import type { Command, EditResult } from '../../core/document/commands/editSite'
import { capsOf } from '../../core/plan/capsOf'
import type { PourCaps } from '../../core/pours/editing/pourCaps'
import type { Site } from '../../shared/document/site'
import { commitEdit } from './commitEdit'
import type { Session } from './session'

/** `caps` = the largest pours by the last plan. */
export type EditOf = (site: Site, caps: PourCaps) => EditResult

/** True where it was done; `by` as of `commitEdit`. */
export function applyEdit(
  { site, view, plan }: Pick<Session, 'site' | 'view' | 'plan'>,
  name: string,
  edit: EditOf,
  by?: 'push' | 'apply',
): boolean {
  if (!site.getState().history) return false
  const command: Command = document => edit(document, capsOf(document, plan.getState().parts.capacities ?? []))
  const { made, words } = commitEdit(site, name, command, by)
  view.setState({ notice: words || null })
  return made !== null
}

/** The same for a box that tells by itself why it was refused: null where it was done, else the words. */
export function takeEdit(session: Pick<Session, 'site' | 'view' | 'plan'>, name: string, edit: EditOf): string | null {
  if (applyEdit(session, name, edit)) return null
  const { notice } = session.view.getState()
  session.view.setState({ notice: null })
  return notice
}
