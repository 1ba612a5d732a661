/** The command line: `plan FILE`, `day FILE` and `check FILE`. Exit 0 fine, 1 a stop-problem, 2 bad usage or unreadable file. */
import { checkCommand } from './checkCommand'
import { dayCommand } from './dayCommand'
import { planCommand } from './planCommand'
import { usage } from './usage'

const commands = new Map([
  ['plan', planCommand],
  ['day', dayCommand],
  ['check', checkCommand],
])

const [name, ...rest] = process.argv.slice(2)
const command = commands.get(name ?? '')
if (name === 'help' || [name, ...rest].includes('--help')) process.stdout.write(usage)
else if (command) process.exitCode = await command(rest)
else {
  process.stderr.write(`${name === undefined ? 'no command given' : `unknown command “${name}”`}\n${usage}`)
  process.exitCode = 2
}
