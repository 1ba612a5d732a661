import type * as z from 'zod/mini'
import type { Finding } from '../../../shared/problem'
import { findingsFromIssues } from '../findingsFromIssues'

/** The first that its schema says against a part of the document, which stands at `field`, a JSON pointer. */
export const firstFault = (schema: z.ZodMiniType, part: unknown, field: string): Finding | undefined => {
  const read = schema.safeParse(part)
  const [found] = read.success ? [] : findingsFromIssues(read.error.issues, part)
  return found && { ...found, field: `${field}${found.field ?? ''}` }
}
