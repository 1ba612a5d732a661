import type { Id, Pt } from '../../../shared/document/primitives'
import { carryCorners, isCorner } from './carryCorners'
import { type Command, editSite, nothingChosen, takeMoved } from './editSite'
import { moveEntities } from './moveEntities'
import { movePatterns } from './movePatterns'
import { mirrorAcross, type RigidMotion, shiftBy, turnAbout } from './rigidMotion'

const carry =
  (ids: readonly Id[], motion: RigidMotion, done: string): Command =>
  site => {
    if (ids.every(isCorner)) {
      const carried = carryCorners(site, ids, motion)
      return carried === site ? { ok: false, error: [nothingChosen(done)] } : takeMoved(site, carried)
    }
    return editSite(site, (draft, edit) => {
      edit.onlyMoved = true
      const refusal = moveEntities(draft, edit, ids, motion, done)
      if (refusal === undefined) movePatterns(draft, edit, motion)
      return refusal
    })
  }

export const moveSelection = (ids: readonly Id[], by: Pt): Command =>
  by[0] === 0 && by[1] === 0
    ? site => ({ ok: true, value: site, findings: [], made: [] })
    : carry(ids, shiftBy(by), 'moved')

export const turnSelection = (ids: readonly Id[], about: Pt, turnDeg: number): Command =>
  carry(ids, turnAbout(about, turnDeg), 'turned')

/** Across the line through `a` and `b`. Poured slabs are refused: what was built has its hand. */
export const mirrorSelection = (ids: readonly Id[], a: Pt, b: Pt): Command => {
  if (!(Math.hypot(b[0] - a[0], b[1] - a[1]) > 0))
    return () => ({
      ok: false,
      error: [{ code: 'badMeasure', severity: 'stop', values: { foundM: 0, what: 'length of a mirror line' } }],
    })
  return carry(ids, mirrorAcross(a, b), 'mirrored')
}

const steps = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] } as const

/** One step of `stepM` in the drawing. */
export const nudge = (ids: readonly Id[], direction: keyof typeof steps, stepM: number): Command => {
  const [x, y] = steps[direction]
  return moveSelection(ids, [x * stepM, y * stepM])
}
