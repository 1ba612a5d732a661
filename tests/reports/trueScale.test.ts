import { describe, expect, it } from 'vitest'
import { chooseScale, scalePtPerM, scalesOf } from '../../core/reports/drawingScale'
import { papers } from '../../core/reports/paper'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheets } from '../../core/reports/planSvg'
import { renderPdf } from '../../electron/pdf/renderPdf'
import { fullPlan as layers, patio } from './patio'
import { pdfPaths } from './pdfPaths'

const footM = 0.3048
const pathOf = (svg: string, id: string): [number, number][] => {
  const d = new RegExp(`id="${id}" d="([^"]+)"`).exec(svg)?.[1] ?? ''
  return [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(m => [Number(m[1]), Number(m[2])])
}

describe('true scale', () => {
  it('draws at 1/4 in = 1 ft as 1:48, at 1/8 in as 1:96, at 1 in = 20 ft as 1:240 (exact by definition of the inch)', () => {
    const ratio = (name: string): number | undefined => scalesOf('ftin').find(s => s.name === name)?.ratio
    expect(ratio('1/4 in = 1 ft')).toBe(48)
    expect(ratio('1/8 in = 1 ft')).toBe(96)
    expect(ratio('1/16 in = 1 ft')).toBe(192)
    expect(ratio('1 in = 20 ft')).toBe(240)
  })

  it('draws the bar of 10 ft exactly as long as the scale says, at every scale where it fits', () => {
    let seen = 0
    for (const scale of scalesOf('ftin')) {
      const [sheet] = planSheets(patio, { title: 'Plan', layers, scale, papers: [papers.archD] })
      if (!sheet?.svg.includes('>10 ft<')) continue
      seen++
      const [left, right] = pathOf(sheet.svg, 'scale-bar')
      expect(right![0] - left![0]).toBeCloseTo((120 * 72) / scale.ratio, 2)
    }
    expect(seen).toBeGreaterThanOrEqual(5)
  })

  it('draws the bar and the slab at that length on the page of the PDF', async () => {
    const set = pdfSet(patio)
    const bytes = await renderPdf(set, { compress: false, createdAt: new Date(0) })
    const paths = pdfPaths(bytes)
    const [sheet] = planSheets(patio, { title: 'Plan', layers })
    const ptPerFt = footM * scalePtPerM(sheet!.scale)
    const widths = paths.map(p => p.width)
    expect(widths.some(w => Math.abs(w - 10 * ptPerFt) < 0.01)).toBe(true)
    const slab = paths.find(p => Math.abs(p.width - 50 * ptPerFt) < 0.01 && Math.abs(p.height - 42 * ptPerFt) < 0.01)
    expect(slab).toBeDefined()
  })

  it('takes the smallest paper that is readable, and the page has exactly its size', () => {
    const [sheet] = planSheets(patio, { title: 'Plan', layers })
    expect(sheet!.paper.name).toBe('Letter')
    expect([sheet!.widthPt, sheet!.heightPt]).toEqual([792, 612])
    expect(papers.archC).toMatchObject({ widthPt: 1296, heightPt: 1728 })
    expect(papers.a4.widthPt).toBeCloseTo(595.276, 3)
    expect(papers.a1.heightPt).toBeCloseTo(2383.937, 3)
  })

  it('makes tiles with match lines where the wished scale does not fit, and they cover the slab', () => {
    const scale = scalesOf('ftin')[0]!
    const sheets = planSheets(patio, { title: 'Plan', layers, scale, papers: [papers.letter] })
    expect(sheets.length).toBeGreaterThan(4)
    for (const { svg } of sheets) expect(svg).toContain('match line, sheet')
    const choice = chooseScale({
      units: 'ftin',
      widthM: 100,
      heightM: 10,
      marginPt: 50,
      readablePtPerM: 0,
      windowOf: () => ({ widthPt: 500, heightPt: 400 }),
      overlapPt: 36,
      papers: [papers.letter],
      scale,
    })
    const widthPt = 100 * scalePtPerM(scale) + 100
    expect(choice.columns * (500 - 36) + 36).toBeGreaterThanOrEqual(widthPt)
    expect((choice.columns - 1) * (500 - 36) + 36).toBeLessThan(widthPt)
  })
})
