import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'

/** Findings as sentences in the site's units and by its clock, each with what to do about it. */
export const wordFindings = (site: Site, findings: readonly Finding[]): string =>
  findings
    .map(finding => {
      const { message, hint } = wordProblem(finding, printMeasures(site.units), site.place.zone)
      return hint === undefined ? message : `${message} ${hint}`
    })
    .join(' ')
