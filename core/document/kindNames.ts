import type { Id } from '../../shared/document/primitives'
import { capitalize } from '../units/capitalize'

export interface KindName {
  /** At the head of a line: `Planter 2`. */
  readonly title: string
  /** Among other words: `planter 2`. */
  readonly words: string
  /** The same where there is but one: `the planter`. */
  readonly the: string
}

/**
 * What parts are called: by their names, else by their kinds, which are counted in the order of the list where several
 * of one kind have no name. `word`: the kind in small letters.
 */
export function kindNames(
  parts: readonly { readonly id: Id; readonly word: string; readonly name?: string | undefined }[],
): ReadonlyMap<Id, KindName> {
  const unnamed = (word: string) => parts.filter(each => each.word === word && each.name === undefined)
  return new Map(
    parts.map(({ id, word, name }) => {
      if (name !== undefined) return [id, { title: name, words: name, the: name }]
      const alike = unnamed(word)
      const words = alike.length === 1 ? word : `${word} ${alike.findIndex(each => each.id === id) + 1}`
      return [id, { title: capitalize(words), words, the: alike.length === 1 ? `the ${word}` : words }]
    }),
  )
}

/** The same of parts that are all of one kind. */
export const namesOfKind = (
  parts: readonly { readonly id: Id; readonly name?: string | undefined }[],
  word: string,
): ReadonlyMap<Id, KindName> => kindNames(parts.map(({ id, name }) => ({ id, name, word })))
