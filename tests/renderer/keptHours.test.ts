import { expect, it } from 'vitest'
import { keptHours } from '../../renderer/slab/place/keptHours'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { plainRectangle } from '../../samples/sites/plainRectangle'
import type { Site } from '../../shared/document/site'

it('tells what another time zone does to hours: those of a clock stay, moments are told anew; nothing without any', () => {
  const bare: Site = { ...plainRectangle(), accepted: [], log: [], calendar: undefined, conditions: undefined }
  expect(keptHours({ ...bare, access: undefined })).toBe('')
  const started = lPatioAccepted().accepted.map(part => ({
    ...part,
    pours: part.pours.map(pour => ({ ...pour, start: { time: '07:00' } })),
  }))
  expect(keptHours({ ...bare, accepted: started })).toMatch(/7:00 am stays 7:00 am/)
  const hourly: Site = { ...bare, conditions: { kind: 'hourly', date: '2026-07-21', hours: [], source: 'read off' } }
  expect(keptHours(hourly)).toMatch(/^Hourly weather .* stay the moments they were/)
})
