/** Ready and too hard for every cell of a slab at once: cells of one shade history are worked out together. */
import { type SetInput, setRun } from './setClock'
import { readShade } from './shadeHistory'
import { courseRoom, runSlabInto, whenAged } from './slabHeat'

export interface CellHistories {
  readonly cells: number
  readonly steps: number
  readonly fromMs: number
  readonly stepMs: number
  /** Cell by cell, `steps` entries each: an index into `shareOfClass`. */
  readonly classes: Uint8Array
  /** Share of direct sun of each class, 0…1. */
  readonly shareOfClass: readonly number[]
}

export interface CellTimes {
  /** Group of each cell. */
  readonly groupOf: Uint32Array
  /** One entry a group; NaN when the known hours end before it happens. */
  readonly readyMs: Float64Array
  readonly tooHardMs: Float64Array
  readonly groups: number
}

/** The histories four steps to a word, so that they are compared a word at a time. */
function packedHistories({ cells, steps, classes }: CellHistories): { words: Uint32Array; stride: number } {
  const stride = Math.ceil(steps / 4)
  if (steps % 4 === 0 && classes.byteOffset % 4 === 0)
    return { words: new Uint32Array(classes.buffer, classes.byteOffset, cells * stride), stride }
  const padded = new Uint8Array(cells * stride * 4)
  for (let cell = 0; cell < cells; cell++)
    padded.set(classes.subarray(cell * steps, (cell + 1) * steps), cell * stride * 4)
  return { words: new Uint32Array(padded.buffer), stride }
}

/** Groups cells whose histories agree over a span of steps, widened to whole fours. */
export function groupHistories(
  histories: CellHistories,
  fromStep: number,
  toStep: number,
): { readonly groupOf: Uint32Array; readonly firstCell: readonly number[] } {
  const { cells } = histories
  const { words, stride } = packedHistories(histories)
  const from = Math.floor(fromStep / 4)
  const span = Math.min(stride, Math.ceil(toStep / 4)) - from
  const groupOf = new Uint32Array(cells)
  const firstCell: number[] = []
  const hashOf: number[] = []
  let size = 1024
  let slots = new Int32Array(size).fill(-1)

  const freeSlot = (hash: number): number => {
    let slot = hash & (size - 1)
    while (slots[slot]! >= 0) slot = (slot + 1) & (size - 1)
    return slot
  }

  for (let cell = 0; cell < cells; cell++) {
    const start = cell * stride + from
    // FNV-1a over the words, then mixed so that the low bits depend on all of them.
    let hash = 0x811c9dc5 | 0
    for (let word = start; word < start + span; word++) {
      hash = Math.imul(hash ^ words[word]!, 0x01000193)
      hash ^= hash >>> 15
    }
    hash = Math.imul(hash ^ (hash >>> 13), 0x2c1b3c6d)
    hash ^= hash >>> 16
    let slot = hash & (size - 1)
    let group = -1
    for (; slots[slot]! >= 0; slot = (slot + 1) & (size - 1)) {
      const known = slots[slot]!
      if (hashOf[known] !== hash) continue
      const first = firstCell[known]! * stride + from
      let word = 0
      while (word < span && words[start + word] === words[first + word]) word++
      if (word < span) continue
      group = known
      break
    }
    if (group < 0) {
      group = firstCell.length
      firstCell.push(cell)
      hashOf.push(hash)
      slots[slot] = group
      if (firstCell.length * 2 > size) {
        size *= 2
        slots = new Int32Array(size).fill(-1)
        hashOf.forEach((known, index) => {
          slots[freeSlot(known)] = index
        })
      }
    }
    groupOf[cell] = group
  }
  return { groupOf, firstCell }
}

/**
 * Times of every cell for one placing instant. Only the steps from placing to the longest set this weather allows are
 * compared and run, and each run stops at too hard. Equal to `quickSet` cell by cell.
 */
export function setTimesOfCells(histories: CellHistories, input: Omit<SetInput, 'shade'>): CellTimes {
  const { run, targets, ageHPerDoseMin } = setRun(input)
  const { weather } = run
  const doseAgeH = input.doseMin * ageHPerDoseMin
  const readyAgeH = targets.readyAgeH + doseAgeH
  const tooHardAgeH = targets.tooHardAgeH + doseAgeH
  const room = courseRoom(weather)
  const runs = { ...run, untilAgeH: tooHardAgeH }
  const within = run.placedMs >= weather.fromMs && run.placedMs < weather.fromMs + weather.steps * weather.stepMs
  const whenDone = (shade: ArrayLike<number>): { ready: number; tooHard: number; endMs: number } => {
    if (!within) return { ready: Number.NaN, tooHard: Number.NaN, endMs: run.placedMs }
    const { points } = runSlabInto(room, { ...runs, shade })
    return {
      ready: whenAged(room, points, readyAgeH) ?? Number.NaN,
      tooHard: whenAged(room, points, tooHardAgeH) ?? Number.NaN,
      endMs: room.atMs[points - 1]!,
    }
  }

  // Full shade sets last: no history matters beyond its end.
  const { endMs } = whenDone(new Float64Array(weather.steps))
  const stepAt = (ms: number): number => (ms - histories.fromMs) / histories.stepMs
  const fromStep = Math.min(Math.max(0, Math.floor(stepAt(run.placedMs))), histories.steps - 1)
  const toStep = Math.min(histories.steps, Math.max(fromStep + 1, Math.ceil(stepAt(endMs)) + 1))
  const { groupOf, firstCell } = groupHistories(histories, fromStep, toStep)

  const readyMs = new Float64Array(firstCell.length)
  const tooHardMs = new Float64Array(firstCell.length)
  const shares = new Float64Array(histories.steps)
  const history = { fromMs: histories.fromMs, stepMs: histories.stepMs, share: shares }
  const shade = new Float64Array(weather.steps)
  const firstShaded = Math.max(0, Math.floor((run.placedMs - weather.fromMs) / weather.stepMs))
  const lastShaded = Math.min(weather.steps, Math.ceil((endMs - weather.fromMs) / weather.stepMs))
  firstCell.forEach((cell, group) => {
    for (let step = 0; step < histories.steps; step++)
      shares[step] = histories.shareOfClass[histories.classes[cell * histories.steps + step]!]!
    for (let step = firstShaded; step < lastShaded; step++)
      shade[step] = readShade(history, weather.fromMs + (step + 0.5) * weather.stepMs)
    const done = whenDone(shade)
    readyMs[group] = done.ready
    tooHardMs[group] = done.tooHard
  })
  return { groupOf, readyMs, tooHardMs, groups: firstCell.length }
}
