/** Runs what is asked for one key after the other, in the order of asking; different keys run side by side. */
export function queueByKey(): <T>(key: string, action: () => Promise<T>) => Promise<T> {
  const tails = new Map<string, Promise<unknown>>()
  return (key, action) => {
    const run = (tails.get(key) ?? Promise.resolve()).then(action, action)
    const tail = run.then(
      () => {},
      () => {},
    )
    tails.set(key, tail)
    void tail.then(() => {
      if (tails.get(key) === tail) tails.delete(key)
    })
    return run
  }
}
