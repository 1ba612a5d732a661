/** Saves generation after generation of a site of 3 MB until it is killed, and says each time what was reported. */
import { readFileSync, writeSync } from 'node:fs'
import { nodeFiles } from '../../electron/files/fileLayer'
import { replaceFile } from '../../electron/files/replaceFile'

const [path = '', basePath = '', first = '0', count = 'Infinity'] = process.argv.slice(2)
const base = readFileSync(basePath, 'utf8')
writeSync(1, 'ready\n')
for (let generation = Number(first); generation < Number(first) + Number(count); generation += 1) {
  const text = base.replace('Generation 0', `Generation ${generation}`)
  const report = await replaceFile(nodeFiles, path, Buffer.from(text))
  writeSync(1, `${generation} ${report.replaced ? 'saved' : report.reason}\n`)
}
