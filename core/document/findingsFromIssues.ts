import type * as z from 'zod/mini'
import type { Finding, ProblemCode, ProblemValue } from '../../shared/problem'
import { toPointer, valueAt } from './jsonPointer'

type Issue = z.core.$ZodIssue
type Steps = readonly PropertyKey[]

/** The kind of a JSON value as a finding names it. */
const kindOf = (value: unknown): string => {
  if (value === null) return 'nothing'
  if (Array.isArray(value)) return 'list'
  return typeof value === 'object' ? 'group' : typeof value
}

const expectedKinds: Readonly<Record<string, string>> = {
  array: 'list',
  tuple: 'list',
  object: 'group',
  record: 'group',
  int: 'wholeNumber',
}

const quoteText = (value: unknown): string => {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? '')
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}

const stop = (code: ProblemCode, steps: Steps, values: Readonly<Record<string, ProblemValue>> = {}): Finding => ({
  code,
  severity: 'stop',
  values,
  field: toPointer(steps),
})

const wrongType = (steps: Steps, found: unknown, expected: string): Finding => {
  if (found === undefined) return stop('missingField', steps)
  if (typeof found === 'number' && !Number.isFinite(found)) return stop('badNumber', steps, { found: String(found) })
  const plain = typeof found === 'string' || typeof found === 'number' || typeof found === 'boolean'
  return stop('wrongType', steps, {
    expected: expectedKinds[expected] ?? expected,
    kind: kindOf(found),
    ...(plain ? { found: quoteText(found) } : {}),
  })
}

/** The pattern of a text field tells what it should have been: see shared/document/primitives. */
const patternCode = (pattern: string | undefined): ProblemCode => {
  if (pattern?.includes('[a-z]+')) return 'badId'
  return pattern?.includes(':') ? 'badTime' : 'badDate'
}

/** Of the branches of a union, the one that got furthest into the value: what its author meant. */
const likeliestBranch = (branches: readonly Issue[][]): readonly Issue[] => {
  const depth = (branch: readonly Issue[]) => Math.max(...branch.map(issue => issue.path.length))
  return branches.reduce((best, branch) => (depth(branch) > depth(best) ? branch : best))
}

const findingsFromIssue = (issue: Issue, root: unknown, above: Steps): readonly Finding[] => {
  const steps = [...above, ...issue.path]
  const found = valueAt(root, steps)
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map(key => stop('unknownField', [...steps, key]))
    case 'too_small':
    case 'too_big': {
      const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum)
      if (Array.isArray(found))
        return [
          stop('outOfRange', steps, { count: found.length, [issue.code === 'too_small' ? 'least' : 'most']: limit }),
        ]
      if (found === '') return [stop('missingField', steps)]
      if (typeof found === 'string') return [stop('outOfRange', steps, { letters: found.length, most: limit })]
      if (typeof found !== 'number') return [wrongType(steps, found, 'string')]
      const edge = issue.code === 'too_small' ? (issue.inclusive ? 'min' : 'above') : 'max'
      return [stop('outOfRange', steps, { value: found, [edge]: limit })]
    }
    case 'invalid_value':
      if (found === undefined) return [stop('missingField', steps)]
      return [stop('notOneOf', steps, { found: quoteText(found), choices: issue.values.map(String).join(', ') })]
    case 'invalid_format':
      return [stop(patternCode('pattern' in issue ? issue.pattern : undefined), steps, { found: quoteText(found) })]
    case 'invalid_union': {
      if (found === undefined) return [stop('missingField', steps)]
      if ('options' in issue)
        return [stop('notOneOf', steps, { found: quoteText(found), choices: (issue.options ?? []).join(', ') })]
      const branches = issue.errors as readonly Issue[][]
      const deeper = likeliestBranch(branches)
      if (deeper.some(inner => inner.path.length > 0))
        return deeper.flatMap(inner => findingsFromIssue(inner, root, steps))
      return [fromUnion(branches.flat(), steps, found)]
    }
    case 'invalid_type':
      return [wrongType(steps, found, issue.expected)]
    default:
      throw new Error(`the door has no finding for ${issue.code}`)
  }
}

/** No branch got anywhere: the value is of no kind the field may hold. */
const fromUnion = (issues: readonly Issue[], steps: Steps, found: unknown): Finding => {
  const range = issues.find(issue => issue.code === 'too_small' || issue.code === 'too_big')
  if (range !== undefined && typeof found === 'number')
    return findingsFromIssue({ ...range, path: [] }, undefined, steps)[0] ?? stop('wrongType', steps)
  const words = issues.flatMap(issue => (issue.code === 'invalid_value' ? issue.values.map(String) : []))
  if (typeof found === 'number' && !Number.isFinite(found)) return stop('badNumber', steps, { found: String(found) })
  const kind = issues.find(issue => issue.code === 'invalid_type')
  return stop('notOneOf', steps, {
    found: quoteText(found),
    choices: words.join(', '),
    ...(kind?.code === 'invalid_type' ? { orKind: expectedKinds[kind.expected] ?? kind.expected } : {}),
  })
}

/** Nobody mends more than these in one go. */
const mostIssues = 50

/** What zod refused, as findings with JSON pointers; `root` is the value it was given. The rest is counted. */
export const findingsFromIssues = (issues: readonly Issue[], root: unknown): readonly Finding[] => {
  const findings = issues.slice(0, mostIssues).flatMap(issue => findingsFromIssue(issue, root, []))
  const left = issues.length - mostIssues
  return left > 0 ? [...findings, { code: 'moreFaults', severity: 'stop', values: { count: left } }] : findings
}
