/** The command line: `plan FILE`, `day FILE` and `check FILE`. Exit 0 fine, 1 a stop-problem, 2 bad usage or unreadable file. */
import { usage } from './usage'

/** Each read when it is asked for. */
const commands: ReadonlyMap<string, () => Promise<(args: readonly string[]) => Promise<number>>> = new Map([
  ['plan', async () => (await import('./planCommand')).planCommand],
  ['day', async () => (await import('./dayCommand')).dayCommand],
  ['check', async () => (await import('./checkCommand')).checkCommand],
])

const [name, ...rest] = process.argv.slice(2)
const command = commands.get(name ?? '')
if (name === 'help' || [name, ...rest].includes('--help')) process.stdout.write(usage)
else if (command) process.exitCode = await (await command())(rest)
else {
  process.stderr.write(`${name === undefined ? 'no command given' : `unknown command “${name}”`}\n${usage}`)
  process.exitCode = 2
}
