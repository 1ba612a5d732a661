import { type HostApi, type HostMethod, hostMethodNames, readAnswer } from '../../shared/host'

/** An answer that did not come, as opposed to one that says no. */
export const noAnswer = Symbol('no answer')

/** The calls of the contract over a transport; what comes back is checked before anyone sees it. */
export function makeApi(ask: (name: HostMethod, input: unknown) => Promise<unknown>): HostApi {
  const call = async (name: HostMethod, input: unknown) => {
    const raw = await ask(name, input)
    if (raw === noAnswer) return { ok: false, error: { reason: 'hostGone' } }
    const answer = readAnswer(name, raw)
    if (answer === null) throw new Error(`the answer of ${name} is not what the contract says`)
    return answer
  }
  return Object.fromEntries(
    hostMethodNames.map(name => [name, (input: unknown) => call(name, input)]),
  ) as unknown as HostApi
}
