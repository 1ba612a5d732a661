import { describe, expect, it } from 'vitest'
import { slabWeather } from '../../core/concrete/slabWeather'
import { dayConditions } from '../../core/pours/day/dayConditions'
import { readEpw } from '../../core/weather/readEpw'
import { cloudFromWords, readForecast } from '../../core/weather/readForecast'
import { readClock, readWeatherTable, splitRow } from '../../core/weather/readWeatherTable'
import { readWeatherText } from '../../core/weather/readWeatherText'

const place = { date: '2026-07-21', zone: 'America/Denver' }
const hoursOf = (text: string) => {
  const read = readWeatherTable(text, place)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value.hours
}

describe('a pasted hourly table', () => {
  it('is read in US units with tabs and half-day clocks', () => {
    const rows = hoursOf(
      'Time\tTemp (°F)\tDew Point\tWind\tSky Cover\tChance of rain\n7 AM\t68\t50\t5 to 10 mph\t25%\t10%\n8 AM\t72\t50\tCalm\t30 %\t\n',
    )
    expect(rows[0]).toEqual({
      startUtc: '2026-07-21T13:00:00Z',
      airC: 20,
      dewPointC: 10,
      wind10mMs: 4.4704,
      cloud: 0.25,
      rainChance: 0.1,
    })
    expect(rows[1]).toMatchObject({ startUtc: '2026-07-21T14:00:00Z', wind10mMs: 0, cloud: 0.3 })
    expect(rows[1]).not.toHaveProperty('rainChance')
  })

  it('is read in metric units, with dates, commas and quotes', () => {
    const rows = hoursOf(
      'date,time,"air, °C",RH %,wind m/s,rain mm\n2026-07-22,06:00,18.5,60,3.2,0\n2026-07-22,07:00,20,55,2,1.5',
    )
    expect(rows[0]).toEqual({ startUtc: '2026-07-22T12:00:00Z', airC: 18.5, humidity: 0.6, wind10mMs: 3.2, rainMm: 0 })
    expect(rows[1]!.rainMm).toBe(1.5)
  })

  it('reads noon and midnight in words', () => {
    const rows = hoursOf('time, temp\nmidnight, 60\n11 am, 70\nNoon, 72')
    expect(rows.map(({ startUtc }) => startUtc.slice(11, 16))).toEqual(['06:00', '17:00', '18:00'])
  })

  it('goes on to the next day when the clock runs back', () => {
    const rows = hoursOf('hour;temp C\n23:00;20\n0:00;19\n1:00;18')
    expect(rows.map(row => row.startUtc)).toEqual([
      '2026-07-22T05:00:00Z',
      '2026-07-22T06:00:00Z',
      '2026-07-22T07:00:00Z',
    ])
  })

  it('tells the repeated hour apart when clocks go back', () => {
    const read = readWeatherTable('time,temp\n0:00,50\n1:00,50\n1:00,49\n2:00,48', { ...place, date: '2026-11-01' })
    expect(read.ok && read.value.hours.map(row => row.startUtc.slice(11, 16))).toEqual([
      '06:00',
      '07:00',
      '08:00',
      '09:00',
    ])
  })

  it('quotes a row it cannot read', () => {
    expect(readWeatherTable('time,temp\n7:00,70\nlater,warm', place)).toEqual({
      ok: false,
      error: [{ code: 'weatherRowUnread', severity: 'stop', values: { line: 3, found: 'later,warm' } }],
    })
  })

  it('says which column is missing', () => {
    const read = readWeatherTable('when,wind\n7,3', place)
    expect(read).toMatchObject({
      ok: false,
      error: [{ code: 'weatherColumnsUnknown', values: { missing: 'time and no temperature' } }],
    })
    expect(readWeatherTable('  \n', place)).toMatchObject({ ok: false, error: [{ code: 'weatherEmpty' }] })
  })

  it('leaves a humidity of 140 to the check of the hours, which stops', () => {
    const hours = hoursOf('time,temp,humidity\n7:00,70,140\n8:00,70,50')
    const made = slabWeather({ hours, sunAltitudeDeg: () => 30, elevationM: 0 })
    expect(made).toMatchObject({ ok: false, error: [{ code: 'humidityOutOfRange', values: { percent: 140 } }] })
  })

  it('splits quoted cells as RFC 4180 does', () => {
    expect(splitRow('a,"b, ""c""",d', ',')).toEqual(['a', 'b, "c"', 'd'])
  })

  it.each([
    ['12 am', '00:00'],
    ['12:30 pm', '12:30'],
    ['7', '07:00'],
    ['2026-07-21T05:00', '05:00'],
    ['7/4/2026 3 PM', '15:00'],
  ])('reads the clock “%s”', (text, time) => expect(readClock(text)?.time).toBe(time))

  it.each(['25:00', '13 pm', 'lunch'])('does not read “%s”', text => expect(readClock(text)).toBeNull())
})

/** A day of made-up values in the 35 columns of the form. */
function epwLine(month: number, day: number, hour: number, cells: Record<number, string> = {}): string {
  const row = Array.from({ length: 35 }, () => '0')
  row[0] = '1999'
  row[1] = String(month)
  row[2] = String(day)
  row[3] = String(hour)
  row[4] = '60'
  row[5] = 'A7'
  row[6] = String(10 + hour / 2)
  row[7] = '5.0'
  row[8] = '50'
  row[21] = '3.1'
  row[22] = '5'
  for (const [index, value] of Object.entries(cells)) row[Number(index)] = value
  return row.join(',')
}
const epw = (rows: readonly string[], zone = '-7.0'): string =>
  [
    `LOCATION,Somewhere,CO,USA,TEST,0,39.7,-105.0,${zone},1600`,
    ...Array.from({ length: 7 }, (_, i) => `HEADER ${i}`),
    ...rows,
  ].join('\r\n')

describe('an hourly weather file', () => {
  const rows = [21, 22].flatMap(day => Array.from({ length: 24 }, (_, i) => epwLine(7, day, i + 1)))

  it('hour n ends at n: the first row of a day starts at midnight of standard time', () => {
    const read = readEpw(epw(rows), '2026-07-21')
    if (!read.ok) throw new Error(read.error[0]?.code)
    expect(read.value.hours).toHaveLength(48)
    expect(read.value.hours[0]).toMatchObject({
      startUtc: '2026-07-21T07:00:00Z',
      airC: 10.5,
      humidity: 0.5,
      wind10mMs: 3.1,
      cloud: 0.5,
    })
  })

  it('leaves out what is marked missing', () => {
    const gaps = rows.map((line, i) =>
      i === 3
        ? epwLine(7, 21, 4, { 6: '99.9' })
        : i === 5
          ? epwLine(7, 21, 6, { 7: '999', 8: '999', 21: '999', 22: '99' })
          : line,
    )
    const read = readEpw(epw(gaps), '2026-07-21', 1)
    if (!read.ok) throw new Error('unread')
    expect(read.value.hours).toHaveLength(23)
    const sixth = read.value.hours.find(row => row.startUtc === '2026-07-21T12:00:00Z')!
    expect(Object.keys(sixth).sort()).toEqual(['airC', 'rainMm', 'startUtc'])
  })

  it.each([
    ['hello', 'its first line, LOCATION, is missing'],
    [epw(rows, 'x'), 'its time zone is not a number'],
    [epw(['1,2,3']), 'a line has 3 columns: “1,2,3”'],
    [epw([]), 'it has no hours for 07-21'],
  ])('says why it cannot be read', (text, reason) =>
    expect(readEpw(text, '2026-07-21')).toMatchObject({
      ok: false,
      error: [{ code: 'weatherFileUnread', values: { reason } }],
    }),
  )
})

describe('the answer of the forecast service', () => {
  it('is read with nulls, missing sky and winds in words', () => {
    const read = readForecast({
      properties: {
        periods: [
          {
            startTime: '2026-07-21T07:00:00-06:00',
            temperature: 68,
            temperatureUnit: 'F',
            dewpoint: { value: null },
            relativeHumidity: { value: 40 },
            windSpeed: '5 to 10 mph',
            probabilityOfPrecipitation: { value: 20 },
            shortForecast: 'Partly Sunny',
          },
          { startTime: '2026-07-21T08:00:00-06:00', temperature: 70, temperatureUnit: 'F', windSpeed: 'Calm' },
          { startTime: '2026-07-21T09:00:00-06:00', temperature: null },
        ],
      },
    })
    expect(read).toEqual({
      ok: true,
      value: {
        findings: [],
        hours: [
          { startUtc: '2026-07-21T13:00:00Z', airC: 20, humidity: 0.4, wind10mMs: 4.4704, cloud: 0.5, rainChance: 0.2 },
          { startUtc: '2026-07-21T14:00:00Z', airC: 38 / 1.8, wind10mMs: 0 },
        ],
      },
    })
  })

  it.each([null, {}, { properties: { periods: 'none' } }, { properties: { periods: [{ startTime: 'x' }] } }])(
    'is refused when it is none',
    answer => expect(readForecast(answer)).toMatchObject({ ok: false, error: [{ code: 'forecastBadAnswer' }] }),
  )

  it('reads the sky from its words, nothing from silence', () => {
    expect(['Sunny', 'Mostly Cloudy', 'Chance Showers', 'Windy'].map(cloudFromWords)).toEqual([0.06, 0.75, 1, null])
  })
})

describe('weather of several days', () => {
  const yard = { latDeg: 43.6, lonDeg: -116.2, elevationM: 800, zone: 'America/Denver', northDeg: 0 }
  /** 30 °C on the 21st, 10 °C on the 22nd; then it ends. */
  const hours = Array.from({ length: 48 }, (_, hour) => ({
    startUtc: `${new Date(Date.UTC(2026, 6, 21, 6 + hour)).toISOString().slice(0, 19)}Z`,
    ...{ airC: hour < 24 ? 30 : 10, dewPointC: 5, wind10mMs: 2, cloud: 0 },
  }))
  const airAtNoon = (date: string): readonly [number | undefined, boolean] => {
    const made = dayConditions({ kind: 'hourly', date: '2026-07-21', hours, source: 'made' }, date, yard, undefined)
    if (!made.ok) throw new Error(JSON.stringify(made.error))
    const noon = `${date}T18:00:00Z`
    return [made.value.hours.find(({ startUtc }) => startUtc === noon)?.airC, made.value.moved]
  }

  it('tells each of its days itself, and is moved only to a day that it does not reach', () => {
    expect(airAtNoon('2026-07-21')).toEqual([30, false])
    expect(airAtNoon('2026-07-22')).toEqual([10, false])
    expect(airAtNoon('2026-07-24')).toEqual([30, true])
  })
})

describe('what is pasted', () => {
  it('is a weather file by any line of its form, also where its head or its end was lost', () => {
    const hour = `1999,7,21,1,0,?9?9${',1'.repeat(29)}`
    for (const [text, reason] of [
      ['DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0', 'LOCATION, is missing'],
      [`${hour}\n${hour}`, 'LOCATION, is missing'],
      [`LOCATION,Test Field,,,,,43,-116,-7,800${'\nx'.repeat(7)}\n1999,7,21,1,0`, 'a line has 5 columns'],
    ] as const)
      expect(readWeatherText(text, place)).toMatchObject({
        ok: false,
        error: [{ code: 'weatherFileUnread', values: { reason: expect.stringContaining(reason) } }],
      })
  })

  it('is a weather file by its first line, else a table', () => {
    expect(readWeatherText('LOCATION,Test Field,,,,,43,-116,-7,800', place)).toMatchObject({
      ok: false,
      error: [{ code: 'weatherFileUnread' }],
    })
    expect(readWeatherText('\uFEFFtime,temp\n7,68', place)).toMatchObject({
      ok: true,
      value: { hours: [{ airC: 20 }] },
    })
  })
})
