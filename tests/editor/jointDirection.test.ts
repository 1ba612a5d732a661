import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changeDirection } from '../../core/document/commands/changeEntity'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { createMemo } from '../../core/plan/memo'
import { resolveWishes } from '../../core/pours/wishes/resolveWishes'
import { foldDeg } from '../../core/pours/wishes/wishedDirection'
import { directionWish } from '../../renderer/editor/actions/actions'
import { shownDirection } from '../../renderer/editor/layers/drawParts'
import { entityGeometry } from '../../renderer/editor/layers/planGeometry'
import { pickAt } from '../../renderer/editor/pickAt'
import { directionWords } from '../../renderer/outline/outlineOf'
import { deriveLive } from '../../renderer/store/livePlan'
import { lPatio } from '../../samples/sites/lPatio'
import type { Site } from '../../shared/document/site'
import { TestEditor } from './testEditor'

/** The patio with its stones turned 30° to the left. */
const turned = (patternDeg = 30): Site => {
  const site = lPatio()
  return {
    ...site,
    finishes: site.finishes.map(each => (each.id === site.slabs[0]!.finishId ? { ...each, patternDeg } : each)),
  }
}

const wishOf = (site: Site) => {
  const [wish] = site.wishes
  if (wish?.kind !== 'direction') throw new Error('no direction')
  return wish
}

/** What the search is given, counter-clockwise from drawing-right. */
const searched = (site: Site): readonly number[] => {
  const [source] = site.slabs
  return resolveWishes(site, source!, resolveSlab(source!), 'whole', undefined)?.directionsDeg ?? []
}

describe('a direction for the joints', () => {
  it('is pointed out by two clicks and kept as it lies to the pattern; one step of undo takes it', () => {
    const before = turned()
    const editor = new TestEditor(before).choose('joint', { wish: 'direction' })
    editor.click([2, 2]).click([5, 5])
    expect(wishOf(editor.site)).toMatchObject({ slabId: before.slabs[0]!.id, deg: 15, relativeTo: 'pattern' })
    expect(searched(editor.site)).toEqual([45])
    expect(editor.selection).toEqual([wishOf(editor.site).id])
    editor.store.undo()
    expect(editor.site).toEqual(before)
  })

  it('is typed as length and direction after a first point, and as an angle alone', () => {
    const editor = new TestEditor(turned()).choose('joint', { wish: 'direction' })
    // The boxes of a first point are Right and Up; 60° is counted clockwise from the top of the plan.
    editor.type('4', '4').type('3', '60')
    expect(wishOf(editor.site).deg).toBe(0)
    const { command } = directionWish(editor.site.slabs[0]!, 200)
    const made = command(turned())
    if (!made.ok) throw new Error('refused')
    expect(wishOf(made.value).deg).toBe(20)
  })

  it('turns with the pattern, or stays as it lies on the plan', () => {
    const editor = new TestEditor(turned()).choose('joint', { wish: 'direction' })
    editor.click([2, 2]).click([5, 5])
    const { id } = wishOf(editor.site)
    const withPattern = { ...turned(75), wishes: editor.site.wishes, nextId: editor.site.nextId }
    expect(searched(withPattern)).toEqual([90])
    const fixed = changeDirection(id, { deg: 10, relativeTo: 'drawing' })(withPattern)
    if (!fixed.ok) throw new Error('refused')
    expect(searched(fixed.value)).toEqual([10])
  })

  it('is shown, picked and lit by one line, and is a row of words', () => {
    const editor = new TestEditor(turned()).choose('joint', { wish: 'direction' })
    editor.click([2, 2]).click([5, 5])
    const live = deriveLive(editor.site, '2026-07-21', createMemo())
    const wish = wishOf(editor.site)
    const [[ax, ay], [bx, by]] = shownDirection(live.site, live.slabs, wish)!
    expect((Math.atan2(by - ay, bx - ax) * 180) / Math.PI).toBeCloseTo(45, 9)
    expect(pickAt([ax + 0.3 * (bx - ax), ay + 0.3 * (by - ay)], { live, nearM: 0.05 })).toBe(wish.id)
    expect(entityGeometry(live, {}, wish.id).edges).toMatchObject([{ from: [ax, ay], to: [bx, by] }])
    expect(directionWords(wish)).toBe('15° left of the pattern')
    expect(directionWords({ deg: -90, relativeTo: 'pattern' })).toBe('across the pattern')
    expect(directionWords({ deg: 180, relativeTo: 'drawing' })).toBe('level on the plan')
  })

  it('is the same line however it was pointed out, and reads back from the file', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (deg, patternDeg) => {
          expect(foldDeg(deg)).toBeGreaterThan(-90)
          expect(foldDeg(deg)).toBeLessThanOrEqual(90)
          expect(Math.abs(Math.sin(((foldDeg(deg) - deg) * Math.PI) / 180))).toBeLessThan(1e-9)
          const angle = (deg * Math.PI) / 180
          const editor = new TestEditor(turned(patternDeg)).choose('joint', { wish: 'direction' })
          editor.pointerMove([4, 3], true).pointerDown([4, 3]).pointerUp([4, 3])
          const end = [4 + 2 * Math.cos(angle), 3 + 2 * Math.sin(angle)] as const
          editor.pointerMove(end, true)
          if (editor.state.aim) {
            editor.pointerDown(end).pointerUp(end)
            const read = readSite(serializeSite(editor.site))
            expect(read.ok && read.value.wishes).toEqual(editor.site.wishes)
          }
        },
      ),
      { seed: 1, numRuns: 60 },
    )
  })
})
