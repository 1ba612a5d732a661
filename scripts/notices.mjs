import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const isText = name => /^(?:licen[cs]e|copying|notice)/i.test(name)

/** License files of a package: at its top, and one folder down, where it carries the work of others. */
function texts(folder) {
  const inner = readdirSync(folder, { withFileTypes: true })
    .filter(entry => entry.isDirectory() && entry.name !== 'node_modules')
    .map(({ name }) => join(folder, name))
  return [folder, ...inner].flatMap(each =>
    readdirSync(each, { withFileTypes: true })
      .filter(entry => entry.isFile() && isText(entry.name))
      .map(({ name }) => readFileSync(join(each, name), 'utf8').trim()),
  )
}

/** The license texts of every package under `root` that may be part of the bundles, as one text. */
export function notices(root) {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'))
  return Object.entries(packages)
    .filter(([path, { dev }]) => path !== '' && dev !== true && existsSync(join(root, path)))
    .map(([path, { version }]) => [`${path.replace(/^.*node_modules\//, '')} ${version}`, ...texts(join(root, path))])
    .map(parts => parts.join('\n\n'))
    .join(`\n\n${'—'.repeat(40)}\n\n`)
}
