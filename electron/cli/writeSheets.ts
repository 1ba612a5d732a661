import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Plan } from '../../core/plan/plan'
import { csvTables } from '../../core/reports/csvTables'
import { geoJson } from '../../core/reports/geoJson'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { planSheets } from '../../core/reports/planSvg'
import { err, ok, type Result } from '../../shared/problem'
import { renderPdf } from '../pdf/renderPdf'

/** Writes every sheet of the plan into a folder, made if missing. Returns the paths of the files. */
export async function writeSheets(plan: Plan, folder: string): Promise<Result<readonly string[], string>> {
  const data = planSheetData(plan)
  const sheets = planSheets(data, {
    title: 'Plan and pours',
    layers: { pours: 'full', joints: true, finishes: true, casters: true, dimensions: true, shadeTimes: [] },
  })
  const pdf = await renderPdf(pdfSet(data), { createdAt: new Date() })
  const files: [name: string, content: string | Uint8Array][] = [
    ...sheets.map(({ svg }, i): [string, string] => [sheets.length === 1 ? 'plan.svg' : `plan-${i + 1}.svg`, svg]),
    ['sheets.pdf', pdf],
    ...csvTables(data).map(({ name, text }): [string, string] => [`${name}.csv`, text]),
    ['site.geojson', `${JSON.stringify(geoJson(data))}\n`],
  ]
  try {
    await mkdir(folder, { recursive: true })
    const paths: string[] = []
    for (const [name, content] of files) {
      const path = join(folder, name)
      await writeFile(path, content)
      paths.push(path)
    }
    return ok(paths)
  } catch (error) {
    return err(`The sheets cannot be written into ${folder}: ${(error as Error).message}.\n`)
  }
}
