import { expect, test } from 'playwright/test'
import { faultsInEveryTheme } from './axe'

test('a color too pale under one theme alone is found, and the theme chosen is put back', async ({ page }) => {
  await page.setContent(`<!doctype html><html lang="en" data-theme="sunlight"><head><title>Pale</title>
    <style>p { color: #111 } [data-theme=dark] p { color: #ddd }</style></head>
    <body><main><h1>Pale</h1><p>Under the dark theme nobody reads this.</p></main></body></html>`)
  const faults = await faultsInEveryTheme(page, 'pale')
  expect(faults).toHaveLength(1)
  expect(faults[0]).toMatch(/^pale, dark: color-contrast /)
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sunlight')
})
