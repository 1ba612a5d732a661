import { randomBytes } from 'node:crypto'
import { once } from 'node:events'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { HostApi } from '../../shared/host'
import { limits } from '../../shared/limits'
import type { WindowFiles } from '../files/windowFiles'
import { answerCall, isHostMethod } from '../host/answerCall'
import { guardHeaders, type pageFiles } from '../page/pageFiles'
import { carriesKey, guardCall, guardHost, type Refusal } from './guardRequest'

export interface LoopbackOptions {
  readonly page: ReturnType<typeof pageFiles>
  readonly openWindow: () => { readonly api: HostApi; readonly files: WindowFiles }
  /** So long after the last window has gone, the program ends. */
  readonly idleMs?: number
  /** A page that lost its line may take it up again within this time. */
  readonly graceMs?: number
  /** A client must have said everything within this time. */
  readonly patienceMs?: number
  /** Told about our own bugs, by method name only: never what a user wrote. */
  readonly onBug?: (method: string, error: unknown) => void
}

export interface LoopbackHost {
  /** The address to open, token included: for the user's own eyes. */
  readonly address: string
  /**
   * An address that opens one window and then no other: for the command line of a browser, which everyone on the
   * machine can read.
   */
  addressForOne(): string
  /** Resolves when the program has ended, by `close` or by itself. */
  readonly ended: Promise<void>
  close(): Promise<void>
}

interface PageWindow {
  readonly api: HostApi
  readonly files: WindowFiles
  line: ServerResponse | null
  leaving: NodeJS.Timeout | null
}

/** A text of a site as JSON: every character may need escaping once. */
const mostBytes = 2 * limits.fileBytes + 64 * 1024
const mostWindows = 16
const mostConnections = 64

/** Serves the page and its calls to the browser of this machine, and to nobody else. */
export async function loopbackHost({
  page,
  openWindow,
  idleMs = 30 * 60_000,
  graceMs = 5_000,
  patienceMs = 15_000,
  onBug = () => {},
}: LoopbackOptions): Promise<LoopbackHost> {
  const token = randomBytes(32).toString('base64url')
  const onceKeys = new Set<string>()
  const windows = new Map<string, PageWindow>()
  let origin = ''
  let idle: NodeJS.Timeout | null = null

  const watchIdle = () => {
    if (idle !== null) clearTimeout(idle)
    idle = windows.size > 0 ? null : setTimeout(() => void close(), idleMs)
    idle?.unref()
  }
  const dropWindow = async (windowId: string) => {
    const window = windows.get(windowId)
    if (window === undefined) return
    windows.delete(windowId)
    if (window.leaving !== null) clearTimeout(window.leaving)
    watchIdle()
    await window.files.leave()
  }

  const send = (response: ServerResponse, status: number, type: string, body: string | Uint8Array) => {
    response.writeHead(status, { ...guardHeaders, 'Content-Type': type, 'Content-Length': Buffer.byteLength(body) })
    response.end(body)
  }
  const refuse = (response: ServerResponse, { status, why }: Refusal) => {
    // What the client still wants to send is not waited for.
    response.setHeader('Connection', 'close')
    send(response, status, 'text/plain; charset=utf-8', why)
  }

  /** A line that stays open as long as the page does: when it breaks for good, the window is gone. */
  const holdLine = (request: IncomingMessage, response: ServerResponse) => {
    const given = request.headers['x-slabwright-window']
    const known = typeof given === 'string' ? windows.get(given) : undefined
    if (known === undefined && windows.size >= mostWindows)
      return refuse(response, { status: 429, why: 'Too many windows.' })
    const windowId = known === undefined ? randomBytes(16).toString('base64url') : String(given)
    const window: PageWindow = known ?? { ...openWindow(), line: null, leaving: null }
    if (window.leaving !== null) clearTimeout(window.leaving)
    window.leaving = null
    window.line?.end()
    window.line = response
    windows.set(windowId, window)
    watchIdle()
    response.on('close', () => {
      if (window.line !== response) return
      window.line = null
      window.leaving = setTimeout(() => void dropWindow(windowId), graceMs)
    })
    response.writeHead(200, { ...guardHeaders, 'Content-Type': 'application/x-ndjson' })
    response.write(`${JSON.stringify({ windowId, token })}\n`)
  }

  const call = async (name: string, request: IncomingMessage, response: ServerResponse) => {
    const refusal = guardCall(request, origin, name === 'stay' ? [token, ...onceKeys] : [token], mostBytes)
    if (refusal !== null) return refuse(response, refusal)
    const body = await readBody(request)
    if (body === null) return refuse(response, { status: 400, why: 'Not what was announced.' })
    if (name === 'stay') {
      for (const key of onceKeys) if (carriesKey(request, key)) onceKeys.delete(key)
      return holdLine(request, response)
    }
    const windowId = request.headers['x-slabwright-window']
    const window = typeof windowId === 'string' ? windows.get(windowId) : undefined
    if (window === undefined) return refuse(response, { status: 409, why: 'This window is not known.' })
    if (!isHostMethod(name)) return refuse(response, { status: 404, why: 'No such call.' })
    const raw = parse(body)
    const answer = raw === undefined ? null : await answerCall(window.api, name, raw)
    if (answer === null) return refuse(response, { status: 400, why: 'Not what this call takes.' })
    send(response, 200, 'application/json; charset=utf-8', JSON.stringify(answer))
  }

  const respond = async (request: IncomingMessage, response: ServerResponse) => {
    const refusal = guardHost(request, new URL(origin).host)
    if (refusal !== null) return refuse(response, refusal)
    const path = request.url ?? ''
    if (path.startsWith('/api/')) return call(path.slice('/api/'.length), request, response)
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return refuse(response, { status: 405, why: 'Pages are fetched.' })
    const { status, headers, body } = page.answer(path)
    response.writeHead(status, { ...headers, 'Content-Length': body.byteLength })
    response.end(request.method === 'HEAD' ? undefined : body)
  }

  const server = createServer(
    {
      headersTimeout: Math.min(patienceMs, 5_000),
      requestTimeout: patienceMs,
      connectionsCheckingInterval: Math.min(patienceMs, 1_000),
      keepAliveTimeout: 5_000,
      maxHeaderSize: 8 * 1024,
      insecureHTTPParser: false,
    },
    (request, response) => {
      respond(request, response).catch((error: unknown) => {
        onBug((request.url ?? '').slice(0, 40), error)
        if (response.headersSent) response.destroy()
        else refuse(response, { status: 500, why: 'Something went wrong in this program.' })
      })
    },
  )
  server.maxConnections = mostConnections
  server.on('upgrade', (_, socket) => socket.destroy())
  server.on('connect', (_, socket) => socket.destroy())
  server.on('checkContinue', (request: IncomingMessage, response: ServerResponse) => {
    refuse(response, { status: 417, why: 'Send it at once.' })
    request.destroy()
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  const ended = once(server, 'close').then(() => {})

  async function close(): Promise<void> {
    if (idle !== null) clearTimeout(idle)
    server.close()
    await Promise.all([...windows.keys()].map(dropWindow))
    server.closeAllConnections()
    await ended
  }
  return {
    address: `${origin}/#${token}`,
    addressForOne() {
      const key = randomBytes(32).toString('base64url')
      onceKeys.add(key)
      return `${origin}/#${key}`
    },
    ended,
    close,
  }
}

/** The body, exactly as long as announced; null when it broke off. */
async function readBody(request: IncomingMessage): Promise<Buffer | null> {
  const chunks: Buffer[] = []
  try {
    for await (const chunk of request) chunks.push(chunk as Buffer)
  } catch {
    return null
  }
  const body = Buffer.concat(chunks)
  return body.length === Number(request.headers['content-length']) ? body : null
}

function parse(body: Buffer): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body))
  } catch {
    return undefined
  }
}
