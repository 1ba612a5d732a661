import type { Id } from '../../shared/document/primitives'
import { type KindName, namesOfKind } from './kindNames'

interface Part {
  readonly id: Id
  readonly name?: string | undefined
}

/** What the borders, bands and insets of a slab are called. */
export const finishPartNames = ({
  borders,
  bands,
  insets,
}: Readonly<Record<'borders' | 'bands' | 'insets', readonly Part[]>>): ReadonlyMap<Id, KindName> =>
  new Map([...namesOfKind(borders, 'border'), ...namesOfKind(bands, 'band'), ...namesOfKind(insets, 'inset')])
