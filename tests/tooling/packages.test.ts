import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { listLicenses } from '../../scripts/licenseList'
import { notices } from '../../scripts/notices.mjs'

describe('the license list', () => {
  it('covers every package of this project', () => {
    const { packages, unlisted } = listLicenses('.')
    expect(unlisted).toEqual([])
    expect(packages.length).toBeGreaterThan(100)
  })

  it('refuses a license that is not on it, wherever it is stated', () => {
    const folder = mkdtempSync(join(tmpdir(), 'licenses-'))
    try {
      const install = (name: string, stated: object) => {
        mkdirSync(join(folder, 'node_modules', name), { recursive: true })
        writeFileSync(join(folder, 'node_modules', name, 'package.json'), JSON.stringify(stated))
      }
      install('free', { license: 'MIT' })
      install('either', { license: '(GPL-3.0 OR MIT)' })
      install('both', { license: '(MIT AND GPL-3.0)' })
      install('copyleft', { license: 'GPL-3.0-only' })
      install('old', { licenses: [{ type: 'AGPL-3.0' }] })
      install('silent', {})
      const names = ['free', 'either', 'both', 'copyleft', 'old', 'silent', 'absent']
      const packages = Object.fromEntries([
        ['', {}],
        ...names.map(name => [
          `node_modules/${name}`,
          { version: '1.0.0', ...(name === 'absent' ? { license: 'SSPL-1.0' } : {}) },
        ]),
      ])
      writeFileSync(join(folder, 'package-lock.json'), JSON.stringify({ packages }))
      const report = listLicenses(folder)
      expect(report.packages).toHaveLength(7)
      expect(report.unlisted.map(({ name, license }) => `${name}: ${license}`)).toEqual([
        'absent: SSPL-1.0',
        'both: (MIT AND GPL-3.0)',
        'copyleft: GPL-3.0-only',
        'old: AGPL-3.0',
        'silent: none stated',
      ])
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('the packages', () => {
  const lock = readFileSync('package-lock.json', 'utf8')
  const own = JSON.parse(readFileSync('package.json', 'utf8')) as Record<string, Record<string, string>>

  it('are locked without download addresses', () => {
    expect(lock).not.toMatch(/"resolved"|\.tgz/)
  })

  it('carry a checksum each', () => {
    const { packages } = JSON.parse(lock) as { packages: Record<string, { integrity?: string }> }
    const bare = Object.entries(packages).filter(([path, { integrity }]) => path !== '' && integrity === undefined)
    expect(bare).toEqual([])
  })

  it('are pinned to exact versions', () => {
    const versions = Object.values({ ...own.dependencies, ...own.devDependencies })
    expect(versions.length).toBeGreaterThan(20)
    for (const version of versions) expect(version).toMatch(/^\d+\.\d+\.\d+$/)
  })
})

describe('the notices of a packed program', () => {
  it('carry the license of every package that ships, and of what a package brings along', () => {
    const text = notices('.')
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      dependencies: Record<string, string>
    }
    for (const [name, version] of Object.entries(dependencies)) expect(text).toContain(`${name} ${version}\n`)
    // The decoder of JPEG 2000 lies beside the page with the license of its own.
    const decoder = readFileSync('node_modules/pdfjs-dist/wasm/LICENSE_OPENJPEG', 'utf8').trim()
    expect(decoder).toContain('BSD License')
    expect(text).toContain(decoder)
  })
})
