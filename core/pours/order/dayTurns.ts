/** Turns of a day: which pours a crew starts first, and which when those are done; the sun each gets by its hour. */

export interface OrderSun {
  /** Pours started at one time. */
  readonly crews: number
  /** For each day of the problem and each turn of it, rising: which of the starts. */
  readonly startOf: readonly (readonly number[])[]
  /**
   * For each pour and start: hours of direct sun on it from placing to its last print, each weighed by the part in sun,
   * beyond those of its best start, ≥ 0. Zeros for pours that do not fill a crew's day.
   */
  readonly extraH: readonly (readonly number[])[]
}

/** Turns it takes to place so many pours. */
export const turnsOf = (pours: number, crews: number): number => Math.max(1, Math.ceil(pours / Math.max(1, crews)))

/** Smaller pours are placed along with others and wait for no turn. */
export const fillsDay = (load: number): boolean => load > 1 - 1e-6

export interface TurnShare {
  /** The turn of each pour, from 0. */
  readonly turns: readonly number[]
  readonly extraH: number
}

/**
 * The pours of a day shared out so that the least sun lies on them: each turn is full before the next begins; of equals
 * the first named goes first. Exact. `starts` = the start of each turn of that day.
 */
export function assignTurns(pours: readonly number[], starts: readonly number[], sun: OrderSun): TurnShare {
  const { crews, extraH } = sun
  const count = Math.min(starts.length, turnsOf(pours.length, crews))
  const at = (pour: number, turn: number): number => extraH[pour]![starts[turn]!]!
  if (count <= 1) return { turns: pours.map(() => 0), extraH: pours.reduce((sum, pour) => sum + at(pour, 0), 0) }
  // What more than the turns hold goes into the last.
  const room = Array.from({ length: count }, (_, t) =>
    t < count - 1 ? crews : Math.max(crews, pours.length - crews * (count - 1)),
  )
  let spare = room.reduce((sum, own) => sum + own, 0) - pours.length
  for (let t = count - 1; spare > 0; t--) {
    const taken = Math.min(spare, room[t]!)
    room[t]! -= taken
    spare -= taken
  }
  const known = new Map<string, TurnShare>()
  const share = (first: number, left: readonly number[]): TurnShare => {
    if (first === pours.length) return { turns: [], extraH: 0 }
    const key = `${first} ${left.join()}`
    const found = known.get(key)
    if (found) return found
    let best: TurnShare | null = null
    for (let t = 0; t < count; t++) {
      if (left[t] === 0) continue
      const rest = share(
        first + 1,
        left.map((own, i) => (i === t ? own - 1 : own)),
      )
      const sum = at(pours[first]!, t) + rest.extraH
      if (best === null || sum < best.extraH - 1e-9) best = { turns: [t, ...rest.turns], extraH: sum }
    }
    known.set(key, best!)
    return best!
  }
  return share(0, room)
}

/** What a pour costs in the first turn of some day and in a later one, at the least. */
export interface LeastSun {
  readonly first: number
  readonly later: number
}

export const leastSun = ({ startOf, extraH }: OrderSun): LeastSun[] => {
  const firsts = [...new Set(startOf.flatMap(starts => starts.slice(0, 1)))]
  const laters = [...new Set(startOf.flatMap(starts => starts.slice(1)))]
  const least = (row: readonly number[], starts: readonly number[]): number =>
    starts.reduce((low, start) => Math.min(low, row[start]!), Number.POSITIVE_INFINITY)
  return extraH.map(row => {
    const first = least(row, firsts)
    return { first, later: laters.length === 0 ? first : least(row, laters) }
  })
}
