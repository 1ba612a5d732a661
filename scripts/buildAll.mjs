import { buildCli, buildDesktop, buildLoopback, buildPage } from './build.mjs'

const force = { force: true }
for (const build of [buildCli, buildLoopback, buildDesktop, buildPage]) console.log(await build(force))
