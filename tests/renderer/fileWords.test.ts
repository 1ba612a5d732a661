import { expect, it } from 'vitest'
import { emptySite } from '../../renderer/app/emptySite'
import { type KeptFacts, keptWords, troubleWords } from '../../renderer/app/fileWords'

it('a save that failed speaks of the old file only where one stands', () => {
  const full = { outcome: 'notSaved', failure: { reason: 'diskFull' } } as const
  expect(troubleWords({ where: 'file', ...full })).toBe(
    'Not saved; the old file is whole. The drive is full. Make room and save again.',
  )
  expect(troubleWords({ where: 'newFile', ...full })).toBe('Not saved. The drive is full. Make room and save again.')
  expect(troubleWords({ where: 'file', outcome: 'notSaved', failure: { reason: 'vanished' } })).toBe(
    'Not saved. The file is not there any more. Saving again puts it back.',
  )
})

it('a site whose file may only be looked at says so for as long as it is open', () => {
  const site = emptySite('s1', 'Mill yard')
  const changed = { ...site, units: 'metric' as const }
  const facts: KeptFacts = {
    ...{ committed: site, kept: site, keptAt: null, filed: site, filedAt: null, trouble: null },
    ...{ fileName: 'Mill yard.slabwright.json', readOnly: 'openElsewhere' },
  }
  expect(keptWords(facts)).toBe('Only to look at')
  expect(keptWords({ ...facts, readOnly: null })).toBe('As it was opened')
  expect(keptWords({ ...facts, committed: changed, kept: changed })).toBe('Kept, in no file of its own')
})
