import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { findBrowser } from '../../scripts/findBrowser'

describe('the browser finder', () => {
  it('prefers a browser that is installed', () => {
    expect(findBrowser({ named: undefined, lookFor: ['/nowhere/chromium', process.execPath] })).toEqual({
      path: process.execPath,
      env: {},
      origin: 'installed',
    })
  })

  it('brings its own where none is installed, and says what to do where it cannot', () => {
    const find = () => findBrowser({ named: undefined, lookFor: [] })
    if (process.platform !== 'linux' || process.arch !== 'x64') {
      expect(find).toThrow(/Install one, or name it/)
      return
    }
    const { path, env, origin } = find()
    expect(origin).toBe('package')
    expect(existsSync(path)).toBe(true)
    const run = spawnSync(path, ['--version'], { env: { ...process.env, ...env }, encoding: 'utf8' })
    expect(run.stdout).toMatch(/143\./)
  })
})
