import { buildCli } from './build.mjs'

console.log(await buildCli({ force: true }))
