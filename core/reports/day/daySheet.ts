/** The sheet pinned up on the day of one pour: two pages, readable in black and white and at arm's length. */

import type { Plan } from '../../plan/plan'
import { papers } from '../paper'
import type { PdfSet } from '../pdfSet'
import { pictureSection } from '../pictureSection'
import { sheetText } from '../sheetText'
import { letterPt } from './dayColumn'
import { firstPage } from './dayFirstPage'
import { leastRowPt, secondPage, secondPageWays } from './daySecondPage'

/** Two pages for one pour of a plan. Throws when the pour has no day plan. */
export function daySheet(plan: Plan, pourId: string): PdfSet {
  const day = plan.dayPlans.find(own => own.pourId === pourId)
  if (!day) throw new Error(`pour ${pourId} has no day plan`)
  const { widthPt, heightPt } = plan.site.units === 'ftin' ? papers.letter : papers.a4
  const page = (svg: string) => pictureSection({ svg, widthPt, heightPt }, letterPt)
  const of = { plan, day }
  const first = firstPage(of, widthPt, heightPt)
  let second = ''
  for (const way of secondPageWays) {
    const { svg, rowPt } = secondPage(of, widthPt, heightPt, first, way)
    second = svg
    if (rowPt >= leastRowPt) break
  }
  return {
    title: sheetText(`${plan.site.name}, day sheet of pour ${day.number}`),
    subject: sheetText(`${plan.site.name}, ${day.date}`),
    footText: '',
    sections: [page(first.svg), page(second)],
  }
}
