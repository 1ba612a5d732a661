import { expect, it } from 'vitest'
import { nameOf } from '../../renderer/editor/caughtWords'
import { lPatio } from '../../samples/sites/lPatio'

it('what holds the pointer is told apart from others of its kind', () => {
  const site = lPatio()
  const slab = site.slabs[0]!
  const band = {
    name: undefined,
    line: slab.outline,
    widthM: 0.3,
    finishId: slab.finishId,
    placed: 'withField' as const,
  }
  const post = { kind: 'post' as const, at: [0, 0] as const }
  const drawn = {
    ...site,
    slabs: [
      {
        ...slab,
        bands: [
          { ...band, id: 'w1' },
          { ...band, id: 'w2' },
        ],
        insets: [],
        obstacles: [
          { ...post, id: 'w3' },
          { ...post, id: 'w4', name: 'Gate post' },
          { ...post, kind: 'other' as const, id: 'w5' },
        ],
      },
    ],
  } as typeof site
  const names = ['w1', 'w2', 'w3', 'w4', 'w5', slab.id].map(id => nameOf(drawn, [id]))
  expect(names).toEqual(['band 1', 'band 2', 'the post', 'Gate post', 'the obstacle', slab.name])
})
