import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { addUp, countPlaywright, countSecondTries, countVitest, type TestCount } from './testCounts'

const browserReport = 'test-results/browser.json'

/**
 * Everything that must hold: checks, bundles, tests in Node, tests in a browser. Ends with `N passed, N failed` alone
 * on a line, added up from the reports the runners wrote; a step that fails without a report counts as one failure.
 */
function runAll(): number {
  rmSync('test-results', { recursive: true, force: true })
  mkdirSync('test-results', { recursive: true })
  const counts: TestCount[] = [
    step('check', ['npm', 'run', '-s', 'check']),
    step('build', ['node', 'scripts/buildAll.mjs']),
    suite('vitest', ['npx', 'vitest', 'run', '--reporter=default', '--reporter=json'], countVitest),
    suite('browser', ['npx', 'playwright', 'test'], countPlaywright),
  ]
  const { passed, failed } = addUp(counts)
  const secondTries = existsSync(browserReport) ? countSecondTries(readReport(browserReport)) : 0
  if (secondTries > 0) console.log(`\nnote: ${secondTries} browser tests passed only at their second try (see above)`)
  console.log(`\n${passed} passed, ${failed} failed`)
  return passed > 0 && failed === 0 ? 0 : 1
}

function step(name: string, command: readonly string[]): TestCount {
  return run(name, command) === 0 ? { passed: 0, failed: 0 } : { passed: 0, failed: 1 }
}

function suite(name: string, command: readonly string[], count: (report: unknown) => TestCount): TestCount {
  const report = `test-results/${name}.json`
  const code = run(name, command.includes('vitest') ? [...command, `--outputFile.json=${report}`] : command, report)
  const { passed, failed } = existsSync(report) ? count(readReport(report)) : { passed: 0, failed: 0 }
  // No test seen, or an exit code no counted failure explains, is a failure of the run itself.
  const unexplained = passed + failed === 0 || (code !== 0 && failed === 0)
  return { passed, failed: failed + (unexplained ? 1 : 0) }
}

function readReport(path: string): unknown {
  return JSON.parse(readFileSync(path, 'utf8'))
}

function run(name: string, [program = '', ...rest]: readonly string[], report?: string): number {
  console.log(`\n── ${name} ──`)
  const { status } = spawnSync(program, rest, {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: report === undefined ? process.env : { ...process.env, PLAYWRIGHT_JSON_OUTPUT_FILE: report },
  })
  if (status !== 0) console.error(`${name}: failed`)
  return status ?? 1
}

process.exitCode = runAll()
