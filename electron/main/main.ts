import { join } from 'node:path'
import { startDesktop } from './startDesktop'

startDesktop({
  pageFolder: join(__dirname, '..', 'renderer'),
  samplesFolder: join(__dirname, '..', 'renderer', 'samples'),
  preload: join(__dirname, 'preload.cjs'),
  argv: process.argv,
})
