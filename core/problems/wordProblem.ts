import type { Finding, Problem, ProblemCode } from '../../shared/problem'
import type { Measures } from '../units/measures'
import { concreteWordings } from './concreteWordings'
import { dayWordings } from './dayWordings'
import { doorWordings } from './doorWordings'
import { editWordings } from './editWordings'
import { geometryWordings } from './geometryWordings'
import { orderWordings } from './orderWordings'
import { pourWordings } from './pourWordings'
import { priceWordings } from './priceWordings'
import { sunWordings } from './sunWordings'
import type { Wording } from './wording'

const wordings: Record<ProblemCode, Wording> = {
  ...doorWordings,
  ...geometryWordings,
  ...sunWordings,
  ...pourWordings,
  ...orderWordings,
  ...concreteWordings,
  ...editWordings,
  ...dayWordings,
  ...priceWordings,
}

/** Puts a finding into words, in the unit system that `print` prints and by the clock of the zone. */
export const wordProblem = (finding: Finding, print: Measures, zone?: string): Problem => {
  const words = wordings[finding.code]({
    ...{ values: finding.values, finding, print },
    ...(zone === undefined ? {} : { zone }),
  })
  return {
    code: finding.code,
    severity: finding.severity,
    message: words.message,
    values: { ...finding.values },
    ...(finding.field === undefined ? {} : { field: finding.field }),
    ...(finding.at === undefined ? {} : { at: atOf(finding.at) }),
    ...(words.hint === undefined ? {} : { hint: words.hint }),
  }
}

const atOf = ({ entityId, point }: NonNullable<Finding['at']>): NonNullable<Problem['at']> => ({
  entityId,
  ...(point === undefined ? {} : { point: [point[0], point[1]] }),
})
