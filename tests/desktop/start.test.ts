import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildCli, buildLoopback, buildPage } from '../../scripts/build.mjs'

let home: string
/** As on a machine where nobody could see a window. */
const unseen = () => ({
  ...process.env,
  DISPLAY: '',
  WAYLAND_DISPLAY: '',
  HOME: home,
  XDG_CONFIG_HOME: join(home, 'config'),
})

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'start-'))
  await buildCli()
  await buildLoopback()
  await buildPage()
}, 120_000)
afterAll(() => rmSync(home, { recursive: true, force: true }))

describe('npm start', () => {
  it('prints the plan of a sample and ends, when that is all that is asked', () => {
    const run = spawnSync(process.execPath, ['scripts/run.mjs', 'start', '--once'], { env: unseen(), encoding: 'utf8' })
    expect(run.stderr).toBe('')
    expect(run.stdout).toContain('1,588 ft²')
    expect(run.status).toBe(0)
  })

  it('without a display prints the plan and the address, and serves the page until it is told to stop', async () => {
    // Where every machine has a display, a window would open in the middle of the test.
    if (process.platform !== 'linux') return
    const child = spawn(process.execPath, ['scripts/run.mjs', 'start', '--folder', join(home, 'sites')], {
      env: unseen(),
    })
    let told = ''
    child.stdout.setEncoding('utf8')
    for await (const chunk of child.stdout) {
      told += chunk
      if (told.includes('Ctrl-C')) break
    }
    expect(told).toContain('1,588 ft²')
    const address = /http:\/\/127\.0\.0\.1:\d+\/#[\w-]{43}/.exec(told)?.[0] ?? ''
    const page = await (await fetch(address.split('#')[0] ?? '')).text()
    expect(page).toContain('<title>Slabwright</title>')
    child.kill('SIGTERM')
    const [code] = await once(child, 'exit')
    expect(code).toBe(0)
    await expect(fetch(address)).rejects.toThrow()
  })
})
