import { describe, expect, it } from 'vitest'
import { openingNames } from '../../core/document/openingNames'
import type { Opening } from '../../shared/document/slab'

const titles = (...rows: readonly (readonly [Opening['kind'], string?])[]) =>
  [...openingNames(rows.map(([kind, name], i) => ({ id: `o${i + 1}`, kind, name }))).values()].map(
    ({ title, words, the }) => [title, words, the],
  )

describe('what openings are called', () => {
  it('is their name, however it is written', () =>
    expect(titles(['pool', 'the deep end'])).toEqual([['the deep end', 'the deep end', 'the deep end']]))
  it('else their kind', () =>
    expect(titles(['pool'], ['other'])).toEqual([
      ['Pool', 'pool', 'the pool'],
      ['Opening', 'opening', 'the opening'],
    ]))
  it('else their kind and number, those without a name counted in the order of the slab', () =>
    expect(titles(['planter'], ['drain'], ['planter', 'Herbs'], ['planter'])).toEqual([
      ['Planter 1', 'planter 1', 'planter 1'],
      ['Drain', 'drain', 'the drain'],
      ['Herbs', 'Herbs', 'Herbs'],
      ['Planter 2', 'planter 2', 'planter 2'],
    ]))
})
