import { createHash, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

export interface Refusal {
  readonly status: number
  readonly why: string
}

const refuse = (status: number, why: string): Refusal => ({ status, why })

/** Why a request of any kind is not for us, or null. An address that is not ours means a name was bent to reach us. */
export function guardHost(request: IncomingMessage, host: string): Refusal | null {
  const given = request.rawHeaders.filter((_, index) => index % 2 === 0).filter(name => name.toLowerCase() === 'host')
  return given.length === 1 && request.headers.host === host ? null : refuse(421, 'Not the address of this program.')
}

/** Why a call may not be answered, or null: only our own page, holding one of the keys, may call. */
export function guardCall(
  request: IncomingMessage,
  origin: string,
  keys: readonly string[],
  mostBytes: number,
): Refusal | null {
  if (request.method !== 'POST') return refuse(405, 'Calls are posted.')
  if (request.headers.origin !== origin) return refuse(403, 'Not from this page.')
  const site = request.headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin') return refuse(403, 'Not from this page.')
  if (!keys.some(key => carriesKey(request, key))) return refuse(401, 'Open the address the program printed.')
  if (request.headers['content-type'] !== 'application/json') return refuse(415, 'Calls carry JSON.')
  if (request.headers['content-encoding'] !== undefined) return refuse(415, 'Calls are not compressed.')
  const length = request.headers['content-length']
  if (request.headers['transfer-encoding'] !== undefined || length === undefined) return refuse(411, 'Say the length.')
  if (!/^\d{1,12}$/.test(length)) return refuse(400, 'Not a length.')
  return Number(length) > mostBytes ? refuse(413, 'Too large.') : null
}

/** Compares digests, which have one length, in a time that says nothing about where they differ. */
export function carriesKey({ headers }: IncomingMessage, key: string): boolean {
  const given = headers.authorization?.startsWith('Bearer ') ? headers.authorization.slice('Bearer '.length) : ''
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(given), digest(key))
}
