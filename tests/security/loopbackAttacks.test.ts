import { once } from 'node:events'
import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { siteText } from '../fault/hostFolders'
import { type LoopbackServer, loopbackServer, sendRaw } from './loopbackServer'

const one = siteText('One')
const two = siteText('Two')

let server: LoopbackServer
let windowId: string
beforeAll(async () => {
  server = await loopbackServer({ patienceMs: 1_000 })
  windowId = (await server.stay()).windowId
})
afterAll(() => server.stop())
beforeEach(() => {
  server.disk.put('yard.slabwright.json', one)
})

const head = (lines: readonly string[]) => `${lines.join('\r\n')}\r\n\r\n`
const goodHead = (body: string, change: Readonly<Record<string, string | null>> = {}) => {
  const fields: Record<string, string | null> = {
    Host: `127.0.0.1:${server.port}`,
    Origin: server.origin,
    Authorization: `Bearer ${server.token}`,
    'Content-Type': 'application/json',
    'Content-Length': String(body.length),
    'X-Slabwright-Window': windowId,
    Connection: 'close',
    ...change,
  }
  return head([
    'POST /api/start HTTP/1.1',
    ...Object.entries(fields).flatMap(([name, value]) => (value === null ? [] : [`${name}: ${value}`])),
  ])
}
const statusOf = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1])
const raw = async (change: Readonly<Record<string, string | null>>, body = '{}') =>
  statusOf(await sendRaw(server.port, goodHead(body, change) + body))

describe('a call in good order', () => {
  it('is answered', async () => {
    expect(await raw({})).toBe(200)
    const answer = (await (await server.call('start')).json()) as { ok: boolean; value: { host: string } }
    expect(answer).toMatchObject({ ok: true, value: { host: 'browser', today: '2026-07-14' } })
  })
})

describe('calls from elsewhere are refused', () => {
  it.each([
    ['no Host', { Host: null }, 400],
    ['a name bent to this machine', { Host: 'plans.example:80' }, 421],
    ['the right port under another name', { Host: 'localhost:PORT' }, 421],
    ['the right name at another port', { Host: '127.0.0.1:1' }, 421],
    ['the name with a dot', { Host: '127.0.0.1.:PORT' }, 421],
    ['no Origin', { Origin: null }, 403],
    ['Origin null', { Origin: 'null' }, 403],
    ['another origin', { Origin: 'http://plans.example' }, 403],
    ['another port of this machine', { Origin: 'http://127.0.0.1:1' }, 403],
    ['this address over https', { Origin: 'https://127.0.0.1:PORT' }, 403],
    ['our origin with a tail', { Origin: 'http://127.0.0.1:PORT.plans.example' }, 403],
    ['a page of another site', { 'Sec-Fetch-Site': 'cross-site' }, 403],
    ['a page of another port', { 'Sec-Fetch-Site': 'same-site' }, 403],
    ['no token', { Authorization: null }, 401],
    ['another token', { Authorization: `Bearer ${'A'.repeat(43)}` }, 401],
    ['a token cut short', { Authorization: 'Bearer SHORT' }, 401],
    ['the token without its scheme', { Authorization: 'TOKEN' }, 401],
    ['the token under another scheme', { Authorization: 'Basic TOKEN' }, 401],
    ['no window', { 'X-Slabwright-Window': null }, 409],
    ['a window made up', { 'X-Slabwright-Window': 'AAAAAAAAAAAAAAAAAAAAAA' }, 409],
    ['a plain form', { 'Content-Type': 'application/x-www-form-urlencoded' }, 415],
    ['plain text, which needs no leave of the browser', { 'Content-Type': 'text/plain' }, 415],
    ['no type', { 'Content-Type': null }, 415],
    ['JSON with a tail', { 'Content-Type': 'application/json; charset=utf-16' }, 415],
    ['packed content', { 'Content-Encoding': 'gzip' }, 415],
  ] as [string, Record<string, string | null>, number][])('%s', async (_, change, status) => {
    const fill = (text: string | null) =>
      text === null
        ? null
        : text
            .replace('PORT', String(server.port))
            .replace('TOKEN', server.token)
            .replace('SHORT', server.token.slice(0, -1))
    const filled = Object.fromEntries(Object.entries(change).map(([name, value]) => [name, fill(value)]))
    expect(await raw(filled)).toBe(status)
  })

  it('two Hosts', async () => {
    const bytes = goodHead('{}').replace('Host:', `Host: 127.0.0.1:${server.port}\r\nHost:`)
    expect([400, 421]).toContain(statusOf(await sendRaw(server.port, `${bytes}{}`)))
  })

  it.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE'])('the method %s', async method => {
    const answer = await sendRaw(server.port, goodHead('').replace('POST', method))
    expect(statusOf(answer)).toBe(405)
    expect(answer).not.toMatch(/access-control/i)
  })

  it('CONNECT, and a change of protocol', async () => {
    expect(
      await sendRaw(server.port, head([`CONNECT 127.0.0.1:${server.port} HTTP/1.1`, `Host: 127.0.0.1:${server.port}`])),
    ).toBe('')
    const upgrade = goodHead('').replace('Connection: close', 'Connection: Upgrade\r\nUpgrade: websocket')
    expect(await sendRaw(server.port, upgrade)).toBe('')
  })

  it('the token as a cookie or in the address', async () => {
    expect(await raw({ Authorization: null, Cookie: `token=${server.token}` })).toBe(401)
    const inAddress = goodHead('{}', { Authorization: null }).replace('/api/start', `/api/start?token=${server.token}`)
    expect(statusOf(await sendRaw(server.port, `${inAddress}{}`))).toBe(401)
  })
})

describe('malformed and oversized calls are refused', () => {
  it.each(['', 'x', '{', '[]', 'null', '"x"', '{"extra":1}', '{"__proto__":{"a":1}}', '\u0000', '{}{}'])(
    '%j',
    async body => {
      expect(await raw({}, body)).toBe(400)
    },
  )

  it('bytes that are not text', async () => {
    const response = await server.call('start', {}, { body: Buffer.from([0x7b, 0xff, 0x7d]) })
    expect(response.status).toBe(400)
  })

  it.each(['toString', '__proto__', 'constructor', 'nothing', '../start', 'start/', '%73tart', ''])(
    'the call %j',
    async name => {
      const bytes = goodHead('{}').replace('/api/start', `/api/${name}`)
      expect(statusOf(await sendRaw(server.port, `${bytes}{}`))).toBe(404)
    },
  )

  it('a length beyond the limit, before a byte of it is read', async () => {
    expect(await raw({ 'Content-Length': String(200 * 1024 * 1024) })).toBe(413)
    expect(await raw({ 'Content-Length': '9'.repeat(30) })).toBeGreaterThanOrEqual(400)
  })

  it('no length, a false one, and pieces without end', async () => {
    expect(await raw({ 'Content-Length': null })).toBe(411)
    expect(await raw({ 'Content-Length': '-1' })).toBe(400)
    expect(await raw({ 'Content-Length': null, 'Transfer-Encoding': 'chunked' }, '2\r\n{}\r\n0\r\n\r\n')).toBe(411)
    expect(await raw({ 'Transfer-Encoding': 'chunked' })).toBe(400)
  })

  it('a head that is too long', async () => {
    expect(await raw({ 'X-Long': 'x'.repeat(20_000) })).toBe(431)
  })

  it('two requests smuggled as one', async () => {
    const second = goodHead('{}', { Authorization: null })
    const answer = await sendRaw(server.port, `${goodHead('{}', { Connection: 'keep-alive' })}{}${second}{}`)
    expect([...answer.matchAll(/HTTP\/1\.1 (\d+)/g)].map(match => match[1])).toEqual(['200', '401'])
  })

  it('a client that waits to be asked for its body', async () => {
    expect(await raw({ Expect: '100-continue' })).toBe(417)
  })

  it('a client that says its piece too slowly is let go', async () => {
    // The wait for the end is the check: without patience running out there is none.
    const socket = connect(server.port, '127.0.0.1')
    await once(socket, 'connect')
    socket.write('POST /api/start HTTP/1.1\r\nHost: ')
    const drip = setInterval(() => socket.write('a'), 200)
    socket.on('error', () => {})
    socket.resume()
    await once(socket, 'close')
    clearInterval(drip)
  })

  it('a body that breaks off harms nobody', async () => {
    const socket = connect(server.port, '127.0.0.1')
    await once(socket, 'connect')
    socket.write(`${goodHead('', { 'Content-Length': '1000' })}{"a"`)
    socket.destroy()
    expect((await server.call('start')).status).toBe(200)
  })
})

describe('paths and links lead nowhere', () => {
  it.each([
    '/../outside.js',
    '/assets/../../outside.js',
    '/%2e%2e/outside.js',
    '/..%2foutside.js',
    '/assets/..%5c..%5coutside.js',
    '//etc/passwd',
    '/etc/passwd',
    '/assets',
    '/assets/',
    '/index.html?x',
    '/index.html%00.js',
    'http://plans.example/index.html',
    '*',
  ])('%s', async path => {
    const answer = await sendRaw(
      server.port,
      head([`GET ${path} HTTP/1.1`, `Host: 127.0.0.1:${server.port}`, 'Connection: close']),
    )
    expect(statusOf(answer)).toBe(404)
    expect(answer).not.toContain('secret')
  })

  it('a page may not name a file outside, by any spelling', async () => {
    const made = (await (await server.call('newSite', { title: 'x' })).json()) as { value: { docId: string } }
    for (const name of ['../evil', '/evil', 'a/../../evil', '..\\evil', 'evil\u0000']) {
      const answer = await (await server.call('saveAs', { docId: made.value.docId, text: two, name, order: 1 })).json()
      expect(answer).toEqual({ ok: true, value: { report: { outcome: 'notSaved', reason: 'nameRefused' } } })
      const sent = await (await server.call('exportFile', { name, kind: 'txt', base64: '' })).json()
      expect(sent).toEqual({ ok: false, error: { reason: 'nameRefused' } })
    }
    expect(existsSync(join(server.disk.root, 'evil.slabwright.json'))).toBe(false)
  })

  it('a link in the folder is neither listed nor written through', async () => {
    if (process.platform === 'win32') return
    const secret = join(server.disk.root, 'secret.slabwright.json')
    writeFileSync(secret, one)
    symlinkSync(secret, join(server.disk.folder, 'link.slabwright.json'))
    const listed = (await (await server.call('listFolder')).json()) as { value: { name: string }[] }
    expect(listed.value.map(({ name }) => name)).not.toContain('link')
    const made = (await (await server.call('newSite', { title: 'x' })).json()) as { value: { docId: string } }
    const answer = await (
      await server.call('saveAs', { docId: made.value.docId, text: two, name: 'link', order: 1, replace: true })
    ).json()
    expect(answer).toEqual({ ok: true, value: { report: { outcome: 'notSaved', reason: 'notAFile' } } })
    expect(readFileSync(secret, 'utf8')).toBe(one)
  })

  it('ids that were never handed out open nothing', async () => {
    for (const fileId of ['AAAAAAAAAAAAAAAAAAAAAA', 'yard', '-', '_'.repeat(64)]) {
      const answer = await (await server.call('openFile', { fileId })).json()
      expect(answer).toEqual({ ok: false, error: { reason: 'unknownId' } })
    }
    expect((await server.call('openFile', { fileId: '../yard' })).status).toBe(400)
    expect((await server.call('openRecovery', { recoveryId: '..' })).status).toBe(400)
  })
})

describe('what is sent', () => {
  const page = () => fetch(`${server.origin}/`)

  it('carries the guards with every answer, good or bad', async () => {
    const answers = [
      await page(),
      await server.call('start'),
      await server.call('start', {}, { headers: { Origin: 'null' } }),
      await fetch(`${server.origin}/x`),
    ]
    for (const { headers } of answers) {
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('x-frame-options')).toBe('DENY')
      expect(headers.get('referrer-policy')).toBe('no-referrer')
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin')
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin')
      expect(headers.get('cache-control')).toBe('no-store')
      expect(headers.get('access-control-allow-origin')).toBeNull()
      expect(headers.get('set-cookie')).toBeNull()
      expect(headers.get('server')).toBeNull()
      expect(headers.get('x-powered-by')).toBeNull()
    }
  })

  it('allows the page its own files, and styles with a nonce that is new each time', async () => {
    const [first, second] = [await page(), await page()]
    const nonceOf = (response: Response) =>
      /'nonce-([^']+)'/.exec(response.headers.get('content-security-policy') ?? '')?.[1] ?? ''
    expect(Buffer.from(nonceOf(first), 'base64')).toHaveLength(16)
    expect(nonceOf(first)).not.toBe(nonceOf(second))
    expect(await first.text()).toContain(`nonce="${nonceOf(first)}"`)
    const policy = first.headers.get('content-security-policy')
    for (const part of [
      "default-src 'none'",
      "frame-ancestors 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "object-src 'none'",
    ]) {
      expect(policy).toContain(part)
    }
    expect(policy).not.toMatch(/unsafe|\*|https?:/)
  })

  it('never holds the token', async () => {
    for (const response of [await page(), await fetch(`${server.origin}/assets/page.js`), await server.call('start')]) {
      expect(await response.text()).not.toContain(server.token)
      expect(JSON.stringify([...response.headers])).not.toContain(server.token)
    }
  })

  it('says nothing on the console, whatever comes', async () => {
    const spies = (['log', 'info', 'warn', 'error'] as const).map(level => vi.spyOn(console, level))
    await raw({ Authorization: `Bearer ${server.token}x` })
    await raw({}, '{"token":"x"}')
    await server.call('save', { docId: 'x', text: two, order: 1 })
    for (const spy of spies) {
      expect(spy).not.toHaveBeenCalled()
      spy.mockRestore()
    }
    expect(server.bugs).toEqual([])
  })
})

describe('the key for one window', () => {
  const stayWith = (key: string) => {
    const line = new AbortController()
    return server
      .call('stay', {}, { headers: { Authorization: `Bearer ${key}` }, signal: line.signal })
      .then(response => response.status)
      .finally(() => line.abort())
  }

  it('opens one window and no second, and makes no other call', async () => {
    const key = new URL(server.host.addressForOne()).hash.slice(1)
    expect(key).not.toBe(server.token)
    expect((await server.call('start', {}, { headers: { Authorization: `Bearer ${key}` } })).status).toBe(401)
    expect(await stayWith(key)).toBe(200)
    expect(await stayWith(key)).toBe(401)
    expect((await server.call('start', {}, { headers: { Authorization: `Bearer ${key}` } })).status).toBe(401)
  })

  it('is not used up by a call that is refused for another reason', async () => {
    const key = new URL(server.host.addressForOne()).hash.slice(1)
    const foreign = { headers: { Authorization: `Bearer ${key}`, Origin: 'http://plans.example' } }
    expect((await server.call('stay', {}, foreign)).status).toBe(403)
    expect(await stayWith(key)).toBe(200)
  })
})

describe('where it listens', () => {
  it('is this machine only, with a token of 32 bytes', () => {
    const { hostname, hash } = new URL(server.host.address)
    expect(hostname).toBe('127.0.0.1')
    expect(Buffer.from(hash.slice(1), 'base64url')).toHaveLength(32)
  })
})
