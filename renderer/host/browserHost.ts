import type { HostEvent } from '../../shared/host'
import type { Host } from './host'
import { makeApi, noAnswer } from './makeApi'

const tokenKey = 'slabwright-token'
const retryMs = [200, 1_000, 3_000] as const

/** Takes the token out of the address bar, where it would be copied along, and keeps it for this tab. */
function takeToken(): string | null {
  const given = location.hash.slice(1)
  if (given !== '') {
    sessionStorage.setItem(tokenKey, given)
    history.replaceState(null, '', location.pathname)
  }
  return sessionStorage.getItem(tokenKey)
}

/** The loopback host this page came from; null where the token is missing or refused. */
export async function browserHost(): Promise<Host | null> {
  let token = takeToken()
  if (token === null) return null
  const hearers = new Set<(event: HostEvent) => void>()
  let windowId: string | null = null

  const post = (name: string, body: string) =>
    fetch(`/api/${name}`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        Authorization: `Bearer ${token}`,
        ...(windowId === null ? {} : { 'X-Slabwright-Window': windowId }),
      },
      body,
      credentials: 'omit',
      redirect: 'error',
    })

  /** Opens the line that tells the host this page is there. */
  const openLine = async (): Promise<ReadableStreamDefaultReader<Uint8Array> | null> => {
    const response = await post('stay', '{}').catch(() => null)
    const reader = response?.ok === true ? (response.body?.getReader() ?? null) : null
    if (reader === null) return null
    const first = await reader.read().catch(() => null)
    if (first?.value === undefined) return null
    const line = JSON.parse(new TextDecoder().decode(first.value)) as { windowId: string; token: string }
    // A host that was started anew does not know this page's documents.
    if (windowId !== null && line.windowId !== windowId) return null
    windowId = line.windowId
    // The key in the address may have been good for one window only; this one is good for this tab.
    token = line.token
    sessionStorage.setItem(tokenKey, token)
    return reader
  }
  const follow = async (reader: ReadableStreamDefaultReader<Uint8Array>): Promise<void> => {
    let line: typeof reader | null = reader
    while (line !== null) {
      while ((await line.read().catch(() => ({ done: true }))).done !== true);
      line = null
      for (const pauseMs of retryMs) {
        await new Promise(resolve => setTimeout(resolve, pauseMs))
        line = await openLine()
        if (line !== null) break
      }
    }
    for (const hear of hearers) hear({ kind: 'lost' })
  }

  const line = await openLine()
  if (line === null) return null
  void follow(line)
  return {
    api: makeApi(async (name, input) => {
      const response = await post(name, JSON.stringify(input)).catch(() => null)
      if (response === null || response.status === 401 || response.status === 409) return noAnswer
      if (!response.ok) throw new Error(`the host refused ${name}: ${response.status}`)
      return response.json()
    }),
    listen(hear) {
      hearers.add(hear)
      return () => hearers.delete(hear)
    },
  }
}
