import { defineConfig } from 'playwright/test'
import { browserFlags, findBrowser } from './scripts/findBrowser'

const { path, env } = findBrowser()
Object.assign(process.env, env)

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results/browser',
  fullyParallel: true,
  workers: 2,
  forbidOnly: true,
  // A journey that passes at its second try is named at the end of the run; one that fails twice is a failure.
  retries: 1,
  // Painting is done by the processor here and on CI: a journey may take several times as long as on a desk.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: [['list'], ['json']],
  use: {
    browserName: 'chromium',
    headless: true,
    launchOptions: { executablePath: path, args: [...browserFlags] },
  },
})
