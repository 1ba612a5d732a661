import {
  type HostAnswer,
  type HostApi,
  type HostMethod,
  hostMethodNames,
  readAnswer,
  readInput,
} from '../../shared/host'

/** True for the name of a method; nothing inherited counts. */
export function isHostMethod(name: string): name is HostMethod {
  return (hostMethodNames as readonly string[]).includes(name)
}

/**
 * Answers a call that came from a page. Null when what came is not what the method takes. An answer the contract does
 * not know would be our own bug: it throws.
 */
export async function answerCall<M extends HostMethod>(
  api: HostApi,
  name: M,
  raw: unknown,
): Promise<HostAnswer<unknown> | null> {
  const input = readInput(name, raw)
  if (input === null) return null
  const answer = readAnswer(name, await api[name](input))
  if (answer === null) throw new Error(`the answer of ${name} is not what the contract says`)
  return answer
}
