/** The sheets of a plan that can be looked at and sent. */
import type { Plan } from '../../core/plan/plan'
import type { PlannedAlternative } from '../../core/plan/planAlternatives'
import { daySheet } from '../../core/reports/day/daySheet'
import type { PdfSection, PdfSet } from '../../core/reports/pdfSet'
import { pdfSet } from '../../core/reports/pdfSet'
import { planSheetData } from '../../core/reports/planSheetData'
import { sectionSvg } from '../../core/reports/sectionSvg'

export interface SheetPicture {
  readonly id: string
  readonly name: string
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
}

/** A sheet of the list: its pages to be set, and each page as a picture. */
export interface ListedSheet {
  readonly id: string
  readonly name: string
  readonly sections: readonly PdfSection[]
  readonly pages: readonly SheetPicture[]
  /** The same for a phone: drawings as they are, tables and texts set in narrow columns. */
  readonly phonePages: readonly SheetPicture[]
}

/** A phone held upright in points: three pixels each. */
const phonePt = 420

function picturesOf(sections: readonly PdfSection[], id: string, name: string, widthPt?: number): SheetPicture[] {
  return sections.map((section, i) => {
    const own = {
      id: sections.length === 1 ? id : `${id}-${i + 1}`,
      name: sections.length === 1 ? name : `${name}, page ${i + 1}`,
    }
    const [node] = section.content
    if (section.content.length === 1 && typeof node === 'object' && 'svg' in node)
      return { ...own, svg: node.svg, widthPt: section.widthPt, heightPt: section.heightPt }
    return { ...own, ...sectionSvg(section, widthPt) }
  })
}

const listed = (id: string, name: string, sections: readonly PdfSection[]): ListedSheet => ({
  id,
  name,
  sections,
  pages: picturesOf(sections, id, name),
  phonePages: picturesOf(sections, id, name, phonePt),
})

export interface SheetList {
  readonly set: PdfSet
  readonly sheets: readonly ListedSheet[]
}

export function sheetList(plan: Plan, alternatives: readonly PlannedAlternative[] = []): SheetList {
  const set = pdfSet(planSheetData(plan, alternatives))
  const seen = new Map<string, number>()
  const sheets: ListedSheet[] = set.sections.map((section, i) => {
    const base = section.name ?? 'Sheet'
    const count = (seen.get(base) ?? 0) + 1
    seen.set(base, count)
    return listed(`set-${i}`, count === 1 ? base : `${base}, ${count}`, [section])
  })
  for (const { pourId, number } of plan.dayPlans) {
    const { sections } = daySheet(plan, pourId)
    sheets.push(listed(`day-${pourId}`, `Day sheet, pour ${number}`, sections))
  }
  return { set, sheets }
}

/** The chosen sheets as one set, in the order of the list. */
export const chosenSet = ({ set, sheets }: SheetList, leftOut: readonly string[]): PdfSet => ({
  ...set,
  sections: sheets.filter(({ id }) => !leftOut.includes(id)).flatMap(({ sections }) => sections),
})
