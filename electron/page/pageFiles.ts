import { randomBytes } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join, sep } from 'node:path'

export interface PageAnswer {
  readonly status: number
  readonly headers: Readonly<Record<string, string>>
  readonly body: Uint8Array
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
}

/** Stands in the built page wherever a nonce belongs; each load gets a fresh one. */
const noncePlaceholder = '__CSP_NONCE__'

/** What may run and load in the page: its own files, and styles that carry the nonce of this load. */
export function pagePolicy(nonce: string): string {
  return [
    "default-src 'none'",
    `script-src 'self' 'nonce-${nonce}'`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ')
}

/** Sent with everything. */
export const guardHeaders: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), payment=(), display-capture=()',
  'Cache-Control': 'no-store',
}

/**
 * The files of the built page, read once and looked up by name: a request never becomes a path, so none can lead out
 * of the folder. `answer` takes the path of an address as it came.
 */
export function pageFiles(folder: string): { answer(path: string): PageAnswer } {
  const files = new Map<string, { type: string; body: Buffer }>()
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = types[extname(entry.name)]
    if (!entry.isFile() || type === undefined) continue
    const path = join(entry.parentPath, entry.name)
    files.set(
      `/${path
        .slice(folder.length + 1)
        .split(sep)
        .join('/')}`,
      { type, body: readFileSync(path) },
    )
  }
  return {
    answer(path) {
      const file = files.get(path === '/' ? '/index.html' : path)
      const nonce = randomBytes(16).toString('base64')
      const headers = { ...guardHeaders, 'Content-Security-Policy': pagePolicy(nonce) }
      if (file === undefined) {
        return {
          status: 404,
          headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' },
          body: Buffer.from('Not found.'),
        }
      }
      const body = file.type.startsWith('text/html')
        ? Buffer.from(file.body.toString('utf8').replaceAll(noncePlaceholder, nonce))
        : file.body
      return { status: 200, headers: { ...headers, 'Content-Type': file.type }, body }
    },
  }
}
