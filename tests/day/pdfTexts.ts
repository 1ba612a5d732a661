/** The texts of a PDF as its pages show them, read by a reference reader of the format (ISO 32000). */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfText {
  readonly page: number
  readonly text: string
  /** From the left and from the top of the page to the start of the baseline, pt. */
  readonly x: number
  readonly y: number
  /** Height of the font on the page, pt: all scaling of the page's drawing in it. */
  readonly sizePt: number
}

export async function pdfTexts(bytes: Uint8Array): Promise<readonly PdfText[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, isEvalSupported: false, useSystemFonts: false })
  const document = await task.promise
  const texts: PdfText[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const { height } = page.getViewport({ scale: 1 })
    for (const item of (await page.getTextContent()).items) {
      if (!('str' in item) || item.str.trim() === '') continue
      const [, , c, d, x, y] = item.transform as number[]
      texts.push({ page: number, text: item.str, x: x!, y: height - y!, sizePt: Math.hypot(c!, d!) })
    }
  }
  await task.destroy()
  return texts
}
