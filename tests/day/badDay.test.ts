/** From a site file with something wrong about its day to the words that say what and where. */
import { describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { derivePlan } from '../../core/plan/derivePlan'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Conditions, WeatherHour } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { sampleSite } from '../plan/sampleSite'

const site = sampleSite('l-patio-accepted')
const pourIds = site.accepted.flatMap(({ pours }) => pours.map(({ id }) => id))

/** Everything a site file is told of, in words, the gravest part of each line first. */
function toldOf(change: Partial<Record<keyof Site, unknown>>): readonly string[] {
  const read = readSite(JSON.stringify({ ...site, ...change }))
  if (!read.ok)
    return read.error.map(finding => `${finding.severity}: ${wordProblem(finding, printMeasures('ftin')).message}`)
  const plan = derivePlan(read.value, { date: '2026-07-21' })
  if (!plan.ok) return plan.error.map(({ severity, message }) => `${severity}: ${message}`)
  return plan.value.problems.map(({ severity, message }) => `${severity}: ${message}`)
}

const hours = Array.from(
  { length: 72 },
  (_, i): WeatherHour => ({
    startUtc: `${new Date(Date.UTC(2026, 6, 21, 6 + i)).toISOString().slice(0, 16)}Z`,
    ...{ airC: 22 + 8 * Math.sin((Math.PI * (i - 9)) / 12), dewPointC: 9, wind10mMs: 3, cloud: 0.1 },
  }),
)
const hourly = (rows: readonly WeatherHour[]): Conditions => ({
  ...{ kind: 'hourly', date: '2026-07-21', source: 'made up' },
  hours: [...rows],
})
const startingAt = (time: string, date?: string) =>
  site.accepted.map(part => ({
    ...part,
    pours: part.pours.map(pour => ({ ...pour, start: { time }, ...(date === undefined ? {} : { date }) })),
  }))

describe('a site file whose day cannot be', () => {
  it.each<[name: string, change: Partial<Record<keyof Site, unknown>>, told: RegExp]>([
    [
      'hours of the weather missing',
      { conditions: hourly(hours.filter((_, i) => i < 10 || i > 13)) },
      /^stop: The weather has a gap of 4 hours from 10:00 am on Tue Jul 21\.$/,
    ],
    [
      'one hour missing',
      { conditions: hourly(hours.filter((_, i) => i !== 10)) },
      /^\w+: 1 hour of weather missing from 10:00 am on Tue Jul 21: taken from the hours beside it\.$/,
    ],
    ['no hour at all', { conditions: hourly([]) }, /^stop: There is no weather for this day\.$/],
    [
      'hours that end before it sets',
      { conditions: hourly(hours.slice(0, 8)) },
      /^check: Pour 1: the weather ends before all strips are ready\.$/,
    ],
    [
      'a humidity of 140 %',
      { conditions: hourly(hours.map(({ dewPointC: _, ...row }, i) => ({ ...row, humidity: i === 7 ? 1.4 : 0.5 }))) },
      /^stop: .*humidity.*1\.4/,
    ],
    [
      'the polar night',
      { place: { ...site.place, latDeg: 78 }, accepted: startingAt('07:00', '2026-12-21') },
      /^check: Pour 1 starts at 7:00 am, before it is light\.$/,
    ],
    [
      'a pour after dark',
      { accepted: startingAt('21:30') },
      /^check: Pour 1 is stamped until 12:\d\d am; it is dark from 9:\d\d pm\.$/,
    ],
    ['a truck of 0 yd³', { settings: { loadM3: 0 } }, /^stop: A truck of 0 yd³ carries nothing\.$/],
    ['a crew of 0', { crew: { ...site.crew!, hands: 0 } }, /^stop: .*hands/],
    ['a crew of 2', { crew: { ...site.crew!, hands: 2 } }, /^stop: A crew of 2 cannot place, color and stamp: 3/],
    [
      'a dose into a load that is not of the pour',
      {
        log: [
          {
            ...{ id: 'l900', pourId: pourIds[0], date: '2026-07-21', loads: [], strips: [], used: [], notes: '' },
            taps: [
              { id: 't901', atUtc: '2026-07-21T13:40Z', what: 'dosed', load: 3, minutes: 30, count: 2, source: 'tap' },
            ],
          },
        ],
        nextId: site.nextId + 1000,
      },
      /^check: Load 3 is empty and cannot be dosed for 30 min\.$/,
    ],
    [
      'a dose into a drum whose strips are all down',
      {
        log: [
          {
            ...{ id: 'l900', pourId: pourIds[0], date: '2026-07-21', loads: [], strips: [], used: [], notes: '' },
            taps: [
              ...['a', 'b', 'c', 'd'].map((strip, i) => ({
                ...{ id: `t90${i}`, atUtc: `2026-07-21T13:${20 + i}Z`, what: 'placed', strip, source: 'tap' },
              })),
              { id: 't909', atUtc: '2026-07-21T13:40Z', what: 'dosed', load: 1, minutes: 30, count: 2, source: 'tap' },
            ],
          },
        ],
        nextId: site.nextId + 1000,
      },
      /^check: Load 1 is empty and cannot be dosed for 30 min\.$/,
    ],
  ])('%s is told in words', (_, change, told) => {
    const all = toldOf(change)
    expect(
      all.some(line => told.test(line)),
      all.join('\n'),
    ).toBe(true)
    expect(all.join(' ')).not.toMatch(/undefined|NaN|null|Invalid/)
  })

  it('whose weather ends too soon sets no day of the order by the end of the world', () => {
    for (const line of toldOf({ conditions: hourly(hours.slice(0, 8)) })) {
      expect(line).not.toMatch(/202[789]|Jun|stamped until/)
      if (line.includes('finish date')) expect(line).toMatch(/Jul|Aug/)
    }
  })
})
