import { setTimeout as sleep } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { mustHave, siteText } from '../fault/hostFolders'
import { loopbackServer } from './loopbackServer'

const one = siteText('One')

async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    if (await holds()) return
    await sleep(25)
  }
  throw new Error('it never held')
}

describe('windows of the loopback host', () => {
  it('when a page is gone its file is free and its unsaved work is offered', async () => {
    const server = await loopbackServer({ graceMs: 50 })
    try {
      const first = await server.stay()
      const made = (await (await server.call('newSite', { title: 'New site' })).json()) as { value: { docId: string } }
      const { docId } = made.value
      await server.call('autosave', { docId, title: 'New site', text: one, order: 1 })
      first.leave()
      await until(async () => (await server.call('start')).status === 409)
      const second = await server.stay()
      const start = (await (await server.call('start')).json()) as { value: { recoveries: { title: string }[] } }
      expect(start.value.recoveries).toMatchObject([{ title: 'New site' }])
      second.leave()
    } finally {
      await server.stop()
    }
  })

  it('a page whose line broke takes it up again with its documents', async () => {
    const server = await loopbackServer({ graceMs: 5_000 })
    try {
      const first = await server.stay()
      const made = (await (await server.call('newSite', { title: 'New site' })).json()) as { value: { docId: string } }
      first.leave()
      await sleep(50)
      const second = await server.stay()
      expect(second.windowId).toBe(first.windowId)
      const report = await (
        await server.call('autosave', { docId: made.value.docId, title: 'x', text: one, order: 1 })
      ).json()
      expect(report).toMatchObject({ ok: true, value: { outcome: 'saved' } })
    } finally {
      await server.stop()
    }
  })

  it('opens no more than a handful of windows', async () => {
    const server = await loopbackServer()
    try {
      const statuses: number[] = []
      for (let count = 0; count < 17; count += 1) {
        statuses.push((await server.call('stay')).status)
      }
      expect(statuses).toEqual([...Array<number>(16).fill(200), 429])
    } finally {
      await server.stop()
    }
  })

  it('ends by itself when nobody has been there for a while', async () => {
    const server = await loopbackServer({ idleMs: 200, graceMs: 50 })
    const { leave } = await server.stay()
    await sleep(400)
    expect((await server.call('start')).status).toBe(200)
    leave()
    await server.host.ended
    await expect(server.call('start')).rejects.toThrow()
    server.disk.remove()
  })

  it('a text of many megabytes comes through whole', async () => {
    const server = await loopbackServer()
    try {
      await server.stay()
      const made = (await (await server.call('newSite', { title: 'x' })).json()) as { value: { docId: string } }
      const text = one + ' '.repeat(20 * 1024 * 1024)
      const input = { docId: made.value.docId, text, name: 'big', order: 1 }
      const answer = (await (await server.call('saveAs', input)).json()) as {
        ok: true
        value: { report: { bytes: number } }
      }
      expect(mustHave(answer).report).toMatchObject({ outcome: 'saved', bytes: Buffer.byteLength(text) })
    } finally {
      await server.stop()
    }
  })
})
