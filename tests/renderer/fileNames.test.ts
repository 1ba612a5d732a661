import { expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { createDialogStore } from '../../renderer/app/dialogStore'
import { emptySite, unnamed } from '../../renderer/app/emptySite'
import { createKeeper } from '../../renderer/app/keeper'
import { committedDocument, createSiteStore } from '../../renderer/store/siteStore'
import { createViewStore } from '../../renderer/store/viewStore'
import type { HostApi } from '../../shared/host'

/** A host that keeps every text it is given under the name of its file. */
function keptAs(chosen?: string) {
  const files = new Map<string, string>()
  const report = { outcome: 'saved', at: '2026-07-21T16:00:00.000Z', folderSynced: true, versionKept: true } as const
  let last = ''
  const host = {
    newSite: async () => ({ ok: true, value: { docId: 'd1', siteId: 'site-1' } }),
    saveAs: async ({ text, name }: { text: string; name: string }) => {
      last = chosen ?? name
      files.set(last, text)
      return { ok: true, value: { report, fileName: `${last}.slabwright.json` } }
    },
    save: async ({ text }: { text: string }) => {
      files.set(last, text)
      return { ok: true, value: report }
    },
  } as unknown as HostApi
  const site = createSiteStore()
  const of = { host, asksItself: chosen !== undefined, site, view: createViewStore(), dialogs: createDialogStore() }
  const keeper = createKeeper({ ...of, emptySite })
  const nameIn = (file: string) => {
    const read = readSite(files.get(file) ?? '')
    return read.ok ? read.value.name : 'not a site'
  }
  const name = () => committedDocument(site.getState())?.name
  const isKept = () => keeper.getState().filed === committedDocument(site.getState())
  return { keeper, site, files, nameIn, name, isKept }
}

it('a site that nobody has named takes the name of its first file, on screen, in the file and through undo', async () => {
  for (const chosen of [undefined, 'Fern Lane']) {
    const { keeper, site, nameIn, name, isKept } = keptAs(chosen)
    await keeper.startNew(unnamed)
    site.edit('units', draft => {
      draft.units = 'metric'
    })
    // The page asks for the name beforehand; where the desktop's dialog asks, it comes with the answer.
    await keeper.saveAs(chosen === undefined ? { name: 'Fern Lane' } : {})
    expect([name(), nameIn('Fern Lane'), isKept()]).toEqual(['Fern Lane', 'Fern Lane', true])
    site.undo()
    expect(name()).toBe('Fern Lane')
    site.redo()
    // Another file does not name it anew.
    await keeper.saveAs({ name: 'Fern Lane 2' })
    expect([name(), isKept()]).toEqual(['Fern Lane', true])
  }
})

it('a site with a name keeps it, whatever its file is called', async () => {
  const { keeper, site, nameIn, name } = keptAs()
  await keeper.startNew(unnamed)
  site.edit('site name', draft => {
    draft.name = 'Alder Court'
  })
  await keeper.saveAs({ name: 'draft 3' })
  expect([name(), nameIn('draft 3')]).toEqual(['Alder Court', 'Alder Court'])
})
