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
    close: async () => ({ ok: true, value: null }),
    autosave: async () => ({ ok: true, value: report }),
    saveAs: async ({ text, name }: { text: string; name: string }) => {
      if (name.includes('/')) return { ok: true, value: { report: { outcome: 'notSaved', reason: 'nameRefused' } } }
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
  return { keeper, site, files, nameIn, name, isKept, dialog: () => of.dialogs.getState().open }
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

it('a name that no file can have is asked for again, as it was typed', async () => {
  const { keeper, files, dialog } = keptAs()
  await keeper.startNew(unnamed)
  await keeper.saveAs({ name: 'Fern / Lane' })
  expect(dialog()).toMatchObject({ kind: 'saveAs', name: 'Fern / Lane', refused: 'nameRefused' })
  expect([keeper.getState().trouble, files.size]).toEqual([null, 0])
})

it('what is put away with changes is asked for by where it can be kept', async () => {
  const { keeper, site, dialog } = keptAs()
  await keeper.startNew(unnamed)
  site.edit('units', draft => {
    draft.units = 'metric'
  })
  const failure = { reason: 'hostGone' } as const
  for (const [state, held] of [
    [{}, 'none'],
    [{ fileName: 'Mill yard.slabwright.json' }, 'file'],
    [{ readOnly: 'openElsewhere' }, 'copy'],
    [{ trouble: { where: 'recovery', outcome: 'notSaved', failure } }, 'gone'],
  ] as const) {
    keeper.setState(state)
    await keeper.leave()
    expect(dialog()).toMatchObject({ kind: 'closing', held })
  }
})
