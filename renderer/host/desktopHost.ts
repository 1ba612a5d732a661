import { HostEvent, type HostMethod } from '../../shared/host'
import type { Host } from './host'
import { makeApi } from './makeApi'

/** What the preload script shows the page: one function for each method, and a way to hear. */
export interface DesktopBridge {
  readonly calls: { readonly [M in HostMethod]: (input: unknown) => Promise<unknown> }
  listen(hear: (event: unknown) => void): () => void
}

export function desktopHost(bridge: DesktopBridge): Host {
  return {
    api: makeApi((name, input) => bridge.calls[name](input)),
    listen: hear =>
      bridge.listen(raw => {
        const event = HostEvent.safeParse(raw)
        if (event.success) hear(event.data)
      }),
  }
}
