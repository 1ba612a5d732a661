/** The smallest page that speaks with its host, for tests to drive. */

import { connectHost } from '../../../renderer/host/connectHost'
import type { Host } from '../../../renderer/host/host'
import type { HostEvent } from '../../../shared/host'

export interface HostPage {
  readonly host: Host | null
  readonly heard: HostEvent[]
  readonly violations: string[]
}

declare global {
  interface Window {
    hostPage?: HostPage
  }
}

const heard: HostEvent[] = []
const violations: string[] = []
document.addEventListener('securitypolicyviolation', event =>
  violations.push(`${event.violatedDirective}: ${event.blockedURI}`),
)
const host = await connectHost()
host?.listen(event => heard.push(event))
window.hostPage = { host, heard, violations }
