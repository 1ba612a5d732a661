import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron } from 'playwright'
import { expect, test } from 'playwright/test'
import { buildDesktop, buildPage } from '../../scripts/build.mjs'
import { windowOnDisk } from '../../scripts/windowOnDisk.mjs'

test('the desktop window starts and speaks with its page, where its program is on disk', async () => {
  const program = windowOnDisk()
  const isSeen = process.platform !== 'linux' || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY)
  if (program === null || !isSeen) {
    const note = program === null ? 'binary absent: nothing was started' : 'no display: nothing was started'
    test.info().annotations.push({ type: 'note', description: note })
    console.log(`note: ${note}`)
    return
  }
  const folder = mkdtempSync(join(tmpdir(), 'window-'))
  await buildPage()
  const app = await _electron.launch({
    executablePath: program,
    args: [
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      await buildDesktop(),
      '--folder',
      folder,
      `--user-data-dir=${join(folder, 'data')}`,
    ],
  })
  try {
    const page = await app.firstWindow()
    await page.waitForLoadState('load')
    expect(page.url()).toBe('slabwright://app/index.html')
    expect(await page.evaluate(() => Object.keys(window.slabwright ?? {}))).toEqual(['calls', 'listen'])
    expect(await page.evaluate(() => 'require' in window || 'process' in window)).toBe(false)
  } finally {
    await app.close()
    rmSync(folder, { recursive: true, force: true })
  }
})
