/**
 * Which part of which load gets how much retarder. Exact: labels over the strips in placing order keep every way that
 * may still turn out best; in growth order an interval of stamped strips grows at either end. Minutes since the start.
 */

/** When a strip's work may begin and must be over, for one dose and one count of mixing stops before it is placed. */
export interface StripWindow {
  readonly colorFromMin: number
  readonly readyMin: number
  readonly tooHardMin: number
}

export interface DoseProblem {
  /** Load of each strip, in placing order, not falling. */
  readonly loadOf: readonly number[]
  /** Concrete of each strip. */
  readonly volumeM3: readonly number[]
  /** Ascending, the first 0. */
  readonly dosesMin: readonly number[]
  /** windows[strip][dose][stops]; stops run from 0 to `mostStops`. */
  readonly windows: readonly (readonly (readonly StripWindow[])[])[]
  readonly mostStops: number
  /** All concrete is down, by the count of mixing stops in the whole pour: nobody stamps before. */
  readonly placedMin: readonly number[]
  readonly colorMin: readonly number[]
  readonly stampMin: readonly number[]
  /** Work of the hands that print the border alone; all 0 without them. */
  readonly borderMin: readonly number[]
  /** Doses that are already in, one index a strip from the first on; the rest is open. */
  readonly fixedDoses?: readonly number[]
}

/** A dose goes into the drum: it can be raised within a load, never lowered. Each raise is a mixing stop. */
export interface DayState {
  /** When each gang is free. */
  readonly colorMin: number
  readonly stampMin: number
  readonly borderMin: number
  /** Least time between the end of the work on a strip and too hard, so far. */
  readonly slackMin: number
  /** m³·min of retarder. */
  readonly cost: number
  readonly stops: number
  /** Index of the dose in the drum. */
  readonly dose: number
}

export const startState: DayState = {
  colorMin: 0,
  stampMin: 0,
  borderMin: 0,
  slackMin: Number.POSITIVE_INFINITY,
  cost: 0,
  stops: 0,
  dose: 0,
}

export interface StripTimes {
  readonly strip: number
  readonly dose: number
  readonly stops: number
  readonly colorFromMin: number
  readonly colorToMin: number
  readonly stampFromMin: number
  readonly stampToMin: number
  readonly borderFromMin: number
  readonly borderToMin: number
  readonly window: StripWindow
}

/** The next strip in placing order with a dose; null when the drum already has more. `allStops` = stops of the pour. */
export function advance(
  problem: DoseProblem,
  state: DayState,
  strip: number,
  dose: number,
  allStops: number,
  times?: StripTimes[],
): DayState | null {
  const isFirstOfLoad = strip === 0 || problem.loadOf[strip] !== problem.loadOf[strip - 1]
  const before = isFirstOfLoad ? 0 : state.dose
  const fixed = problem.fixedDoses?.[strip]
  if (dose < before || (fixed !== undefined && dose !== fixed)) return null
  const stops = state.stops + (dose > before ? 1 : 0)
  if (stops > allStops) return null
  const window = problem.windows[strip]![dose]![stops]!
  const colorFrom = Math.max(state.colorMin, window.colorFromMin)
  const colorTo = colorFrom + problem.colorMin[strip]!
  const opens = Math.max(window.readyMin, colorTo, problem.placedMin[allStops]!)
  const stampFrom = Math.max(state.stampMin, opens)
  const stampTo = stampFrom + problem.stampMin[strip]!
  const border = problem.borderMin[strip]!
  const borderFrom = Math.max(state.borderMin, opens)
  const borderTo = border > 0 ? borderFrom + border : state.borderMin
  const last = border > 0 ? Math.max(stampTo, borderTo) : stampTo
  times?.push({
    ...{ strip, dose, stops, window, colorFromMin: colorFrom, colorToMin: colorTo },
    ...{ stampFromMin: stampFrom, stampToMin: stampTo, borderFromMin: borderFrom, borderToMin: borderTo },
  })
  return {
    colorMin: colorTo,
    stampMin: stampTo,
    borderMin: borderTo,
    slackMin: Math.min(state.slackMin, window.tooHardMin - last),
    cost: state.cost + problem.volumeM3[strip]! * problem.dosesMin[dose]!,
    stops,
    dose,
  }
}

/** Mixing stops that doses make, one index a strip; null where a dose is lowered within a load. */
export function countStops(problem: DoseProblem, doses: readonly number[]): number | null {
  let stops = 0
  for (let strip = 0; strip < doses.length; strip++) {
    const before = strip > 0 && problem.loadOf[strip] === problem.loadOf[strip - 1] ? doses[strip - 1]! : 0
    if (doses[strip]! < before) return null
    if (doses[strip]! > before) stops++
  }
  return stops
}

export interface DoseRun {
  readonly doses: readonly number[]
  readonly slackMin: number
  readonly cost: number
  /** In the order in which the strips are stamped. */
  readonly order: readonly number[]
  readonly times: readonly StripTimes[]
}

/** The day with given doses, stamped in placing order; null where a dose is lowered within a load. */
export function runDoses(problem: DoseProblem, doses: readonly number[]): DoseRun | null {
  const allStops = countStops(problem, doses)
  if (allStops === null || allStops > problem.mostStops) return null
  let state: DayState | null = startState
  const times: StripTimes[] = []
  for (let strip = 0; strip < doses.length && state; strip++)
    state = advance(problem, state, strip, doses[strip]!, allStops, times)
  if (!state) return null
  return { doses, slackMin: state.slackMin, cost: state.cost, order: doses.map((_, i) => i), times }
}

interface Label {
  readonly state: DayState
  readonly before: Label | null
}

/** Whether a is at least as good as b in everything that can still matter. */
const covers = (a: DayState, b: DayState, goal: 'slack' | 'cost'): boolean =>
  a.colorMin <= b.colorMin &&
  a.stampMin <= b.stampMin &&
  a.borderMin <= b.borderMin &&
  (goal === 'slack' ? a.slackMin >= b.slackMin : a.cost <= b.cost)

function prune(labels: Label[], goal: 'slack' | 'cost'): Label[] {
  labels.sort((a, b) =>
    goal === 'slack'
      ? b.state.slackMin - a.state.slackMin
      : a.state.cost - b.state.cost || a.state.stampMin - b.state.stampMin,
  )
  const kept: Label[] = []
  for (const label of labels) {
    const { state } = label
    if (
      !kept.some(
        other =>
          other.state.stops === state.stops && other.state.dose === state.dose && covers(other.state, state, goal),
      )
    )
      kept.push(label)
  }
  return kept
}

const dosesOf = (label: Label): number[] => {
  const doses: number[] = []
  for (let at: Label = label; at.before; at = at.before) doses.unshift(at.state.dose)
  return doses
}

/** The best label for each count of stops in the whole pour. `accept` drops labels that can no longer win. */
function search(
  problem: DoseProblem,
  goal: 'slack' | 'cost',
  accept: (state: DayState) => boolean,
  found: (label: Label) => void,
): void {
  const strips = problem.loadOf.length
  for (let allStops = 0; allStops <= problem.mostStops; allStops++) {
    let labels: Label[] = [{ state: startState, before: null }]
    for (let strip = 0; strip < strips && labels.length > 0; strip++) {
      const isLast = strip === strips - 1
      const next: Label[] = []
      for (const before of labels)
        for (let dose = 0; dose < problem.dosesMin.length; dose++) {
          const state = advance(problem, before.state, strip, dose, allStops)
          if (!state || !accept(state) || (isLast && state.stops !== allStops)) continue
          next.push({ state, before })
        }
      labels = next.length > 1 ? prune(next, goal) : next
    }
    for (const label of labels) found(label)
  }
}

/** Largest slack of any dosing that beats `over`; null when none does. Among equals the least retarder seen. */
export function largestSlack(problem: DoseProblem, over = Number.NEGATIVE_INFINITY): DoseRun | null {
  let best: Label | null = null
  let bestMin = over
  search(
    problem,
    'slack',
    state => state.slackMin > bestMin,
    label => {
      if (label.state.slackMin > bestMin) [best, bestMin] = [label, label.state.slackMin]
    },
  )
  return best === null ? null : runDoses(problem, dosesOf(best))
}

/** The least retarder that keeps the slack wanted and costs under `under`; null when there is none. */
export function cheapestDoses(
  problem: DoseProblem,
  wantedMin: number,
  under = Number.POSITIVE_INFINITY,
): DoseRun | null {
  let best: Label | null = null
  let least = under
  search(
    problem,
    'cost',
    state => state.slackMin >= wantedMin && state.cost < least,
    label => {
      if (label.state.cost < least) [best, least] = [label, label.state.cost]
    },
  )
  return best === null ? null : runDoses(problem, dosesOf(best))
}

interface GrowthLabel {
  readonly stampMin: number
  readonly borderMin: number
  readonly slackMin: number
  readonly strip: number
  readonly before: GrowthLabel | null
}

function pruneGrowth(labels: GrowthLabel[]): GrowthLabel[] {
  labels.sort((a, b) => b.slackMin - a.slackMin || a.stampMin - b.stampMin)
  const kept: GrowthLabel[] = []
  for (const label of labels)
    if (!kept.some(k => k.slackMin >= label.slackMin && k.stampMin <= label.stampMin && k.borderMin <= label.borderMin))
      kept.push(label)
  return kept
}

/** One strip stamped next, whatever the order; color keeps the placing order. */
function stampNext(
  problem: DoseProblem,
  placed: readonly StripTimes[],
  placedMin: number,
  strip: number,
  from: GrowthLabel | null,
): GrowthLabel {
  const { window, colorToMin } = placed[strip]!
  const opens = Math.max(window.readyMin, colorToMin, placedMin)
  const stampTo = Math.max(from?.stampMin ?? 0, opens) + problem.stampMin[strip]!
  const border = problem.borderMin[strip]!
  const borderTo = border > 0 ? Math.max(from?.borderMin ?? 0, opens) + border : (from?.borderMin ?? 0)
  const last = border > 0 ? Math.max(stampTo, borderTo) : stampTo
  return {
    stampMin: stampTo,
    borderMin: borderTo,
    slackMin: Math.min(from?.slackMin ?? Number.POSITIVE_INFINITY, window.tooHardMin - last),
    strip,
    before: from,
  }
}

/** The day with given doses, stamped in a given order. */
export function runInOrder(problem: DoseProblem, doses: readonly number[], order: readonly number[]): DoseRun | null {
  const placed = runDoses(problem, doses)
  const stops = countStops(problem, doses)
  if (!placed || stops === null) return null
  const placedMin = problem.placedMin[stops]!
  let label: GrowthLabel | null = null
  const times = order.map(strip => {
    label = stampNext(problem, placed.times, placedMin, strip, label)
    const own = placed.times[strip]!
    const border = problem.borderMin[strip]!
    return {
      ...own,
      stampFromMin: label.stampMin - problem.stampMin[strip]!,
      stampToMin: label.stampMin,
      borderFromMin: label.borderMin - border,
      borderToMin: label.borderMin,
    }
  })
  return {
    doses,
    order,
    times,
    cost: placed.cost,
    slackMin: (label as GrowthLabel | null)?.slackMin ?? Number.POSITIVE_INFINITY,
  }
}

/** Largest slack over the orders in which the stamped part stays one block and grows at either end. */
export function bestGrowth(problem: DoseProblem, doses: readonly number[]): DoseRun | null {
  const placed = runDoses(problem, doses)
  const stops = countStops(problem, doses)
  if (!placed || stops === null) return null
  const placedMin = problem.placedMin[stops]!
  const n = doses.length
  // labels[left] holds the ways to have stamped `length` strips from `left` on.
  let labels = doses.map((_, strip) => [stampNext(problem, placed.times, placedMin, strip, null)])
  for (let length = 2; length <= n; length++)
    labels = Array.from({ length: n - length + 1 }, (_, left) => {
      const right = left + length - 1
      return pruneGrowth([
        ...labels[left + 1]!.map(from => stampNext(problem, placed.times, placedMin, left, from)),
        ...labels[left]!.map(from => stampNext(problem, placed.times, placedMin, right, from)),
      ])
    })
  const best = labels[0]!.reduce((a, b) => (b.slackMin > a.slackMin ? b : a))
  const order: number[] = []
  for (let at: GrowthLabel | null = best; at; at = at.before) order.unshift(at.strip)
  return runInOrder(problem, doses, order)
}
