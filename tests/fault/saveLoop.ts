/**
 * Saves generation after generation of a site of 3 MB, in several files at once, until it is killed, and says each
 * time what was reported. Arguments: the file to start from, how many generations, then for each file its path and
 * its first generation.
 */
import { readFileSync, writeSync } from 'node:fs'
import { nodeFiles } from '../../electron/files/fileLayer'
import { replaceFile } from '../../electron/files/replaceFile'

const [basePath = '', count = 'Infinity', ...files] = process.argv.slice(2)
const base = readFileSync(basePath, 'utf8')

async function keepSaving(file: number, path: string, first: number): Promise<void> {
  for (let generation = first; generation < first + Number(count); generation += 1) {
    const text = base.replace('Generation 0', `Generation ${generation}`)
    const report = await replaceFile(nodeFiles, path, Buffer.from(text))
    writeSync(1, `${file} ${generation} ${report.replaced ? 'saved' : report.reason}\n`)
  }
}

writeSync(1, 'ready\n')
await Promise.all(files.flatMap((path, at) => (at % 2 === 0 ? [keepSaving(at / 2, path, Number(files[at + 1]))] : [])))
