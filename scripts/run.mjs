#!/usr/bin/env node
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildCli, root } from './build.mjs'

const main = await buildCli()
const [command, ...rest] = process.argv.slice(2)
process.argv.splice(
  1,
  process.argv.length,
  main,
  ...(command === 'start'
    ? ['plan', join(root, 'samples', 'l-patio.slabwright.json'), ...rest]
    : command === undefined
      ? []
      : [command, ...rest]),
)
await import(pathToFileURL(main).href)
