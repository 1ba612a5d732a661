import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PlanJson } from '../../shared/planJson'

const root = join(import.meta.dirname, '../..')
const sample = (name: string) => join(root, 'samples', `${name}.slabwright.json`)
let folder: string
let main: string

const run = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...args], { encoding: 'utf8' })
  return { status, stdout, stderr }
}

/** As much of a site file as the tests below change. */
interface RawSite {
  place: { latDeg: number }
  slabs: { outline: { vertices: unknown[] } }[]
}

const changed = (name: string, change: (site: RawSite) => void): string => {
  const site = JSON.parse(readFileSync(sample(name), 'utf8'))
  change(site)
  const file = join(folder, `changed-${name}.slabwright.json`)
  writeFileSync(file, JSON.stringify(site))
  return file
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slabwright-cli-'))
  const { buildCli } = (await import(join(root, 'scripts/build.mjs'))) as { buildCli(): Promise<string> }
  main = await buildCli()
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('plan', () => {
  it('prints a table a person can read: areas, borders, pours, sun, points', () => {
    const { status, stdout, stderr } = run('plan', sample('l-patio'), '--date', '2026-07-14')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    for (const text of [
      '1,588 ft²',
      '128′ 10¼″',
      'Pour 1',
      'yd³',
      'Sun share',
      'Back door',
      // 839.9 min, and no 60th minute.
      'Dining table: 14 h 0 min of direct sun',
      'no way in and out stays usable',
    ])
      expect(stdout).toContain(text)
  })

  it('prints exactly one JSON object of the published shape with --json', () => {
    const { status, stdout, stderr } = run('plan', sample('l-patio'), '--date', '2026-07-21', '--json', '--step', '30')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const plan = PlanJson.parse(JSON.parse(stdout))
    expect(plan.shade.times).toHaveLength(48)
    expect(plan.shade.times[0]).toBe('2026-07-21T00:00:00-06:00')
    expect(plan.date).toBe('2026-07-21')
  })

  it('answers for points asked about', () => {
    const { stdout } = run(
      'plan',
      sample('l-patio'),
      '--date',
      '2026-07-21',
      '--json',
      '--point',
      '3,8',
      '--point=6,2.5',
    )
    const { points } = PlanJson.parse(JSON.parse(stdout))
    expect(points.slice(-2).map(p => p.id)).toEqual(['point-1', 'point-2'])
    expect(points.at(-1)!.directSunMin).toBeGreaterThan(0)
  })

  it('has 92 steps on the day the clocks go forward and 100 on the day they go back', () => {
    const steps = (date: string) =>
      PlanJson.parse(JSON.parse(run('plan', sample('plain-rectangle'), '--date', date, '--json').stdout)).shade.times
        .length
    expect(steps('2026-03-08')).toBe(92)
    expect(steps('2026-11-01')).toBe(100)
  })

  it('writes the sheets with --out', () => {
    const out = join(folder, 'sheets')
    const { status, stdout } = run('plan', sample('l-patio'), '--date', '2026-07-21', '--out', out)
    expect(status).toBe(0)
    const names = readdirSync(out).sort()
    for (const ending of ['.svg', '.pdf', '.csv', '.geojson'])
      expect(
        names.some(n => n.endsWith(ending)),
        ending,
      ).toBe(true)
    for (const name of names) expect(stdout).toContain(name)
    expect(readFileSync(join(out, 'sheets.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  })
})

describe('exit codes and what is said', () => {
  it.each([
    [['plan'], 'plan takes one file'],
    [['plan', 'a', 'b'], 'plan takes one file'],
    [['plan', 'x', '--step', '0'], '--step takes minutes from 1 to 240, not “0”'],
    [['plan', 'x', '--point', '3'], '--point takes X,Y in meters, not “3”'],
    [['plan', 'x', '--sideways'], 'plan has no option “--sideways”'],
    [['plan', 'x', '--date'], '--date: a value is missing'],
    [['plan', 'x', '--json=yes'], '--json: a value is missing, or one is given'],
    [['plan', 'x', '--alternatives'], '--alternatives goes with --json or --out'],
    [['check', 'x', '--json'], 'check has no option “--json”'],
    [['day', 'x'], 'day needs --pour'],
    [['check'], 'check takes one file'],
    [['draw', 'x'], 'unknown command “draw”'],
    [[], 'no command given'],
  ])('%j is wrong usage: 2', (args, said) => {
    const { status, stdout, stderr } = run(...args)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain(said)
    expect(stderr).toContain('Usage:')
  })

  it.each([[['help']], [['--help']], [['plan', '--help']], [['day', 'x', '--help']]])(
    '%j tells how it is used',
    args => {
      expect(run(...args)).toMatchObject({ status: 0, stderr: '', stdout: expect.stringMatching(/^Usage:/) })
    },
  )

  it('a date that does not exist: 2', () => {
    const { status, stderr } = run('plan', sample('l-patio'), '--date', '2026-02-31')
    expect(status).toBe(2)
    expect(stderr).toContain('2026-02-31')
  })

  it.each([
    ['missing', undefined, 'there is no such file'],
    ['empty', '', 'empty'],
    ['binary', '\u0000\u0001\u0002', 'not text'],
    ['broken', '{"format": ', 'cannot be planned'],
    ['other', '{"format":"something-else"}', 'cannot be planned'],
  ])('a %s file: 2, in words, nothing on stdout', (name, content, said) => {
    const file = join(folder, `${name}.json`)
    if (content !== undefined) writeFileSync(file, content)
    const { status, stdout, stderr } = run('plan', file, '--json')
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr.toLowerCase()).toContain(said)
    expect(stderr).not.toMatch(/\bat .*:\d+:\d+/)
  })

  it('a crossed outline: 1, and the rest is still printed', () => {
    const file = changed('l-patio', (site: RawSite) => {
      const vertices = site.slabs[0]!.outline.vertices
      ;[vertices[0], vertices[1]] = [vertices[1], vertices[0]]
    })
    const { status, stdout } = run('plan', file, '--date', '2026-07-21', '--json')
    expect(status).toBe(1)
    const plan = PlanJson.parse(JSON.parse(stdout))
    const stop = plan.problems.find(p => p.severity === 'stop')!
    expect(stop.code).toBe('selfCrossing')
    expect(stop.at?.point).toHaveLength(2)
    expect(plan.shade.sun.length).toBe(96)
    expect(run('check', file).status).toBe(1)
  })

  it('a value that cannot be: 1, told with its field, and one object with the problem', () => {
    const file = changed('plain-rectangle', (site: RawSite) => {
      site.place.latDeg = 91
    })
    const { status, stdout, stderr } = run('plan', file, '--json')
    expect(status).toBe(1)
    expect(stderr).toContain('/place/latDeg')
    expect(PlanJson.parse(JSON.parse(stdout)).problems[0]).toMatchObject({ code: 'outOfRange', field: '/place/latDeg' })
  })

  it('a name in a file cannot steer the terminal', () => {
    const site = JSON.parse(readFileSync(sample('plain-rectangle'), 'utf8'))
    const file = join(folder, 'steering.json')
    writeFileSync(file, JSON.stringify({ ...site, name: '\u001b]0;title\u0007Red \u202eyard\u009b2J' }))
    const { status, stdout } = run('plan', file, '--date', '2026-07-21')
    expect(status).toBe(0)
    expect(stdout).toContain(']0;titleRed yard2J, 2026-07-21')
  })

  it('a drawing of a size that has no words: 1, and told as far too wide', () => {
    const site = JSON.parse(readFileSync(sample('plain-rectangle'), 'utf8'))
    site.slabs[0].outline.vertices[1].at[0] = 1e308
    const file = join(folder, 'wide.json')
    writeFileSync(file, JSON.stringify(site))
    const { status, stderr } = run('plan', file)
    expect(status).toBe(1)
    expect(stderr).toContain('The drawing is more than 328,083′ 11⅞″ across; the most is 6,561′ 8⅛″.')
  })

  it('check of a good site: 0', () => {
    expect(run('check', sample('plain-rectangle'))).toMatchObject({ status: 0, stdout: 'No problems.\n', stderr: '' })
  })
})
