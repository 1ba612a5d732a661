import { describe, expect, it } from 'vitest'
import { fuzzSession } from '../fault/fuzzSession'

describe('sessions of random saves on a failing drive, many', () => {
  it('leave the file whole, and what was reported as kept is there', async () => {
    for (let seed = 1000; seed < 6000; seed += 1) expect(await fuzzSession(seed), `seed ${seed}`).toEqual([])
  })
})
