/** A short-lived worker that sets one set of sheets as a PDF. The PDF library and its fonts are loaded only here. */
import barlow500 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-500-normal.woff?url'
import barlow700 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-700-normal.woff?url'
import zilla700 from '@fontsource/zilla-slab/files/zilla-slab-latin-700-normal.woff?url'
import { pdfDefinition, tableLayouts } from '../../core/reports/pdfDefinition'
import type { PdfSet } from '../../core/reports/pdfSet'

export interface PdfAsk {
  readonly set: PdfSet
  readonly createdMs: number
}

export type PdfAnswer =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly message: string }

interface Scope {
  postMessage(answer: PdfAnswer): void
  onmessage: ((event: MessageEvent<PdfAsk>) => void) | null
}

interface PdfLibrary {
  virtualfs: { writeFileSync(name: string, bytes: Uint8Array): void }
  setFonts(fonts: object): void
  setTableLayouts(layouts: object): void
  createPdf(definition: object): { getBuffer(): Promise<Uint8Array> }
}

const files = { 'barlow-500.woff': barlow500, 'barlow-700.woff': barlow700, 'zilla-700.woff': zilla700 }
const family = (normal: string, bold: string) => ({ normal, bold, italics: normal, bolditalics: bold })

async function write({ set, createdMs }: PdfAsk): Promise<Uint8Array> {
  const module = await import('pdfmake/build/pdfmake')
  const library = module.default as unknown as PdfLibrary
  for (const [name, address] of Object.entries(files)) {
    const bytes = await (await fetch(address)).arrayBuffer()
    library.virtualfs.writeFileSync(name, new Uint8Array(bytes))
  }
  library.setFonts({
    'Barlow Semi Condensed': family('barlow-500.woff', 'barlow-700.woff'),
    'Zilla Slab': family('zilla-700.woff', 'zilla-700.woff'),
  })
  library.setTableLayouts(tableLayouts)
  return library.createPdf(pdfDefinition(set, { createdAt: new Date(createdMs) })).getBuffer()
}

const scope = self as unknown as Scope
scope.onmessage = ({ data }) => {
  void write(data).then(
    bytes => scope.postMessage({ ok: true, bytes: new Uint8Array(bytes) }),
    (error: unknown) =>
      scope.postMessage({ ok: false, message: error instanceof Error ? error.message : String(error) }),
  )
}
