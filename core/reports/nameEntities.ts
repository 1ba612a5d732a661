/** Ids in a formula as the names people know: `net area − border b36` reads `net area − 12 in border`. */
import type { Site } from '../../shared/document/site'
import { openingNames } from '../document/openingNames'

/** Every id of the site that a formula may name, with what to call it. */
export function entityNames(site: Site): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  const add = (list: readonly { readonly id: string; readonly name?: string | undefined }[], kind: string) => {
    for (const [i, { id, name }] of list.entries()) names.set(id, name ?? `${kind} ${i + 1}`)
  }
  for (const slab of site.slabs) {
    names.set(slab.id, slab.name)
    add(slab.borders, 'border')
    add(slab.bands, 'band')
    add(slab.insets, 'inset')
    for (const [id, { words }] of openingNames(slab.openings)) names.set(id, words)
  }
  add(
    site.accepted.flatMap(({ joints }) => joints.map(({ id }) => ({ id }))),
    'joint',
  )
  return names
}

const kinds = /\b(?:border|band|inset|opening|planter|pool|drain|column|other) (?=[a-z]+\d)/g

export const nameEntities = (text: string, names: ReadonlyMap<string, string>): string =>
  text
    .replace(kinds, '')
    .replace(/\b[a-z]+[1-9]\d*\b/g, id => names.get(id) ?? id)
    .replace(/\bproposed-joint-(\d+)\b/g, 'joint $1')
