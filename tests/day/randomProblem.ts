import type { DoseProblem } from '../../core/pours/day/dosing'
import { mulberry32 } from '../concrete/dayFixture'

/** A seeded problem of a few strips: windows that grow with dose and stops, gangs that come late now and then. */
export function randomProblem(seed: number): DoseProblem {
  const random = mulberry32(seed)
  const strips = 2 + Math.floor(random() * 4)
  const loads = 1 + Math.floor(random() * 2)
  const doses = 2 + Math.floor(random() * 2)
  const dosesMin = [0, 30, 60].slice(0, doses)
  const loadOf = Array.from({ length: strips }, (_, i) => Math.floor((i * loads) / strips))
  const mostStops = Math.min(6, loads * (doses - 1))
  const hasBorder = random() < 0.5
  const windows = loadOf.map((load, i) => {
    const ready = 90 + i * (4 + 8 * random()) + load * 25 + 20 * random()
    const open = 30 + 50 * random()
    return dosesMin.map(dose =>
      Array.from({ length: mostStops + 1 }, (_, stops) => ({
        colorFromMin: 30 + i * 10 + stops * 5 + dose * 0.3,
        readyMin: ready + dose * (0.8 + 0.3 * random()) + stops * 3,
        tooHardMin: ready + open + dose * (0.8 + 0.3 * random()) + stops * 3,
      })),
    )
  })
  const some = (least: number, most: number): number[] => loadOf.map(() => least + random() * (most - least))
  return {
    ...{ loadOf, dosesMin, windows, mostStops },
    volumeM3: some(0.5, 2),
    placedMin: Array.from({ length: mostStops + 1 }, (_, stops) => 60 + 40 * random() + stops * 5),
    colorMin: some(5, 25),
    stampMin: some(5, 30),
    borderMin: hasBorder ? some(5, 30) : loadOf.map(() => 0),
  }
}

export function* everyDosing(strips: number, doses: number): Generator<number[]> {
  const count = doses ** strips
  for (let code = 0; code < count; code++) {
    let rest = code
    yield Array.from({ length: strips }, () => {
      const dose = rest % doses
      rest = Math.floor(rest / doses)
      return dose
    })
  }
}

/** Orders in which the stamped part grows at either end. */
export function* everyGrowth(strips: number): Generator<number[]> {
  function* grow(order: number[], left: number, right: number): Generator<number[]> {
    if (order.length === strips) yield order
    if (left > 0) yield* grow([...order, left - 1], left - 1, right)
    if (right < strips - 1) yield* grow([...order, right + 1], left, right + 1)
  }
  for (let first = 0; first < strips; first++) yield* grow([first], first, first)
}
