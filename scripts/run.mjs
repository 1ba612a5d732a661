#!/usr/bin/env node
import * as module from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const [command, ...rest] = process.argv.slice(2)
if (command === 'start') {
  const { start } = await import('./start.mjs')
  process.exitCode = await start(rest)
} else {
  const { buildCli, root } = await import('./build.mjs')
  const main = await buildCli()
  // Compiled code is kept from run to run where Node can (22.1 and newer); older ones compile it anew.
  module.enableCompileCache?.(join(root, 'dist/compiled'))
  process.argv[1] = main
  await import(pathToFileURL(main).href)
}
