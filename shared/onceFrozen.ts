/**
 * `work`, once for an object that can no longer change, as most of a document stays through an edit; anew each time for
 * one that can. `holds`: whether what was worked out before answers for the further arguments too.
 */
export function onceFrozen<K extends object, V extends object | string | null, Rest extends readonly unknown[]>(
  work: (key: K, ...rest: Rest) => V,
  holds: (known: V, ...rest: Rest) => boolean = () => true,
): (key: K, ...rest: Rest) => V {
  const worked = new WeakMap<K, V>()
  return (key, ...rest) => {
    const known = worked.get(key)
    if (known !== undefined && holds(known, ...rest)) return known
    const made = work(key, ...rest)
    if (Object.isFrozen(key)) worked.set(key, made)
    return made
  }
}
