import type { Id } from '../../../shared/document/primitives'
import { type Command, editSite, missing } from './editSite'
import type { DimensionChange } from './setDimension'

/**
 * Makes the straight run of a wall or fence that starts at point `index` of its line as long as typed, `lengthM` > 0:
 * it keeps its direction, and what lies beyond the end that moves goes along.
 */
export const setWallLength =
  (wallId: Id, index: number, lengthM: number, moves: DimensionChange['moves']): Command =>
  site =>
    editSite(site, (draft, edit) => {
      edit.onlyMoved = true
      const wall = draft.casters.find(({ id }) => id === wallId)
      if (wall?.kind !== 'wall') return missing('shade caster', wallId)
      const [from, to] = [wall.line[index], wall.line[index + 1]]
      const nowM = from && to ? Math.hypot(to[0] - from[0], to[1] - from[1]) : 0
      if (!from || !to || nowM === 0 || !(lengthM > 0 && Number.isFinite(lengthM)))
        return { code: 'badMeasure', severity: 'stop', values: { foundM: lengthM, what: 'length of a fence' } }
      const grow = lengthM / nowM - 1
      const share = moves === 'both' ? 0.5 : 1
      const [dx, dy] = [(to[0] - from[0]) * grow * share, (to[1] - from[1]) * grow * share]
      wall.line = wall.line.map(([x, y], i) => {
        if (i > index) return moves === 'start' ? [x, y] : [x + dx, y + dy]
        return moves === 'end' ? [x, y] : [x - dx, y - dy]
      })
      return undefined
    })
