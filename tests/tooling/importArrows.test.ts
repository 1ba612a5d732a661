import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { checkArrows } from '../../scripts/importArrows'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'arrows-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function plant(file: string, source: string): string[] {
  mkdirSync(dirname(join(folder, file)), { recursive: true })
  writeFileSync(join(folder, file), source)
  return checkArrows(folder).violations.map(({ file, line, what }) => `${file}:${line}: ${what}`)
}

describe('the import-arrow checker', () => {
  it('finds nothing to blame in this project, and says how much it read', () => {
    const { modules, violations } = checkArrows('.')
    expect(violations).toEqual([])
    expect(modules).toBeGreaterThan(30)
  })

  it('fails when it saw no modules', () => {
    const run = spawnSync('npx', ['tsx', 'scripts/checkArrows.ts', folder], {
      encoding: 'utf8',
      shell: process.platform === 'win32',
    })
    expect(run.stdout).toContain('0 modules')
    expect(run.status).toBe(1)
  })

  it('exits with an error on a planted violation', () => {
    plant('core/a.ts', "import '../electron/files'\n")
    const run = spawnSync('npx', ['tsx', 'scripts/checkArrows.ts', folder], {
      encoding: 'utf8',
      shell: process.platform === 'win32',
    })
    expect(run.stderr).toContain('core/a.ts:1: core may not import electron')
    expect(run.status).toBe(1)
  })

  it.each([
    ['shared/a.ts', "import { b } from '../core/b'", 'shared may not import core: ../core/b'],
    ['shared/a.ts', "import type { b } from '../core/b'", 'shared may not import core: ../core/b'],
    ['shared/a.ts', "export * from '../renderer/b'", 'shared may not import renderer: ../renderer/b'],
    ['shared/a.ts', "export { b } from 'luxon'", 'shared may not import luxon'],
    ['core/x/a.ts', "const b = await import('../../renderer/b')", 'core may not import renderer: ../../renderer/b'],
    ['core/x/a.ts', "type B = import('../../electron/b').B", 'core may not import electron: ../../electron/b'],
    ['core/x/a.ts', "import {\n  b,\n  c as d,\n} from 'node:fs'", 'core may not import node:fs'],
    ['core/x/a.ts', "import 'left-pad'", 'core may not import left-pad'],
    ['core/x/a.ts', 'const b = await import(name)', 'imports a name that is not written out'],
    ['core/x/a.ts', "import { z } from 'zod'", 'import zod/mini, not zod'],
    [
      'core/geometry/offset.ts',
      "import { inflatePaths } from 'clipper2-ts'",
      'only core/geometry/clip.ts may import clipper2-ts',
    ],
    ['renderer/a.ts', "import * as suncalc from 'suncalc'", 'only core/sun/sunPosition.ts may import suncalc'],
    ['renderer/a.ts', "import { readFile } from 'node:fs/promises'", 'renderer may not import node:fs/promises'],
    [
      'renderer/a.tsx',
      "import { app } from 'electron'",
      'only electron/main/ and electron/preload/ may import electron',
    ],
    [
      'electron/host/a.ts',
      "import { app } from 'electron'",
      'only electron/main/ and electron/preload/ may import electron',
    ],
    [
      'scripts/a.mjs',
      "const e = await import('electron')",
      'only electron/main/ and electron/preload/ may import electron',
    ],
    ['renderer/a.ts', "import { b } from '../electron/b'", 'renderer may not import electron: ../electron/b'],
    ['electron/a.ts', "import { b } from '../renderer/b'", 'electron may not import renderer: ../renderer/b'],
    ['electron/main/a.ts', "import { b } from '../../tests/b'", 'electron may not import tests: ../../tests/b'],
    ['scripts/a.mjs', "import { b } from '../tests/b'", 'scripts may not import tests: ../tests/b'],
    ['core/a.ts', "import { b } from '../../elsewhere/b'", 'leaves the project: ../../elsewhere/b'],
  ])('%s with %s: refused', (file, source, what) => {
    expect(plant(file, source)).toEqual([`${file}:1: ${what}`])
  })

  it.each([
    ['const t = Date.now()', 'reads the clock: Date.now'],
    ['const t = Date\n  .now()', 'reads the clock: Date.now'],
    ['const t = new Date()', 'reads the clock: new Date()'],
    ['const t = new Date( )', 'reads the clock: new Date()'],
    ['const t = [new Date]', 'reads the clock: new Date()'],
    ['const t = Date()', 'reads the clock: Date()'],
    ['const t = DateTime.now()', 'reads the clock: DateTime'],
    ['const t = DateTime.utc()', 'reads the clock: DateTime'],
    ['const r = Math.random()', 'is random: Math.random'],
    ['const { random } = Math', 'hides members of Math'],
    ["const r = Math['random']()", 'hides members of Math'],
    ['const t = performance.now()', 'reads the clock: performance'],
    ['setTimeout(f, 5)', 'uses a timer'],
    ['const i = setInterval(f, 5)', 'uses a timer'],
    ['queueMicrotask(f)', 'uses a timer'],
    ["console.log('x')", 'writes to the console'],
    ['const h = process.hrtime()', 'reaches out of a pure layer'],
    ["await fetch('x')", 'reaches out of a pure layer'],
    ['const s = `at ${Date.now()}`', 'reads the clock: Date.now'],
    ['const r = /"/.test(x) ? Date.now() : "', 'reads the clock: Date.now'],
  ])('%s in core or shared: refused', (source, what) => {
    expect(plant('core/deep/a.ts', `\n${source}`)).toContain(`core/deep/a.ts:2: ${what}`)
    expect(plant('shared/a.ts', source)).toContain(`shared/a.ts:1: ${what}`)
  })

  it('leaves alone what only looks like a violation', () => {
    const source = [
      '// Date.now() and import x from "node:fs" in a comment',
      '/* Math.random() */',
      "const a = 'Date.now() and console.log'",
      'const b = `new Date() ${a} setTimeout(`',
      'const c = new Date(0)',
      'const d = new Date(a)',
      'const e = /new Date()/',
      'const { performance: f } = g',
      'const h = Math.max(1, Math.PI)',
      'const setTime = 3',
      'const i = row.process.name',
      "import { z } from 'zod/mini'",
      "import { b } from '../shared/b'",
      "import { DateTime } from 'luxon'",
      'const j = DateTime.utc(2026, 1, 1)',
    ].join('\n')
    expect(plant('core/a.ts', source)).toEqual([])
  })

  it('lets the two one-door packages in at their door, and tests look behind it', () => {
    plant('core/geometry/clip.ts', "import { union } from 'clipper2-ts'")
    plant('core/sun/sunPosition.ts', "import * as suncalc from 'suncalc'")
    plant('tests/geometry/a.test.ts', "import { union } from 'clipper2-ts'")
    expect(checkArrows(folder)).toEqual({ modules: 3, violations: [] })
  })

  it('lets hosts and page use what is theirs', () => {
    plant('electron/a.ts', "import { readFile } from 'node:fs/promises'\nimport { b } from '../core/b'")
    plant('electron/main/a.ts', "import { app } from 'electron'")
    plant('renderer/a.tsx', "import { useState } from 'react'\nimport { b } from '../shared/b'\nconst c = <p>Don't</p>")
    expect(checkArrows(folder)).toEqual({ modules: 3, violations: [] })
  })
})
