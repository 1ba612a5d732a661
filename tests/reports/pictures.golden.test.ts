/** Pictures and texts that were looked at before they were accepted. A changed one lands beside the old as `-changed`. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { derivePlan } from '../../core/plan/derivePlan'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { planSheets } from '../../core/reports/planSvg'
import { renderPdf } from '../../electron/pdf/renderPdf'
import { pdfTexts } from './pdfTexts'

const folder = join(import.meta.dirname, '../golden')

function expectGolden(name: string, ending: 'svg' | 'txt', actual: string): void {
  const path = join(folder, `${name}.${ending}`)
  const changed = join(folder, `${name}-changed.${ending}`)
  const known = existsSync(path) ? readFileSync(path, 'utf8') : undefined
  if (known === actual) {
    rmSync(changed, { force: true })
    return
  }
  writeFileSync(changed, actual)
  expect.fail(
    known === undefined ? `${path} is missing: look at ${changed} and rename it` : `${path} differs: see ${changed}`,
  )
}

function dataOf(sample: string) {
  const path = join(import.meta.dirname, `../../samples/${sample}.slabwright.json`)
  const site = readSite(readFileSync(path))
  if (!site.ok) throw new Error(`${sample} cannot be read`)
  const plan = derivePlan(site.value, { date: '2026-07-21' })
  if (!plan.ok) throw new Error(`${sample} has no plan`)
  return planSheetData(plan.value)
}

describe.each(['l-patio-accepted', 'metric-terrace'])('the sheets of %s', sample => {
  const data = dataOf(sample)

  it('draw the same plan', () => {
    const sheets = planSheets(data, {
      title: 'Plan and pours',
      layers: { pours: 'full', joints: true, finishes: true, casters: true, dimensions: true, shadeTimes: [] },
    })
    expect(sheets).toHaveLength(1)
    expectGolden(`${sample}-plan`, 'svg', sheets[0]!.svg)
  })

  it('say the same on every page of the PDF, and two runs give the same bytes', async () => {
    const set = pdfSet(data)
    const options = { compress: false, createdAt: new Date(0) }
    const bytes = await renderPdf(set, options)
    expect(Buffer.from(await renderPdf(set, options)).equals(Buffer.from(bytes))).toBe(true)
    expectGolden(`${sample}-sheets`, 'txt', pdfTexts(bytes))
  })
})
