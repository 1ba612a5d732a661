import { join } from 'node:path'
import { readSite } from '../../core/document/readSite'
import type { HostOutput } from '../../shared/host'
import type { FileLayer } from './fileLayer'
import { siteEnding } from './fileNames'

export interface SampleShelf {
  list(): Promise<HostOutput<'start'>['samples']>
  /** Null for an id that was never listed. */
  read(sampleId: string): Promise<string | null>
}

/** The sites that come with the program, read once. */
export function sampleShelf(layer: FileLayer, folder: string): SampleShelf {
  let loading: Promise<Map<string, string>> | null = null
  const load = async () => {
    const texts = new Map<string, string>()
    for (const name of (await layer.list(folder).catch(() => [])).filter(name => name.endsWith(siteEnding)).sort()) {
      const bytes = await layer.read(join(folder, name)).catch(() => null)
      if (bytes !== null) texts.set(name.slice(0, -siteEnding.length), Buffer.from(bytes).toString('utf8'))
    }
    return texts
  }
  const all = () => (loading ??= load())
  return {
    async list() {
      return [...(await all())].map(([sampleId, text]) => {
        const site = readSite(text)
        return { sampleId, name: site.ok ? site.value.name : sampleId, bytes: Buffer.byteLength(text) }
      })
    },
    async read(sampleId) {
      return (await all()).get(sampleId) ?? null
    },
  }
}
