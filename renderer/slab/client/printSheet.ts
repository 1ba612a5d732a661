/** Prints one drawing on a page of its own size, at 100 %. */
import type { HostApi } from '../../../shared/host'
import { withLetters } from '../../sheets/sheetPictures'

interface Page {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
}

const rules = (widthPt: number, heightPt: number): string => `
@page { size: ${widthPt}pt ${heightPt}pt; margin: 0; }
@media screen { .print-page { display: none; } }
@media print {
  html, body { margin: 0; padding: 0; background: #ffffff; height: auto; overflow: visible; }
  body > :not(.print-page) { display: none; }
  .print-page, .print-page img { display: block; width: ${widthPt}pt; height: ${heightPt}pt; }
}`

export async function printSheet({ svg, widthPt, heightPt }: Page, host: HostApi): Promise<void> {
  const address = URL.createObjectURL(new Blob([await withLetters(svg)], { type: 'image/svg+xml' }))
  const page = document.createElement('div')
  page.className = 'print-page'
  const image = new Image()
  image.src = address
  image.alt = ''
  page.append(image)
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(rules(widthPt, heightPt))
  try {
    await image.decode()
    document.body.append(page)
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
    const answer = await host.print({})
    if (!answer.ok && answer.error.reason === 'notHere') window.print()
  } finally {
    page.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(each => each !== sheet)
    URL.revokeObjectURL(address)
  }
}
