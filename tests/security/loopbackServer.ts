import { mkdirSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { join } from 'node:path'
import { nodeFiles } from '../../electron/files/fileLayer'
import { hostApi } from '../../electron/host/hostApi'
import { type LoopbackHost, type LoopbackOptions, loopbackHost } from '../../electron/loopback/loopbackHost'
import { pageFiles } from '../../electron/page/pageFiles'
import { type HostFolders, hostFolders } from '../fault/hostFolders'

export interface LoopbackServer {
  readonly disk: HostFolders
  readonly host: LoopbackHost
  readonly origin: string
  readonly port: number
  readonly token: string
  readonly bugs: readonly string[]
  /** A well-formed call, to be changed by what is passed. */
  call(name: string, input?: unknown, change?: RequestInit & { headers?: Record<string, string> }): Promise<Response>
  /** Opens a window; its id goes with every later call. */
  stay(): Promise<{ windowId: string; leave(): void }>
  stop(): Promise<void>
}

const pageHtml =
  '<!doctype html><html><head><meta property="csp-nonce" nonce="__CSP_NONCE__"></head><body>page</body></html>'

/** The loopback host over folders of its own and a page of two files. */
export async function loopbackServer(options: Partial<LoopbackOptions> = {}): Promise<LoopbackServer> {
  const disk = hostFolders()
  const pageFolder = join(disk.root, 'page')
  mkdirSync(join(pageFolder, 'assets'), { recursive: true })
  writeFileSync(join(pageFolder, 'index.html'), pageHtml)
  writeFileSync(join(pageFolder, 'assets', 'page.js'), 'export {}')
  writeFileSync(join(disk.root, 'outside.js'), 'secret')
  const program = disk.start({ confined: true })
  const bugs: string[] = []
  const host = await loopbackHost({
    page: pageFiles(pageFolder),
    openWindow: () => {
      const files = program.openWindow()
      const api = hostApi({
        files,
        layer: nodeFiles,
        appVersion: '0.0.0',
        folder: 'documents',
        today: () => '2026-07-14',
        zone: 'America/Boise',
      })
      return { api, files }
    },
    onBug: method => bugs.push(method),
    ...options,
  })
  const { origin, port, hash } = new URL(host.address)
  const token = hash.slice(1)
  let windowId: string | null = null
  const call: LoopbackServer['call'] = (name, input = {}, change = {}) =>
    fetch(`${origin}/api/${name}`, {
      method: 'POST',
      body: JSON.stringify(input),
      ...change,
      headers: {
        Origin: origin,
        Authorization: `Bearer ${token}`,
        'Content-Type': 'application/json',
        ...(windowId === null ? {} : { 'X-Slabwright-Window': windowId }),
        ...change.headers,
      },
    })
  return {
    disk,
    host,
    origin,
    port: Number(port),
    token,
    bugs,
    call,
    async stay() {
      const line = new AbortController()
      const response = await call('stay', {}, { signal: line.signal })
      const first = await response.body?.getReader().read()
      const opened = JSON.parse(new TextDecoder().decode(first?.value)) as { windowId: string }
      windowId = opened.windowId
      return { windowId: opened.windowId, leave: () => line.abort() }
    },
    async stop() {
      await host.close()
      disk.remove()
    },
  }
}

/** Sends bytes as they are and gives all that comes back, until the other side hangs up or `waitMs` have passed. */
export function sendRaw(port: number, bytes: string, waitMs = 3_000): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes))
    let answer = ''
    const timer = setTimeout(() => socket.destroy(), waitMs)
    socket.setEncoding('latin1').on('data', chunk => {
      answer += chunk
    })
    socket.on('error', error => (answer === '' ? reject(error) : undefined))
    socket.on('close', () => {
      clearTimeout(timer)
      resolve(answer)
    })
  })
}
