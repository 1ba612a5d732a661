/** A command as one named step of undo; what it refuses or did besides its purpose is told in words. */

import type { EditResult } from '../../core/document/commands/editSite'
import { capsOf } from '../../core/plan/capsOf'
import type { PourCaps } from '../../core/pours/editing/pourCaps'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { currentDocument } from '../store/history'
import type { Session } from './session'

/** `caps` = the largest pours by the last plan. */
export type EditOf = (site: Site, caps: PourCaps) => EditResult

export const wordFindings = (site: Site, findings: readonly Finding[]): string =>
  findings
    .map(finding => {
      const { message, hint } = wordProblem(finding, printMeasures(site.units))
      return hint === undefined ? message : `${message} ${hint}`
    })
    .join(' ')

export function applyEdit(
  { site, view, plan }: Pick<Session, 'site' | 'view' | 'plan'>,
  name: string,
  edit: EditOf,
): boolean {
  const { history } = site.getState()
  if (!history) return false
  const document = currentDocument(history)
  const result = edit(document, capsOf(document, plan.getState().parts.capacities ?? []))
  if (result.ok) site.apply(name, () => result.value)
  view.setState({ notice: wordFindings(document, result.ok ? result.findings : result.error) || null })
  return result.ok
}
