/** The planner in this machine's browser: serves until it is told to stop, or nobody has been there for a while. */
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { nodeFiles } from '../files/fileLayer'
import { siteFiles } from '../files/siteFiles'
import { hostApi } from '../host/hostApi'
import { localDay, localZone } from '../host/localDay'
import { dataFolder, workingFolder } from '../host/userFolders'
import { pageFiles } from '../page/pageFiles'
import { loopbackHost } from './loopbackHost'
import { openBrowser } from './openBrowser'

const { values } = parseArgs({
  options: {
    folder: { type: 'string' },
    data: { type: 'string' },
    version: { type: 'string', default: '0' },
    quiet: { type: 'boolean', default: false },
  },
})
const pageFolder = resolve(dirname(fileURLToPath(import.meta.url)), '..', 'renderer')
const folder = values.folder === undefined ? workingFolder() : resolve(values.folder)
const program = siteFiles({
  layer: nodeFiles,
  folder,
  dataFolder: values.data === undefined ? dataFolder() : resolve(values.data),
  samplesFolder: join(pageFolder, 'samples'),
  now: () => new Date(),
  dayOf: localDay,
  confined: true,
})
const host = await loopbackHost({
  page: pageFiles(pageFolder),
  openWindow() {
    const files = program.openWindow()
    const api = hostApi({
      files,
      layer: nodeFiles,
      appVersion: values.version,
      folder,
      today: () => localDay(new Date()),
      zone: localZone(),
    })
    return { api, files }
  },
  onBug: (call, error) => console.error(`${call} failed: ${error instanceof Error ? error.message : 'unknown'}`),
})
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void host.close())
const isShown = values.quiet ? false : await openBrowser(host.addressForOne())
console.log(
  isShown
    ? `The planner is open in your browser. For another window: ${host.address}`
    : `Open this address in a browser on this machine: ${host.address}`,
)
console.log(`Sites are kept in ${folder}. Ctrl-C ends the planner.`)
await host.ended
