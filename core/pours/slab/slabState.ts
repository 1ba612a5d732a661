/** What the taps of a pour say: loads, strips, how far the concrete has come, what went wrong. */
import type { LogTap } from '../../../shared/document/day'
import type { DayStrip } from '../day/dayProblem'

export interface LoadSeen {
  readonly batchedMs?: number
  readonly onSiteMs?: number
  /** Told to come later than planned; once batched, later than its ride takes. */
  readonly lateMin: number
  /** Retarder in its drum; undefined where nothing was said of it. */
  readonly doseMin?: number
  /** A dose, or that none goes in, was told since the last strip of it was placed. */
  readonly isDoseTold?: boolean
  /** Whole packages put in. */
  readonly packages: number
}

export interface StripSeen {
  readonly placedMs?: number
  readonly readyMs?: number
  readonly stampedMs?: number
  /** Of its load as it was placed; undefined where nothing was said of it. */
  readonly doseMin?: number
  /** Hands that were missing as it was placed; none if left out. */
  readonly handsMissing?: number
}

export interface Front {
  readonly atMs: number
  /** In the placing direction from where the pour begins. */
  readonly comeM: number
  /** Concrete discharged until then, all loads; undefined where it was not told. */
  readonly outM3?: number
}

export interface SlabState {
  readonly loads: readonly LoadSeen[]
  readonly strips: readonly StripSeen[]
  readonly front: Front | null
  readonly handsMissing: number
  /** When rain is expected. */
  readonly rainMs: number | null
  readonly doneMs: number | null
}

export const tapMs = ({ atUtc }: Pick<LogTap, 'atUtc'>): number => Date.parse(atUtc)

/** `2026-07-21T13:05Z`: the minute of an instant. */
export const utcMinute = (ms: number): string => `${new Date(ms).toISOString().slice(0, 16)}Z`

/** Taps on loads or strips that the plan does not have are kept in the log and said nothing of here. */
export function readTaps(taps: readonly LogTap[], strips: readonly DayStrip[], loadCount: number): SlabState {
  const loads: LoadSeen[] = Array.from({ length: loadCount }, () => ({ lateMin: 0, packages: 0 }))
  const seen: StripSeen[] = strips.map(() => ({}))
  let front: Front | null = null
  let handsMissing = 0
  let rainMs: number | null = null
  let doneMs: number | null = null
  const ordered = [...taps].sort((a, b) => tapMs(a) - tapMs(b))
  for (const tap of ordered) {
    const atMs = tapMs(tap)
    const load = (tap.load ?? 0) - 1
    const strip = strips.findIndex(({ id }) => id === tap.strip)
    const was = loads[load]
    if (was) {
      if (tap.what === 'batched') loads[load] = { ...was, batchedMs: atMs, lateMin: 0 }
      else if (tap.what === 'onSite') loads[load] = { ...was, onSiteMs: atMs }
      else if (tap.what === 'late') loads[load] = { ...was, lateMin: was.lateMin + (tap.minutes ?? 0) }
      else if (tap.what === 'dosed')
        loads[load] = {
          ...was,
          doseMin: Math.max(was.doseMin ?? 0, tap.minutes ?? 0),
          isDoseTold: true,
          packages: was.packages + (tap.count ?? 0),
        }
    }
    const own = seen[strip]
    if (own) {
      const drum = loads[strips[strip]!.load]
      if (tap.what === 'placed') {
        seen[strip] = {
          ...{ ...own, placedMs: atMs },
          ...(drum?.doseMin === undefined ? {} : { doseMin: drum.doseMin }),
          ...(handsMissing === 0 ? {} : { handsMissing }),
        }
        if (drum?.isDoseTold) loads[strips[strip]!.load] = { ...drum, isDoseTold: false }
      } else if (tap.what === 'ready') seen[strip] = { ...own, readyMs: atMs }
      else if (tap.what === 'stamped') seen[strip] = { ...own, stampedMs: atMs }
    }
    if (tap.what === 'come' && tap.comeM !== undefined)
      front = { atMs, comeM: tap.comeM, ...(tap.outM3 === undefined ? {} : { outM3: tap.outM3 }) }
    else if (tap.what === 'handShort') handsMissing++
    else if (tap.what === 'handBack') handsMissing = Math.max(0, handsMissing - 1)
    else if (tap.what === 'rain') rainMs = tap.minutes === undefined ? null : atMs + tap.minutes * 60_000
    else if (tap.what === 'done') doneMs = atMs
  }
  return { loads, strips: seen, front, handsMissing, rainMs, doneMs }
}

/** Strips that are down, whether each was tapped or only a later one. */
export const placedCount = ({ strips }: SlabState): number =>
  strips.reduce(
    (most, { placedMs, readyMs, stampedMs }, i) => ((placedMs ?? readyMs ?? stampedMs) === undefined ? most : i + 1),
    0,
  )
