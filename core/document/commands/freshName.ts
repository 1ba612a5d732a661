/** The name itself where it is free, else the next free number after it: "Patio 2", and "Patio 3" for a copy of that. */
export const freshName = (name: string, taken: ReadonlySet<string>): string => {
  if (!taken.has(name)) return name
  const [, word = name, number = '1'] = /^(.*\S) (\d{1,6})$/.exec(name) ?? []
  let n = Number(number) + 1
  while (taken.has(`${word} ${n}`)) n++
  return `${word} ${n}`
}
