/** JSON pointers (RFC 6901): how a finding names a field of the document. */
export type PointerStep = string | number

export const toPointer = (steps: readonly PropertyKey[]): string =>
  steps.map(step => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

export const fromPointer = (pointer: string): readonly string[] =>
  pointer
    .split('/')
    .slice(1)
    .map(step => step.replaceAll('~1', '/').replaceAll('~0', '~'))

/** The value a path leads to, or `undefined` where the path leaves the document. */
export const valueAt = (root: unknown, steps: readonly PropertyKey[]): unknown => {
  let value = root
  for (const step of steps) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined
    value = (value as Record<PropertyKey, unknown>)[step]
  }
  return value
}
