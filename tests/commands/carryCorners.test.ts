import fc from 'fast-check'
import { freeze } from 'immer'
import { describe, expect, it } from 'vitest'
import { editSite } from '../../core/document/commands/editSite'
import { moveEntities } from '../../core/document/commands/moveEntities'
import { mirrorSelection, moveSelection, turnSelection } from '../../core/document/commands/moveSelection'
import { mirrorAcross, shiftBy, turnAbout } from '../../core/document/commands/rigidMotion'
import { sitePaths } from '../../core/document/sitePaths'
import { driveway } from '../../samples/sites/driveway'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { Id, Pt } from '../../shared/document/primitives'
import { refusal } from './edit'

const sites = [freeze(lPatioAccepted(), true), freeze(driveway(), true)]
const at = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 })).map(([x, y]): Pt => [x, y])

/** A command on its own, and the same motion in the hands of the mover of whole entities, on a draft. */
const motions = fc.oneof(
  at
    .filter(([x, y]) => x !== 0 || y !== 0)
    .map(by => ({ command: (ids: Id[]) => moveSelection(ids, by), motion: shiftBy(by), done: 'moved' })),
  fc.tuple(at, fc.integer({ min: 1, max: 359 })).map(([about, deg]) => ({
    ...{ command: (ids: Id[]) => turnSelection(ids, about, deg), motion: turnAbout(about, deg) },
    done: 'turned',
  })),
  at.map(a => ({
    ...{ command: (ids: Id[]) => mirrorSelection(ids, a, [a[0] + 1, a[1] + 2]) },
    ...{ motion: mirrorAcross(a, [a[0] + 1, a[1] + 2]), done: 'mirrored' },
  })),
)

describe('corners carried alone', () => {
  it('come out as on a draft, frozen, and share every path that is left alone', () => {
    let moved = 0
    fc.assert(
      fc.property(
        fc.nat(1),
        fc.array(fc.nat(), { minLength: 1, maxLength: 4 }),
        motions,
        (which, picks, { command, motion, done }) => {
          const site = sites[which]!
          const known = sitePaths(site).flatMap(({ path }) => [...path.vertices, ...path.edges].map(({ id }) => id))
          const ids = picks.map(pick => known[pick % known.length]!)
          const alone = command(ids)(site)
          const onDraft = editSite(site, (draft, edit) => {
            edit.onlyMoved = true
            return moveEntities(draft, edit, ids, motion, done)
          })
          expect(alone).toEqual(onDraft)
          if (!alone.ok || !onDraft.ok) return
          moved += 1
          const [before, after, drafted] = [site, alone.value, onDraft.value].map(sitePaths)
          after!.forEach(({ path }, i) => {
            expect(path === before![i]!.path).toBe(drafted![i]!.path === before![i]!.path)
            expect([path, path.vertices, ...path.vertices].every(Object.isFrozen)).toBe(true)
          })
          expect(Object.isFrozen(alone.value.slabs)).toBe(true)
          expect(Object.isFrozen(alone.value)).toBe(Object.isFrozen(onDraft.value))
        },
      ),
      { seed: 9, numRuns: 300 },
    )
    expect(moved).toBeGreaterThan(150)
  })

  it('says that nothing is chosen where no corner is', () => {
    expect(refusal(moveSelection(['v999999'], [1, 0])(sites[0]!))).toBe('nothingChosen')
    expect(refusal(moveSelection([], [1, 0])(sites[0]!))).toBe('nothingChosen')
  })
})
