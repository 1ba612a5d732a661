import type { Command, EditResult } from '../../core/document/commands/editSite'
import { invariants } from '../../core/document/invariants'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import type { Site } from '../../shared/document/site'

export const faultsOf = (site: Site) => invariants(site)

/** The edited site; throws where the command refuses. */
export const done = (result: EditResult): Site => {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

export const refusal = (result: EditResult): string => {
  if (result.ok) throw new Error('the command was not refused')
  return result.error.map(({ code }) => code).join(' ')
}

/** Command after command. */
export const chain = (site: Site, ...commands: readonly Command[]): Site =>
  commands.reduce((at, command) => done(command(at)), site)

export const outlineArea = (site: Site, slab = 0): number => ringArea(resolvePath(site.slabs[slab]!.outline, 's').ring)
