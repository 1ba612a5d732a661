import { resolve } from 'node:path'
import { checkArrows } from './importArrows'

const root = resolve(process.argv[2] ?? '.')
const { modules, violations } = checkArrows(root)
for (const { file, line, what } of violations) console.error(`${file}:${line}: ${what}`)
console.log(`import arrows: ${modules} modules, ${violations.length} violations`)
if (modules === 0) console.error('No modules were seen: the check proves nothing.')
process.exitCode = modules === 0 || violations.length > 0 ? 1 : 0
