import type { Id } from '../../shared/document/primitives'
import type { Opening } from '../../shared/document/slab'
import { type KindName, kindNames } from './kindNames'

/** What the openings of a slab are called. */
export const openingNames = (
  openings: readonly { readonly id: Id; readonly kind: Opening['kind']; readonly name?: string | undefined }[],
): ReadonlyMap<Id, KindName> =>
  kindNames(openings.map(({ id, kind, name }) => ({ id, name, word: kind === 'other' ? 'opening' : kind })))
