import { describe, expect, it } from 'vitest'
import type { PdfNode } from '../../core/reports/pdfNode'
import { type PdfSection, pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { sectionSvg } from '../../core/reports/sectionSvg'
import { widthOf } from '../../core/reports/svgPen'
import { planOf, sampleSite } from '../plan/sampleSite'

const sections = pdfSet(planSheetData(planOf(sampleSite('l-patio-accepted')))).sections.filter(({ foot }) => foot)

const wordsOf = (node: PdfNode): string[] => {
  if (typeof node === 'string') return node.split(/\s+/)
  if ('text' in node)
    return typeof node.text === 'string' ? node.text.split(/\s+/) : node.text.flatMap(part => wordsOf(part))
  if ('stack' in node) return node.stack.flatMap(wordsOf)
  if ('table' in node) return node.table.body.flat().flatMap(wordsOf)
  return []
}

const texts = (svg: string) =>
  [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"([^>]*)font-size="([\d.]+)"([^>]*)>([^<]*)</g)].map(
    ([, x, y, family, size, rest, text]) => ({
      x: Number(x),
      y: Number(y),
      face: family!.includes('Zilla') ? ('name' as const) : family === '' ? ('plan' as const) : ('planBold' as const),
      sizePt: Number(size),
      isEnd: rest!.includes('text-anchor="end"'),
      text: text!.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&'),
    }),
  )

describe('a sheet of tables and texts as a picture', () => {
  it('holds every word, in order', () => {
    expect(sections.length).toBeGreaterThan(2)
    for (const section of sections) {
      const shown = texts(sectionSvg(section).svg).flatMap(({ text }) => text.split(/\s+/))
      const counts = new Map<string, number>()
      for (const word of shown) counts.set(word, (counts.get(word) ?? 0) + 1)
      for (const word of section.content.flatMap(wordsOf).filter(Boolean)) {
        expect(counts.get(word) ?? 0, word).toBeGreaterThan(0)
        counts.set(word, counts.get(word)! - 1)
      }
    }
  })

  it.each([undefined, 420])('keeps within its page, %s points wide', widthPt => {
    for (const section of sections) {
      const picture = sectionSvg(section, widthPt)
      expect(picture.widthPt).toBe(widthPt ?? section.widthPt)
      for (const { x, y, face, sizePt, isEnd, text } of texts(picture.svg)) {
        const right = isEnd ? x : x + widthOf(text, sizePt, face)
        // A single word may be wider than a narrow column; it is never wider than the page.
        expect(right, text).toBeLessThanOrEqual(picture.widthPt)
        expect(y).toBeLessThan(picture.heightPt)
      }
    }
  })

  it('is taller where it is narrower', () => {
    for (const section of sections)
      expect(sectionSvg(section, 300).heightPt).toBeGreaterThan(sectionSvg(section).heightPt)
  })

  it('takes a drawing in at its size in points, or smaller where the page is', () => {
    const drawing = {
      svg: '<svg xmlns="x" width="400pt" height="200pt" viewBox="0 0 400 200"></svg>',
      width: 400,
      height: 200,
    }
    const section: PdfSection = {
      widthPt: 500,
      heightPt: 700,
      margin: [50, 50, 50, 50],
      foot: true,
      letterPt: 12,
      content: [drawing],
    }
    expect(sectionSvg(section)).toMatchObject({
      heightPt: 300,
      svg: expect.stringContaining('width="400" height="200"'),
    })
    // 236 − 2 × 18 leaves 200: half the size.
    expect(sectionSvg(section, 236).heightPt).toBe(100 + 36)
  })
})
