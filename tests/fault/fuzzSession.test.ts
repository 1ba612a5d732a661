import { describe, expect, it } from 'vitest'
import { fuzzSession } from './fuzzSession'

describe('sessions of random saves on a failing drive', () => {
  it('leave the file whole, and what was reported as kept is there', async () => {
    for (let seed = 1; seed <= 60; seed += 1) expect(await fuzzSession(seed), `seed ${seed}`).toEqual([])
  })
})
