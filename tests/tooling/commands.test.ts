import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, statSync, utimesSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { PlanJson } from '../../shared/planJson'

const run = (...rest: string[]) => spawnSync(process.execPath, ['scripts/run.mjs', ...rest], { encoding: 'utf8' })

describe('the commands', () => {
  it('print exactly one object for --json, nothing on the error stream', () => {
    const { stdout, stderr, status } = run('plan', 'samples/l-patio.slabwright.json', '--json', '--date', '2026-07-14')
    expect(stderr).toBe('')
    expect(status).toBe(0)
    expect(PlanJson.safeParse(JSON.parse(stdout)).success).toBe(true)
  })

  it('end with 2 on bad usage and on a file that cannot be read', () => {
    expect(run().status).toBe(2)
    expect(run('dance').status).toBe(2)
    expect(run('plan', 'nowhere.slabwright.json').status).toBe(2)
    expect(run('check', 'package.json').status).toBe(2)
  })

  it('bundle again when a source is newer than the bundle', () => {
    const bundle = 'dist/cli/main.mjs'
    run('help')
    const before = statSync(bundle).mtimeMs
    run('help')
    expect(statSync(bundle).mtimeMs).toBe(before)
    const soon = new Date(Date.now() + 1000)
    const source = 'electron/cli/usage.ts'
    const { atime, mtime } = statSync(source)
    utimesSync(source, soon, soon)
    try {
      run('help')
      expect(statSync(bundle).mtimeMs).toBeGreaterThan(before)
    } finally {
      utimesSync(source, atime, mtime)
    }
  })

  it('run from any folder', () => {
    const elsewhere = mkdtempSync(join(tmpdir(), 'elsewhere-'))
    const script = join(process.cwd(), 'scripts/run.mjs')
    const sample = join(process.cwd(), 'samples/plain-rectangle.slabwright.json')
    const { status, stdout } = spawnSync(process.execPath, [script, 'plan', sample], {
      cwd: elsewhere,
      encoding: 'utf8',
    })
    rmSync(elsewhere, { recursive: true })
    expect(status).toBe(0)
    expect(stdout).toContain(JSON.parse(readFileSync(sample, 'utf8')).name)
  })
})
