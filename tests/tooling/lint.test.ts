import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lint-'))
  cpSync('biome.json', join(folder, 'biome.json'))
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'), 'junction')
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function lint(files: Readonly<Record<string, string>>): { status: number | null; output: string } {
  for (const [file, source] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true })
    writeFileSync(join(folder, file), source)
  }
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [resolve('node_modules/@biomejs/biome/bin/biome'), 'lint', '--error-on-warnings', '.'],
    { cwd: folder, encoding: 'utf8' },
  )
  return { status, output: stdout + stderr }
}

describe('the lint rules', () => {
  it('pass clean files', () => {
    expect(lint({ 'core/a.ts': 'export const a = 1\n' }).status).toBe(0)
  })

  it.each([
    [
      'noImportCycles',
      {
        'core/a.ts': "import { b } from './b'\nexport const a = () => b\n",
        'core/b.ts': "import { a } from './a'\nexport const b = () => a\n",
      },
    ],
    [
      'noFloatingPromises',
      { 'electron/a.ts': 'async function save(): Promise<void> {}\nexport function f(): void {\n  save()\n}\n' },
    ],
    ['noRestrictedImports', { 'core/a.ts': "import { readFileSync } from 'node:fs'\nexport const a = readFileSync\n" }],
    ['noConsole', { 'shared/a.ts': "console.log('x')\nexport const a = 1\n" }],
    ['noBarrelFile', { 'core/index.ts': "export { a } from './a'\n", 'core/a.ts': 'export const a = 1\n' }],
    [
      'noUnusedImports',
      { 'core/a.ts': "import { b } from './b'\nexport const a = 1\n", 'core/b.ts': 'export const b = 1\n' },
    ],
  ])('%s catches a planted violation', (rule, files) => {
    const { status, output } = lint(files)
    expect(output).toContain(rule)
    expect(status).toBe(1)
  })
})
