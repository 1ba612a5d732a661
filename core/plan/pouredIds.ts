import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

/** Pours of the site that are poured. */
export const pouredIds = ({ accepted }: Pick<Site, 'accepted'>): ReadonlySet<Id> =>
  new Set(accepted.flatMap(({ pours }) => pours.flatMap(({ id, poured }) => (poured ? [id] : []))))
