import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pourTints } from '../../renderer/editor/layers/pourTints'

const pours = (n: number) => Array.from({ length: n }, (_, i) => ({ id: `p${i}` }))

describe('the tints of pours', () => {
  it('differ across every joint of a strip of pours', () => {
    const strip = pours(12)
    const joints = strip.slice(1).map((pour, i) => ({ pourIds: [strip[i]!.id, pour.id] }))
    const tints = pourTints(strip, joints)
    for (const { pourIds } of joints) expect(tints.get(pourIds[0]!)).not.toBe(tints.get(pourIds[1]!))
  })

  it('run through all four where pours lie apart, and follow the joints of the same pours', () => {
    const apart = pours(8)
    expect([...pourTints(apart, []).values()]).toEqual([1, 2, 3, 4, 1, 2, 3, 4])
    const joints = [{ pourIds: ['p0', 'p4'] }]
    expect(pourTints(apart, joints).get('p4')).not.toBe(1)
  })

  it('repeat the rarest among the neighbors where all four are taken', () => {
    const all = pours(9)
    const joints = [0, 4, 1, 2, 3].map(k => ({ pourIds: [`p${k}`, 'p8'] }))
    const tints = pourTints(all, joints)
    expect([0, 4, 1, 2, 3].map(k => tints.get(`p${k}`))).toEqual([1, 1, 2, 3, 4])
    expect(tints.get('p8')).toBe(2)
  })

  it('differ across every joint where no pour has more than three neighbors before it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), fc.array(fc.nat(), { maxLength: 80 }), (n, picks) => {
        const all = pours(n)
        const joints = all.slice(1).flatMap((pour, i) => {
          const before = new Set(picks.slice(3 * i, 3 * i + 3).map(pick => pick % (i + 1)))
          return [...before].map(k => ({ pourIds: [all[k]!.id, pour.id] }))
        })
        const tints = pourTints(all, joints)
        for (const { pourIds } of joints) expect(tints.get(pourIds[0]!)).not.toBe(tints.get(pourIds[1]!))
      }),
      { seed: 5, numRuns: 200 },
    )
  })
})
