/** Strips and their retarder in few words. */

interface Dosed {
  readonly id: string
  readonly doseMin: number
}

/** `a`, `a and b`, `a to d`: strips that follow one another. */
const rangeOf = (ids: readonly string[]): string => (ids.length < 3 ? ids.join(' and ') : `${ids[0]} to ${ids.at(-1)}`)

/** “a to c plain, d 30 min, e and f 60 min”, for strips in placing order. */
export function tellDoses(strips: readonly Dosed[]): string {
  const groups: { doseMin: number; ids: string[] }[] = []
  for (const { id, doseMin } of strips) {
    const last = groups.at(-1)
    if (last?.doseMin === doseMin) last.ids.push(id)
    else groups.push({ doseMin, ids: [id] })
  }
  return groups.map(({ doseMin, ids }) => `${rangeOf(ids)} ${doseMin === 0 ? 'plain' : `${doseMin} min`}`).join(', ')
}

/** The same of one load, from its parts. */
export const tellPortions = (
  portions: readonly { readonly stripIds: readonly string[]; readonly doseMin: number }[],
): string => tellDoses(portions.flatMap(({ stripIds, doseMin }) => stripIds.map(id => ({ id, doseMin }))))
