import type { Plan } from '../../core/plan/plan'
import type { PlannedAlternative } from '../../core/plan/planAlternatives'
import { alternativeSheets } from '../../core/reports/alternativeSheets'
import { csvTables } from '../../core/reports/csvTables'
import { geoJson } from '../../core/reports/geoJson'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { planSheets } from '../../core/reports/planSvg'
import type { Result } from '../../shared/problem'
import { renderPdf } from '../pdf/renderPdf'
import { type NamedFile, writeFiles } from './writeFiles'

/** Writes every sheet of the plan into a folder, made if missing. Returns the paths of the files. */
export async function writeSheets(
  plan: Plan,
  folder: string,
  alternatives: readonly PlannedAlternative[] = [],
): Promise<Result<readonly string[], string>> {
  const data = planSheetData(plan, alternatives)
  const sheets = planSheets(data, {
    title: 'Plan and pours',
    layers: { pours: 'full', joints: true, finishes: true, casters: true, dimensions: true, shadeTimes: [] },
  })
  const pdf = await renderPdf(pdfSet(data), { createdAt: new Date() })
  const files: NamedFile[] = [
    ...sheets.map(({ svg }, i): NamedFile => [sheets.length === 1 ? 'plan.svg' : `plan-${i + 1}.svg`, svg]),
    ...alternativeSheets(data).map(({ svg }, i): NamedFile => [`ways-to-split-${i + 1}.svg`, svg]),
    ['sheets.pdf', pdf],
    ...csvTables(data).map(({ name, text }): NamedFile => [`${name}.csv`, text]),
    ['site.geojson', `${JSON.stringify(geoJson(data))}\n`],
  ]
  return writeFiles('The sheets', files, folder)
}
