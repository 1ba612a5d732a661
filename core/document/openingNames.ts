import type { Id } from '../../shared/document/primitives'
import type { Opening } from '../../shared/document/slab'
import { capitalize } from '../units/capitalize'

export interface OpeningName {
  /** At the head of a line: `Planter 2`. */
  readonly title: string
  /** Among other words: `planter 2`. */
  readonly words: string
  /** The same where there is but one: `the planter`. */
  readonly the: string
}

/**
 * What the openings of a slab are called: by their names, else by their kinds, which are counted in the order of the
 * slab where several of one kind have no name.
 */
export function openingNames(
  openings: readonly { readonly id: Id; readonly kind: Opening['kind']; readonly name?: string | undefined }[],
): ReadonlyMap<Id, OpeningName> {
  const unnamed = (kind: Opening['kind']) => openings.filter(each => each.kind === kind && each.name === undefined)
  return new Map(
    openings.map(({ id, kind, name }) => {
      if (name !== undefined) return [id, { title: name, words: name, the: name }]
      const word = kind === 'other' ? 'opening' : kind
      const alike = unnamed(kind)
      const words = alike.length === 1 ? word : `${word} ${alike.findIndex(each => each.id === id) + 1}`
      return [id, { title: capitalize(words), words, the: alike.length === 1 ? `the ${word}` : words }]
    }),
  )
}
