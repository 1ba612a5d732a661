import { join } from 'node:path'
import type { HostOutput } from '../../shared/host'
import type { FileLayer } from './fileLayer'
import { siteEnding } from './fileNames'

export interface SampleShelf {
  list(): Promise<HostOutput<'start'>['samples']>
  /** Null for an id that was never listed. */
  read(sampleId: string): Promise<string | null>
}

interface Sample {
  readonly text: string
  readonly name: string
}

/** The name alone: reading whole sites here would keep the start page waiting. Null where there is none. */
function nameIn(text: string): string | null {
  try {
    const { name } = JSON.parse(text) as { name?: unknown }
    return typeof name === 'string' ? name : null
  } catch {
    return null
  }
}

/** The sites that come with the program, read once. */
export function sampleShelf(layer: FileLayer, folder: string): SampleShelf {
  let loading: Promise<ReadonlyMap<string, Sample>> | null = null
  const load = async () => {
    const samples = new Map<string, Sample>()
    for (const name of (await layer.list(folder).catch(() => [])).filter(name => name.endsWith(siteEnding)).sort()) {
      const bytes = await layer.read(join(folder, name)).catch(() => null)
      if (bytes === null) continue
      const text = Buffer.from(bytes).toString('utf8')
      const sampleId = name.slice(0, -siteEnding.length)
      samples.set(sampleId, { text, name: nameIn(text) ?? sampleId })
    }
    return samples
  }
  const all = () => (loading ??= load())
  return {
    async list() {
      return [...(await all())].map(([sampleId, { text, name }]) => ({
        sampleId,
        name,
        bytes: Buffer.byteLength(text),
      }))
    },
    async read(sampleId) {
      return (await all()).get(sampleId)?.text ?? null
    },
  }
}
