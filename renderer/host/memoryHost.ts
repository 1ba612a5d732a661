/** A host for a page that stands alone on a plain server: samples can be opened, files are kept while the page is open. */
import type { HostAnswer, HostApi, OpenedSite } from '../../shared/host'

const done = <T>(value: T): HostAnswer<T> => ({ ok: true, value })
const notHere = { ok: false, error: { reason: 'notHere' } } as const

interface Shelf {
  readonly samples: readonly { readonly sampleId: string; readonly name: string; readonly file: string }[]
}

const hex = (bytes: Uint8Array): string => [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('')

/** `base` is where `samples/index.json` and the sample files lie. */
export function createMemoryHost(base: string): HostApi {
  let nextDoc = 1
  const freshDoc = () => `doc-${nextDoc++}`
  const readShelf = async (): Promise<Shelf> => {
    const answer = await fetch(`${base}samples/index.json`)
    return answer.ok ? ((await answer.json()) as Shelf) : { samples: [] }
  }
  const sampleText = async (sampleId: string): Promise<string | null> => {
    const entry = (await readShelf()).samples.find(each => each.sampleId === sampleId)
    if (!entry) return null
    const answer = await fetch(`${base}samples/${entry.file}`)
    return answer.ok ? await answer.text() : null
  }
  const saved = (text: string) => ({
    outcome: 'saved' as const,
    at: new Date().toISOString(),
    bytes: text.length,
    folderSynced: true,
    versionKept: false,
  })
  return {
    start: async () => {
      const now = new Date()
      const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()]
        .map(n => String(n).padStart(2, '0'))
        .join('-')
      const { samples } = await readShelf()
      return done({
        host: 'browser',
        appVersion: '',
        folder: 'this page',
        today,
        zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        recent: [],
        samples: samples.map(({ sampleId, name }) => ({ sampleId, name, bytes: 0 })),
        recoveries: [],
      })
    },
    newSite: async () => done({ docId: freshDoc(), siteId: hex(crypto.getRandomValues(new Uint8Array(16))) }),
    listFolder: async () => done([]),
    openFile: async () => notHere,
    openDialog: async () => notHere,
    openSample: async ({ sampleId }) => {
      const text = await sampleText(sampleId)
      if (text === null) return { ok: false, error: { reason: 'vanished', name: sampleId } }
      const opened: OpenedSite = { docId: freshDoc(), title: sampleId, text }
      return done(opened)
    },
    sampleText: async ({ sampleId }) => {
      const text = await sampleText(sampleId)
      return text === null ? { ok: false, error: { reason: 'vanished', name: sampleId } } : done({ text })
    },
    openRecovery: async () => notHere,
    dropRecovery: async () => done({}),
    forgetRecent: async () => done({}),
    save: async ({ text }) => done(saved(text)),
    saveAs: async ({ text, name }) => done({ report: saved(text), fileName: name }),
    autosave: async ({ text }) => done(saved(text)),
    close: async () => done({}),
    listVersions: async () => done([]),
    versionText: async () => notHere,
    importFile: async () => notHere,
    exportFile: async () => notHere,
    print: async () => notHere,
    tellState: async () => done({}),
  }
}
