/** Puts a finding into words: what happened, where, what to do; in the unit system of the site. */
import type { Finding, ProblemValue } from '../../shared/problem'
import type { Measures } from '../units/measures'

export interface Words {
  readonly message: string
  readonly hint?: string
}

export interface Told {
  readonly values: Readonly<Record<string, ProblemValue>>
  readonly finding: Finding
  readonly print: Measures
  /** Of the site's clock; instants are told in UTC without it. */
  readonly zone?: string
}

export type Wording = (told: Told) => Words
