import { describe, expect, it } from 'vitest'
import { tapeTie } from '../../core/geometry/field/tapeTie'
import { wordProblem } from '../../core/problems/wordProblem'
import { feetToMeters as ft, inchesToMeters as inch } from '../../core/units/convert'
import { printMeasures } from '../../core/units/printMeasures'
import { tieWords } from '../../renderer/slab/tape/tieWords'
import type { Pt } from '../../shared/document/primitives'

const print = printMeasures('ftin')
const [p, q, third]: readonly Pt[] = [
  [0, 0],
  [ft(24), 0],
  [ft(30), ft(10)],
]
/** The point (12, 16) ft is 20 ft from both ends of the base line (3-4-5), √(18² + 6²) ft from the third point. */
const tieOff = (offM: number, side: 'left' | 'right' = 'left') => {
  const tie = tapeTie(p!, q!, ft(20), ft(20), side, { from: third!, distanceM: ft(Math.hypot(18, 6)) + offM })
  if (!tie.ok) throw new Error(JSON.stringify(tie.error))
  return tie.value
}

describe('what is told of a tied point', () => {
  it('says how its check tape closes, and that one far off was misread', () => {
    expect(tieWords({ at: [0, 0] }, 3, print).words).toMatch(/^Point 3 is set\. A check tape/)
    expect(tieWords(tieOff(0), 4, print).words).toBe('Point 4 is set. The check tape agrees.')
    expect(tieWords(tieOff(inch(1 / 8)), 4, print).words).toBe('Point 4 is set. The check tape closes within ⅛″.')
    expect(tieWords(tieOff(-inch(1 / 2) + 1e-9), 4, print).words).toContain('closes within ½″')
    expect(tieWords(tieOff(inch(3)), 4, print)).toEqual({
      words:
        'Point 4 is set, but the check tape is 3″ longer than the two others make it. Take the point back and measure all three again.',
      fitsOtherSide: false,
    })
    expect(tieWords(tieOff(-inch(3)), 4, print).words).toContain('3″ shorter than')
  })

  it('says where the check tape fits the other side of the two known points', () => {
    const wrong = tieOff(0, 'right')
    const { words, fitsOtherSide } = tieWords(wrong, 3, print)
    expect(fitsOtherSide).toBe(true)
    expect(words).toMatch(/On the other side of the two points it would agree\.$/)
    expect(wrong.otherSide!.at[1]).toBeCloseTo(ft(16), 12)
    expect(tieWords(tieOff(0), 3, print).fitsOtherSide).toBe(false)
  })

  it('is in the units of the site where a tape is no measure', () => {
    const tie = tapeTie(p!, q!, -ft(10), ft(20), 'left')
    expect(tie.ok || wordProblem(tie.error[0]!, print).message).toBe('−10′ 0″ is no tape distance.')
    const one = tapeTie(p!, p!, ft(10), ft(20), 'left')
    expect(one.ok || wordProblem(one.error[0]!, print).message).toBe('Both tapes start from the same point.')
  })
})
