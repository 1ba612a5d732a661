/** Prints pages, each of its own size, at 100 %. */
import type { HostApi } from '../../../shared/host'
import { withLetters } from '../../sheets/sheetPictures'

interface Page {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
}

const shownInPrint = `
@media screen { .print-page { display: none; } }
@media print {
  html, body { margin: 0; padding: 0; background: #ffffff; height: auto; overflow: visible; }
  body > :not(.print-page) { display: none; }
  .print-page { break-inside: avoid; }
  .print-page, .print-page img { display: block; }
}`

const rulesOf = ({ widthPt, heightPt }: Page, i: number): string => `
@page print-${i} { size: ${widthPt}pt ${heightPt}pt; margin: 0; }
@media print {
  .print-${i} { page: print-${i}; }
  .print-${i}, .print-${i} img { width: ${widthPt}pt; height: ${heightPt}pt; }
}`

export async function printPages(pages: readonly Page[], host: HostApi): Promise<void> {
  const addresses: string[] = []
  const shown: HTMLElement[] = []
  const sheet = new CSSStyleSheet()
  sheet.replaceSync([shownInPrint, ...pages.map(rulesOf)].join('\n'))
  try {
    for (const [i, { svg }] of pages.entries()) {
      const address = URL.createObjectURL(new Blob([await withLetters(svg)], { type: 'image/svg+xml' }))
      addresses.push(address)
      const page = document.createElement('div')
      page.className = `print-page print-${i}`
      const image = new Image()
      image.src = address
      image.alt = ''
      page.append(image)
      await image.decode()
      shown.push(page)
    }
    document.body.append(...shown)
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
    const answer = await host.print({})
    if (!answer.ok && answer.error.reason === 'notHere') window.print()
  } finally {
    for (const page of shown) page.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(each => each !== sheet)
    for (const address of addresses) URL.revokeObjectURL(address)
  }
}
