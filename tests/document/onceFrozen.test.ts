import { describe, expect, it } from 'vitest'
import { onceFrozen } from '../../shared/onceFrozen'

describe('what is worked out once', () => {
  const worker = (holds?: (known: string, by: number) => boolean) => {
    const asked: number[] = []
    const ask = onceFrozen((key: { readonly name: string }, by: number) => {
      asked.push(by)
      return `${key.name} ${by}`
    }, holds)
    return { asked, ask }
  }
  it('is worked out anew for an object that can still change', () => {
    const { asked, ask } = worker()
    const row = { name: 'a' }
    expect(ask(row, 1)).toBe('a 1')
    row.name = 'b'
    expect(ask(row, 2)).toBe('b 2')
    expect(asked).toEqual([1, 2])
  })
  it('is kept for one that cannot', () => {
    const { asked, ask } = worker()
    const row = Object.freeze({ name: 'a' })
    expect([ask(row, 1), ask(row, 2)]).toEqual(['a 1', 'a 1'])
    expect(ask(Object.freeze({ name: 'a' }), 3)).toBe('a 3')
    expect(asked).toEqual([1, 3])
  })
  it('is worked out again where it does not hold for what else is given, and that is kept', () => {
    const { asked, ask } = worker((known, by) => known.endsWith(String(by)))
    const row = Object.freeze({ name: 'a' })
    expect([ask(row, 1), ask(row, 1), ask(row, 2), ask(row, 2)]).toEqual(['a 1', 'a 1', 'a 2', 'a 2'])
    expect(asked).toEqual([1, 2])
  })
  it('keeps null as an answer', () => {
    let asked = 0
    const ask = onceFrozen((_: object) => {
      asked++
      return null
    })
    const row = Object.freeze({})
    expect([ask(row), ask(row)]).toEqual([null, null])
    expect(asked).toBe(1)
  })
})
