import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { limits } from '../../shared/limits'
import { type HostFolders, hostFolders, mustHave, siteText } from '../fault/hostFolders'

let disk: HostFolders
beforeEach(() => {
  disk = hostFolders()
})
afterEach(() => disk.remove())

const one = siteText('One')
const two = siteText('Two')
const three = siteText('Three')

describe('opening', () => {
  it('gives the text as it stands in the file, and remembers the file as recent', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const window = disk.start().openWindow()
    const site = mustHave(await window.openPath(path))
    expect(site).toMatchObject({ title: 'yard', fileName: 'yard.slabwright.json', text: one })
    expect(site.readOnly).toBeUndefined()
    expect(await window.listRecent()).toMatchObject([{ name: 'yard', missing: false }])
  })

  it('finds a recent file again by its id after the program was started anew', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const first = disk.start().openWindow()
    mustHave(await first.openPath(path))
    await first.leave()
    const [recent] = await first.listRecent()
    const again = disk.start().openWindow()
    expect(mustHave(await again.openFile({ fileId: recent?.fileId ?? '' })).text).toBe(one)
  })

  it('lists a recent file that is gone as missing, and forgets it when told', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const window = disk.start().openWindow()
    mustHave(await window.openPath(path))
    rmSync(path)
    const [recent] = await window.listRecent()
    expect(recent?.missing).toBe(true)
    expect(await window.openFile({ fileId: recent?.fileId ?? '' })).toMatchObject({
      ok: false,
      error: { reason: 'vanished' },
    })
    await window.forgetRecent({ fileId: recent?.fileId ?? '' })
    expect(await window.listRecent()).toEqual([])
  })

  it('keeps the newest twenty recent files', async () => {
    const window = disk.start().openWindow()
    for (let number = 0; number < 23; number += 1) {
      mustHave(await window.openPath(disk.put(`yard${number}.slabwright.json`, one)))
    }
    const names = (await window.listRecent()).map(({ name }) => name)
    expect(names).toHaveLength(20)
    expect(names[0]).toBe('yard22')
  })

  it('starts an empty list of recent files when the old one is damaged', async () => {
    mkdirSync(disk.dataFolder, { recursive: true })
    writeFileSync(join(disk.dataFolder, 'recent.json'), '{"format":"slabwright-recent","files":[{"pa')
    const window = disk.start().openWindow()
    expect(await window.listRecent()).toEqual([])
    mustHave(await window.openPath(disk.put('yard.slabwright.json', one)))
    expect(await window.listRecent()).toHaveLength(1)
  })

  it.each([
    ['a file that is not text', Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), 'notText'],
    ['a file beyond the limit', null, 'fileTooLarge'],
  ])('refuses %s', async (_, bytes, reason) => {
    const path = disk.put('bad.slabwright.json', '')
    writeFileSync(path, bytes ?? Buffer.alloc(limits.fileBytes + 1, 32))
    expect(await disk.start().openWindow().openPath(path)).toEqual({
      ok: false,
      error: { reason, name: 'bad.slabwright.json' },
    })
  })

  it('hands a damaged or cut-short file over as it is, for the page to explain', async () => {
    const path = disk.put('cut.slabwright.json', one.slice(0, 200))
    expect(mustHave(await disk.start().openWindow().openPath(path)).text).toBe(one.slice(0, 200))
  })

  it('refuses a folder, and a path where nothing is', async () => {
    mkdirSync(join(disk.folder, 'a.slabwright.json'), { recursive: true })
    const window = disk.start().openWindow()
    expect(await window.openPath(join(disk.folder, 'a.slabwright.json'))).toMatchObject({
      error: { reason: 'notAFile' },
    })
    expect(await window.openPath(join(disk.folder, 'b.slabwright.json'))).toMatchObject({
      error: { reason: 'vanished' },
    })
  })

  it('opens a sample as an untitled copy with an id of its own', async () => {
    const window = disk.start().openWindow()
    const samples = await window.listSamples()
    expect(samples.length).toBeGreaterThan(8)
    const copy = mustHave(await window.openSample({ sampleId: 'l-patio' }))
    expect(copy.fileName).toBeUndefined()
    const site = readSite(copy.text)
    expect(site.ok && site.value.id).toMatch(/^site-/)
    expect(await window.save({ docId: copy.docId, text: copy.text, order: 1 })).toMatchObject({
      value: { outcome: 'notSaved', reason: 'untitled' },
    })
  })
})

describe('saving', () => {
  const openOne = async (name = 'yard.slabwright.json') => {
    const path = disk.put(name, one)
    const window = disk.start().openWindow()
    return { path, window, ...mustHave(await window.openPath(path)) }
  }

  it('replaces the file and keeps both what it held and what it holds', async () => {
    const { path, window, docId } = await openOne()
    const report = mustHave(await window.save({ docId, text: two, order: 1 }))
    expect(report).toMatchObject({ outcome: 'saved', bytes: two.length, folderSynced: true, versionKept: true })
    expect(readFileSync(path, 'utf8')).toBe(two)
    const versions = mustHave(await window.listVersions({ docId }))
    const texts = await Promise.all(
      versions.map(async ({ versionId }) => mustHave(await window.versionText({ docId, versionId })).text),
    )
    expect(texts).toEqual([two, one])
    expect(versions.map(({ bytes }) => bytes)).toEqual([two.length, one.length])
  })

  it('leaves the permissions of the file as they were', async () => {
    if (process.platform === 'win32') return
    const { path, window, docId } = await openOne()
    chmodSync(path, 0o600)
    mustHave(await window.save({ docId, text: two, order: 1 }))
    const listed = statSync(path)
    expect(listed.mode & 0o777).toBe(0o600)
  })

  it('follows a link to the file and leaves the link standing', async () => {
    if (process.platform === 'win32') return
    const path = disk.put('yard.slabwright.json', one)
    const link = join(disk.folder, 'link.slabwright.json')
    symlinkSync(path, link)
    const window = disk.start().openWindow()
    const { docId } = mustHave(await window.openPath(link))
    mustHave(await window.save({ docId, text: two, order: 1 }))
    expect(readFileSync(path, 'utf8')).toBe(two)
    expect(lstatSync(link).isSymbolicLink()).toBe(true)
  })

  it('does not touch a file another program changed, until told; then what it held is kept', async () => {
    const { path, window, docId } = await openOne()
    writeFileSync(path, three)
    utimesSync(path, 1, 1)
    expect(mustHave(await window.save({ docId, text: two, order: 1 }))).toEqual({
      outcome: 'notSaved',
      reason: 'changedOutside',
    })
    expect(readFileSync(path, 'utf8')).toBe(three)
    expect(mustHave(await window.save({ docId, text: two, order: 1, overwrite: true })).outcome).toBe('saved')
    const versions = mustHave(await window.listVersions({ docId }))
    expect(mustHave(await window.versionText({ docId, versionId: versions[1]?.versionId ?? '' })).text).toBe(three)
  })

  it('says when the file is gone, and makes it again when told', async () => {
    const { path, window, docId } = await openOne()
    rmSync(path)
    expect(mustHave(await window.save({ docId, text: two, order: 1 }))).toEqual({
      outcome: 'notSaved',
      reason: 'vanished',
    })
    mustHave(await window.save({ docId, text: two, order: 1, overwrite: true }))
    expect(readFileSync(path, 'utf8')).toBe(two)
  })

  it('does not save over a file marked as read-only', async () => {
    const path = disk.put('yard.slabwright.json', one)
    chmodSync(path, 0o444)
    const window = disk.start().openWindow()
    const { docId, readOnly } = mustHave(await window.openPath(path))
    expect(readOnly).toBe('readOnly')
    expect(mustHave(await window.save({ docId, text: two, order: 1 }))).toEqual({
      outcome: 'notSaved',
      reason: 'readOnly',
    })
    expect(readFileSync(path, 'utf8')).toBe(one)
    chmodSync(path, 0o644)
  })

  it('refuses a text that could not be opened again', async () => {
    const { path, window, docId } = await openOne()
    for (const text of ['', '{}', two.slice(0, -10), two.replace('"version": 1', '"version": 2')]) {
      expect(mustHave(await window.save({ docId, text, order: 1 }))).toEqual({
        outcome: 'notSaved',
        reason: 'wouldNotOpen',
      })
    }
    expect(readFileSync(path, 'utf8')).toBe(one)
  })

  it('under a name makes the folder on the first save, adds the ending and never replaces unasked', async () => {
    const window = disk.start().openWindow()
    const { docId } = window.newSite({ title: 'New site' })
    expect(existsSync(disk.folder)).toBe(false)
    const saved = mustHave(await window.saveNamed({ docId, text: one, name: 'Back yard', order: 1 }))
    expect(saved).toMatchObject({ report: { outcome: 'saved' }, fileName: 'Back yard.slabwright.json' })
    const other = window.newSite({ title: 'Other' })
    const refused = mustHave(await window.saveNamed({ docId: other.docId, text: two, name: 'Back yard', order: 1 }))
    expect(refused).toEqual({ report: { outcome: 'notSaved', reason: 'exists' } })
    expect(readFileSync(join(disk.folder, 'Back yard.slabwright.json'), 'utf8')).toBe(one)
    expect(mustHave(await window.save({ docId, text: two, order: 2 })).outcome).toBe('saved')
  })

  it.each([
    '../yard',
    'a/b',
    'a\\b',
    '..',
    '.hidden',
    'nul',
    'COM1.json',
    'a\u0000b',
    'yard.',
    'ends ',
    '',
    'x'.repeat(201),
    'a:b',
  ])('refuses the name %j', async name => {
    const window = disk.start().openWindow()
    const { docId } = window.newSite({ title: 'New site' })
    const answer = mustHave(await window.saveNamed({ docId, text: one, name, order: 1 }))
    if (name === 'ends ') expect(answer.fileName).toBe('ends.slabwright.json')
    else expect(answer).toEqual({ report: { outcome: 'notSaved', reason: 'nameRefused' } })
  })

  it('keeps the order of saves asked for at once', async () => {
    const { path, window, docId } = await openOne()
    const texts = Array.from({ length: 12 }, (_, number) => siteText(`Save ${number}`))
    await Promise.all(texts.map((text, order) => window.save({ docId, text, order })))
    expect(readFileSync(path, 'utf8')).toBe(texts.at(-1))
    expect(readdirSync(disk.folder)).toEqual(['yard.slabwright.json'])
  })

  it('serves a document only to the window that opened it', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const program = disk.start()
    const { docId } = mustHave(await program.openWindow().openPath(path))
    const other = program.openWindow()
    expect(await other.save({ docId, text: two, order: 1 })).toEqual({ ok: false, error: { reason: 'unknownId' } })
    expect(await other.autosave({ docId, title: 'x', text: two, order: 1 })).toMatchObject({ ok: false })
    expect(await other.listVersions({ docId })).toMatchObject({ ok: false })
    await other.close({ docId })
    expect(readFileSync(path, 'utf8')).toBe(one)
  })
})

describe('two windows on one file', () => {
  it.each(['of one program', 'of two programs'])('%s: the second is told and can save a copy', async which => {
    const path = disk.put('yard.slabwright.json', one)
    const program = disk.start()
    const first = program.openWindow()
    mustHave(await first.openPath(path))
    // Another program's lock counts as long as its process lives: our parent does.
    const second = (which === 'of one program' ? program : disk.start({})).openWindow()
    if (which === 'of two programs') {
      const [lock] = readdirSync(join(disk.dataFolder, 'locks'))
      writeFileSync(join(disk.dataFolder, 'locks', lock ?? ''), JSON.stringify({ pid: process.ppid, path }))
    }
    const { docId, readOnly } = mustHave(await second.openPath(path))
    expect(readOnly).toBe('openElsewhere')
    expect(mustHave(await second.save({ docId, text: two, order: 1 }))).toMatchObject({ reason: 'openElsewhere' })
    const copy = mustHave(await second.saveNamed({ docId, text: two, name: 'copy', order: 1 }))
    expect(copy.report.outcome).toBe('saved')
    expect(mustHave(await second.save({ docId, text: three, order: 2 })).outcome).toBe('saved')
    expect(readFileSync(path, 'utf8')).toBe(one)
  })

  it('frees the file when the first is closed, or its window is gone', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const program = disk.start()
    const first = program.openWindow()
    const { docId } = mustHave(await first.openPath(path))
    await first.close({ docId })
    const second = program.openWindow()
    expect(mustHave(await second.openPath(path)).readOnly).toBeUndefined()
    await second.leave()
    expect(mustHave(await program.openWindow().openPath(path)).readOnly).toBeUndefined()
  })

  it('takes over the lock of a program that died', async () => {
    const path = disk.put('yard.slabwright.json', one)
    mustHave(await disk.start({ crashed: true }).openWindow().openPath(path))
    expect(mustHave(await disk.start().openWindow().openPath(path)).readOnly).toBeUndefined()
  })
})

describe('unsaved work', () => {
  it('is offered after a crash, opens where it belongs and is gone once saved', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const crashed = disk.start({ crashed: true }).openWindow()
    const { docId } = mustHave(await crashed.openPath(path))
    mustHave(await crashed.autosave({ docId, title: 'yard', text: two, order: 1 }))
    const window = disk.start().openWindow()
    const [offer, ...more] = await window.listRecoveries()
    expect(more).toEqual([])
    expect(offer).toMatchObject({ title: 'yard', fileName: 'yard.slabwright.json' })
    const site = mustHave(await window.openRecovery({ recoveryId: offer?.recoveryId ?? '' }))
    expect(site).toMatchObject({ text: two, fileName: 'yard.slabwright.json' })
    expect(await window.listRecoveries()).toEqual([])
    expect(readdirSync(join(disk.dataFolder, 'recovery'))).toHaveLength(1)
    expect(mustHave(await window.save({ docId: site.docId, text: two, order: 1 })).outcome).toBe('saved')
    expect(readFileSync(path, 'utf8')).toBe(two)
    expect(readdirSync(join(disk.dataFolder, 'recovery'))).toEqual([])
  })

  it('of a site that was never saved is offered too', async () => {
    const crashed = disk.start({ crashed: true }).openWindow()
    const { docId } = crashed.newSite({ title: 'New site' })
    mustHave(await crashed.autosave({ docId, title: 'New site', text: one, order: 1 }))
    const window = disk.start().openWindow()
    const [offer] = await window.listRecoveries()
    expect(offer).toMatchObject({ title: 'New site' })
    expect(mustHave(await window.openRecovery({ recoveryId: offer?.recoveryId ?? '' })).fileName).toBeUndefined()
  })

  it('opens as untitled where its file is gone', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const crashed = disk.start({ crashed: true }).openWindow()
    const { docId } = mustHave(await crashed.openPath(path))
    mustHave(await crashed.autosave({ docId, title: 'yard', text: two, order: 1 }))
    rmSync(path)
    const window = disk.start().openWindow()
    const [offer] = await window.listRecoveries()
    const site = mustHave(await window.openRecovery({ recoveryId: offer?.recoveryId ?? '' }))
    expect(site.text).toBe(two)
    expect(site.fileName).toBeUndefined()
  })

  it('stays when its window is gone without a word, and goes when it is put away or dropped', async () => {
    const program = disk.start()
    const first = program.openWindow()
    const { docId } = first.newSite({ title: 'New site' })
    mustHave(await first.autosave({ docId, title: 'New site', text: one, order: 1 }))
    const second = program.openWindow()
    expect(await second.listRecoveries()).toEqual([])
    await first.leave()
    const [offer] = await second.listRecoveries()
    expect(offer?.title).toBe('New site')
    mustHave(await second.dropRecovery({ recoveryId: offer?.recoveryId ?? '' }))
    expect(await second.listRecoveries()).toEqual([])
    const third = second.newSite({ title: 'Third' })
    mustHave(await second.autosave({ docId: third.docId, title: 'Third', text: one, order: 1 }))
    await second.close({ docId: third.docId })
    expect(readdirSync(join(disk.dataFolder, 'recovery'))).toEqual([])
  })

  it('is the newest text whatever the order of arrival, and never one the file already holds', async () => {
    const path = disk.put('yard.slabwright.json', one)
    const program = disk.start()
    const window = program.openWindow()
    const { docId } = mustHave(await window.openPath(path))
    await Promise.all([
      window.autosave({ docId, title: 'yard', text: two, order: 2 }),
      window.autosave({ docId, title: 'yard', text: one, order: 1 }),
      window.autosave({ docId, title: 'yard', text: three, order: 3 }),
    ])
    mustHave(await window.save({ docId, text: two, order: 2 }))
    await window.leave()
    const again = program.openWindow()
    const [offer] = await again.listRecoveries()
    const site = mustHave(await again.openRecovery({ recoveryId: offer?.recoveryId ?? '' }))
    expect(site.text).toBe(three)
    mustHave(await again.save({ docId: site.docId, text: three, order: 5 }))
    mustHave(await again.autosave({ docId: site.docId, title: 'yard', text: two, order: 4 }))
    await again.leave()
    expect(await program.openWindow().listRecoveries()).toEqual([])
  })

  it('that was cut short is not offered, and not removed either', async () => {
    mkdirSync(join(disk.dataFolder, 'recovery'), { recursive: true })
    const path = join(disk.dataFolder, 'recovery', 'abc.recovery')
    writeFileSync(
      path,
      '{"format":"slabwright-recovery","title":"x","path":null,"savedAt":"2026-07-14T08:00:00.000Z","pid":1073741824,"bytes":100}\nshort',
    )
    expect(await disk.start().openWindow().listRecoveries()).toEqual([])
    expect(existsSync(path)).toBe(true)
  })
})

describe('pages that are confined to the working folder', () => {
  it('see and open only plain files that lie in it', async () => {
    if (process.platform === 'win32') return
    const secret = join(disk.root, 'secret.slabwright.json')
    writeFileSync(secret, two)
    disk.put('yard.slabwright.json', one)
    disk.put('notes.txt', 'x')
    symlinkSync(secret, join(disk.folder, 'link.slabwright.json'))
    mkdirSync(join(disk.folder, 'folder.slabwright.json'))
    const window = disk.start({ confined: true }).openWindow()
    expect((await window.listFolder()).map(({ name }) => name)).toEqual(['yard'])
    for (const path of [
      secret,
      join(disk.folder, 'link.slabwright.json'),
      join(disk.folder, '../secret.slabwright.json'),
    ]) {
      expect(await window.openPath(path)).toMatchObject({ ok: false, error: { reason: 'notAFile' } })
    }
  })

  it('do not save through a link that was put in the place of their file', async () => {
    if (process.platform === 'win32') return
    const secret = join(disk.root, 'secret.slabwright.json')
    writeFileSync(secret, three)
    const path = disk.put('yard.slabwright.json', one)
    const window = disk.start({ confined: true }).openWindow()
    const { docId } = mustHave(await window.openPath(path))
    rmSync(path)
    symlinkSync(secret, path)
    for (const overwrite of [false, true]) {
      expect(mustHave(await window.save({ docId, text: two, order: 1, overwrite })).outcome).toBe('notSaved')
    }
    const named = mustHave(await window.saveNamed({ docId, text: two, order: 1, name: 'yard', replace: true }))
    expect(named.report).toEqual({ outcome: 'notSaved', reason: 'notAFile' })
    expect(readFileSync(secret, 'utf8')).toBe(three)
  })

  it('do not see recent files from elsewhere', async () => {
    const elsewhere = join(disk.root, 'elsewhere.slabwright.json')
    writeFileSync(elsewhere, one)
    const desktop = disk.start().openWindow()
    mustHave(await desktop.openPath(elsewhere))
    const [recent] = await desktop.listRecent()
    const page = disk.start({ confined: true }).openWindow()
    expect(await page.listRecent()).toEqual([])
    expect(await page.openFile({ fileId: recent?.fileId ?? '' })).toMatchObject({ error: { reason: 'unknownId' } })
  })
})

describe('exports', () => {
  it('land in the working folder under a free name', async () => {
    const window = disk.start().openWindow()
    const base64 = Buffer.from('%PDF').toString('base64')
    expect(await window.exportNamed({ name: 'plan', kind: 'pdf', base64 })).toEqual({
      ok: true,
      value: { fileName: 'plan.pdf' },
    })
    expect(await window.exportNamed({ name: 'plan.pdf', kind: 'pdf', base64 })).toEqual({
      ok: true,
      value: { fileName: 'plan 2.pdf' },
    })
    expect(readFileSync(join(disk.folder, 'plan 2.pdf'), 'utf8')).toBe('%PDF')
    expect(await window.exportNamed({ name: '../plan', kind: 'pdf', base64 })).toMatchObject({
      error: { reason: 'nameRefused' },
    })
  })
})
