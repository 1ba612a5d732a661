import { randomBytes } from 'node:crypto'
import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.json': 'application/json',
}

/** The policy the hosts send: nothing but the page's own files, styles by nonce, no code from text. */
const policy = (nonce: string): string =>
  [
    "default-src 'none'",
    `script-src 'self' 'nonce-${nonce}'`,
    `style-src 'self' 'nonce-${nonce}'`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')

export interface ServedPage {
  readonly address: string
  stop(): Promise<void>
}

/** Serves a built page from the loopback address with a strict policy and a fresh nonce per load. */
export async function servePage(
  folder = fileURLToPath(new URL('../../../dist/renderer/', import.meta.url)),
): Promise<ServedPage> {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const file = join(folder, path === '/' ? 'index.html' : path)
    if (!file.startsWith(folder) || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end()
      return
    }
    const type = types[extname(file)] ?? 'application/octet-stream'
    if (extname(file) !== '.html') {
      response.writeHead(200, { 'content-type': type }).end(readFileSync(file))
      return
    }
    const nonce = randomBytes(16).toString('base64')
    response
      .writeHead(200, { 'content-type': type, 'content-security-policy': policy(nonce) })
      .end(readFileSync(file, 'utf8').replaceAll('__CSP_NONCE__', nonce))
  })
  await new Promise<void>(resolve => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const { port } = server.address() as AddressInfo
  return {
    address: `http://127.0.0.1:${port}/`,
    stop: () =>
      new Promise(resolve => {
        server.closeAllConnections()
        server.close(() => resolve())
      }),
  }
}
