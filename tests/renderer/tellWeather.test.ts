import { expect, it } from 'vitest'
import { emptySite } from '../../renderer/app/emptySite'
import { tellFetched } from '../../renderer/day/tellWeather'

it('when a forecast was fetched is told by the clock of the site', () => {
  const site = emptySite('s1', 'Mill yard')
  expect(tellFetched(site, '2026-07-21T09:05:30Z')).toBe('fetched Tue Jul 21, 4:05 am')
  expect(tellFetched({ ...site, units: 'metric' }, '2026-07-21T03:05:30Z')).toBe('fetched Mon Jul 20, 22:05')
})
