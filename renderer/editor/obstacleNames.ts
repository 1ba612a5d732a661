import { type KindName, kindNames } from '../../core/document/kindNames'
import type { Id } from '../../shared/document/primitives'
import type { Obstacle } from '../../shared/document/slab'
import { obstacleKinds } from './actions/actions'

/** What the obstacles of a slab are called. */
export const obstacleNames = (obstacles: readonly Obstacle[]): ReadonlyMap<Id, KindName> =>
  kindNames(
    obstacles.map(({ id, kind, name }) => ({
      ...{ id, name },
      word: kind === 'other' ? 'obstacle' : obstacleKinds[kind].toLowerCase(),
    })),
  )
