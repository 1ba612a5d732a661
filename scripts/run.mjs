#!/usr/bin/env node
import { pathToFileURL } from 'node:url'

const [command, ...rest] = process.argv.slice(2)
if (command === 'start') {
  const { start } = await import('./start.mjs')
  process.exitCode = await start(rest)
} else {
  const { buildCli } = await import('./build.mjs')
  const main = await buildCli()
  process.argv[1] = main
  await import(pathToFileURL(main).href)
}
