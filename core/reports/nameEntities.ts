/** Ids in a formula as the names people know: `net area − border b36` reads `net area − 12 in border`. */
import type { Site } from '../../shared/document/site'
import { finishPartNames } from '../document/finishPartNames'
import { openingNames } from '../document/openingNames'

/** Every id of the site that a formula may name, with what to call it. */
export function entityNames(site: Site): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  for (const slab of site.slabs) {
    names.set(slab.id, slab.name)
    for (const named of [finishPartNames(slab), openingNames(slab.openings)])
      for (const [id, { words }] of named) names.set(id, words)
  }
  const joints = site.accepted.flatMap(part => part.joints)
  for (const [i, { id }] of joints.entries()) names.set(id, `joint ${i + 1}`)
  return names
}

const kinds = /\b(?:border|band|inset|opening|planter|pool|drain|column|other) (?=[a-z]+\d)/g

export const nameEntities = (text: string, names: ReadonlyMap<string, string>): string =>
  text
    .replace(kinds, '')
    .replace(/\b[a-z]+[1-9]\d*\b/g, id => names.get(id) ?? id)
    .replace(/\bproposed-joint-(\d+)\b/g, 'joint $1')
