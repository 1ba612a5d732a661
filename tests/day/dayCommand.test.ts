import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DayPlanRow } from '../../shared/planJson'
import { pdfTexts } from './pdfTexts'

const root = join(import.meta.dirname, '../..')
const sample = (name: string) => join(root, 'samples', `${name}.slabwright.json`)
let folder: string
let main: string

const run = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, 'day', ...args], { encoding: 'utf8' })
  return { status, stdout, stderr }
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slabwright-day-'))
  const { buildCli } = (await import(join(root, 'scripts/build.mjs'))) as { buildCli(): Promise<string> }
  main = await buildCli()
}, 60_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('day', () => {
  it('prints the day of a pour named by its number, and writes the sheet and the calendar', async () => {
    const { status, stdout, stderr } = run(sample('l-patio-accepted'), '--pour', '1', '--out', folder)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toContain('Pour 1, 2026-07-21, first truck 7:00 am')
    for (const word of ['Strip', 'Load', 'One hand short', 'Crew:', 'The finger test and the foreman decide'])
      expect(stdout).toContain(word)
    expect(readdirSync(folder).sort()).toEqual(['day-1.pdf', 'pours.ics'])
    const texts = await pdfTexts(new Uint8Array(readFileSync(join(folder, 'day-1.pdf'))))
    expect(Math.max(...texts.map(({ page }) => page))).toBe(2)
    expect(Math.min(...texts.filter(({ page }) => page === 1).map(({ sizePt }) => sizePt))).toBeCloseTo(14, 3)
  })

  it('takes the weather of the run from a table, and quotes what it cannot read', () => {
    const table = join(folder, 'weather.csv')
    const rows = (noon: string) =>
      `time,temp,dew point\n${Array.from({ length: 24 }, (_, i) => `${i}:00,${i === 12 ? noon : 60 + i},48`).join('\n')}`
    const asked = [sample('l-patio'), '--pour', '1', '--date', '2026-07-21', '--weather', table]
    writeFileSync(table, rows('75'))
    const { status, stdout } = run(...asked)
    expect(status).toBe(0)
    expect(stdout).toMatch(/^Pour 1, 2026-07-21, first truck 7:00 am, slack \d+ min/)
    writeFileSync(table, rows('warm'))
    expect(run(...asked)).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringContaining('Line 14 of the weather table cannot be read: “12:00,warm,48”.'),
    })
    expect(run(...asked, '--forecast')).toMatchObject({ status: 2, stderr: expect.stringContaining('not from both') })
  })

  it('prints one object with --json', () => {
    const { status, stdout } = run(sample('l-patio-accepted'), '--pour', '2', '--json')
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({ startUtc: '2026-07-22T13:00:00Z', slackMin: expect.any(Number) })
  })

  it('prints what the form of the plan’s JSON allows and nothing else, and the same as `plan --json`', () => {
    const { stdout } = run(sample('l-patio-accepted'), '--pour', '1', '--json')
    const day = DayPlanRow.parse(JSON.parse(stdout))
    expect(Object.keys(day)).toEqual([
      ...['pourId', 'startUtc', 'strips', 'tasks', 'loads', 'slackMin', 'chanceOfMiss', 'capacityM2', 'capacityRule'],
      ...['evaporationMaxKgM2H', 'crew', 'whatIf'],
    ])
    expect(Object.keys(day.strips[0]!)).toEqual([
      ...['id', 'areaM2', 'placeUtc', 'readyUtc', 'readyP10Utc', 'readyP90Utc', 'tooHardUtc', 'stampFromUtc'],
      ...['stampToUtc', 'doseMin'],
    ])
    expect(Object.keys(day.tasks[0]!)).toEqual(['stripId', 'name', 'fromUtc', 'toUtc', 'hands'])
    expect(Object.keys(day.loads[0]!)).toEqual(['no', 'batchUtc', 'onSiteUtc', 'volumeM3', 'portions'])
    expect(Object.keys(day.loads[0]!.portions[0]!)).toEqual(['stripIds', 'doseMin'])
    expect(Object.keys(day.crew[0]!)).toEqual(['role', 'why'])
    expect(Object.keys(day.whatIf[0]!)).toEqual(['case', 'slackMin', 'firstLostStripId', 'startUtc', 'doNext'])
    expect(day.whatIf.map(row => row.case)).toEqual([
      ...['late15', 'late30', 'late45', 'late60', 'handShort', 'hotter', 'rain14'],
    ])
    expect(day.capacityRule).toMatch(/^(userCap|commonPractice|crewAndWeather)$/)
    const plan = spawnSync(process.execPath, [main, 'plan', sample('l-patio-accepted'), '--json'], {
      ...{ encoding: 'utf8', maxBuffer: 1 << 28 },
    })
    const whole = JSON.parse(plan.stdout) as { dayPlans: { pourId: string }[] }
    expect(whole.dayPlans.find(({ pourId }) => pourId === day.pourId)).toEqual(JSON.parse(stdout))
  })

  it('says what is missing: 1', () => {
    const { status, stderr } = run(sample('plain-rectangle'), '--pour', '1')
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: 'Pour 1 has no day plan: enter the crew and the weather.\n',
    })
  })

  it('names the pours there are: 2', () => {
    const { status, stderr } = run(sample('l-patio-accepted'), '--pour', '9')
    expect(status).toBe(2)
    expect(stderr).toMatch(/^There is no pour “9”; there are .+\.\n$/)
  })

  it('needs a pour: 2', () => {
    const { status, stderr } = run(sample('l-patio-accepted'))
    expect(status).toBe(2)
    expect(stderr).toMatch(/^day needs --pour/)
  })
})
