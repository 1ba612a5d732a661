import { type ParseArgsConfig, parseArgs } from 'node:util'
import { err, ok, type Result } from '../../shared/problem'

/** The options of a command by name, in the form of Node's `parseArgs`. */
export type OptionForms = NonNullable<ParseArgsConfig['options']>

const parse = <F extends OptionForms>(args: readonly string[], options: F) =>
  parseArgs({ args: [...args], allowPositionals: true, options })

export interface CommandLine<F extends OptionForms> {
  readonly file: string
  readonly values: ReturnType<typeof parse<F>>['values']
}

function wordFault(command: string, error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException
  const option = message.match(/--?[\w-]+/)?.[0] ?? ''
  return code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION'
    ? `${command} has no option “${option}”`
    : `${option}: a value is missing, or one is given that it does not take`
}

/** One file and the options of a command; else a sentence about what is wrong with the words typed. */
export function readOptions<F extends OptionForms>(
  command: string,
  args: readonly string[],
  options: F,
): Result<CommandLine<F>, string> {
  let parsed: ReturnType<typeof parse<F>>
  try {
    parsed = parse(args, options)
  } catch (error) {
    return err(wordFault(command, error))
  }
  const [file, ...more] = parsed.positionals
  return file === undefined || more.length > 0 ? err(`${command} takes one file`) : ok({ file, values: parsed.values })
}
