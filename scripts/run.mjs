#!/usr/bin/env node
import { pathToFileURL } from 'node:url'
import { buildCli } from './build.mjs'

const main = await buildCli()
process.argv[1] = main
await import(pathToFileURL(main).href)
