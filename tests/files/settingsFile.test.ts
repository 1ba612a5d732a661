import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { nodeFiles } from '../../electron/files/fileLayer'
import { settingsFile } from '../../electron/files/settingsFile'
import { faultyFiles } from '../fault/faultyFiles'

it('the theme is remembered; what cannot be read or written is no fault', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'settings-'))
  try {
    const home = join(folder, 'data')
    expect(await settingsFile(nodeFiles, home).theme()).toBeNull()
    await settingsFile(nodeFiles, home).keepTheme('dark')
    expect(await settingsFile(nodeFiles, home).theme()).toBe('dark')
    const { layer } = faultyFiles(0, { code: 'ENOSPC', done: 'before', lasts: 'for good' })
    await settingsFile(layer, home).keepTheme('sunlight')
    expect(await settingsFile(nodeFiles, home).theme()).toBe('dark')
    writeFileSync(join(home, 'settings.json'), '{"format":"slabwright-settings","theme":"plaid"}')
    expect(await settingsFile(nodeFiles, home).theme()).toBeNull()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
