/** What the logs of poured pours teach about the mix, for the pours that come after. */
import type { LogEntry } from '../../../shared/document/day'
import type { Site } from '../../../shared/document/site'
import { type Calibration, calibrateSet, type LoggedStrip } from '../../concrete/calibrate'
import { dayConditions } from './dayConditions'
import { stripSeen } from './stripSeen'

export interface LearnedPour {
  readonly logId: string
  readonly pourId: string
  readonly number: string
  readonly date: string
  /** Strips with a logged time ready that could be used. */
  readonly sightings: number
  /** Its own set over the first guess: under 1 sets sooner. */
  readonly factor: number
  readonly leftOut: boolean
}

export interface LearnedSet {
  /** Null where nothing is learned: then the first guess holds. */
  readonly calibration: Calibration | null
  readonly pours: readonly LearnedPour[]
}

/** Share of a strip that is placed when the part is that decides its being ready. */
const readyShareOfStrip = 0.9

/** Strips of one log whose weather, shade and times are known. Empty without what the plan stood on. */
export function loggedStrips(site: Site, entry: LogEntry): readonly LoggedStrip[] {
  const { begun } = entry
  if (!begun) return []
  const day = dayConditions(begun.conditions, entry.date, site.place, site.settings)
  if (!day.ok) return []
  const seen = stripSeen(entry, site.place.zone)
  return begun.strips.flatMap(({ name, sun }): LoggedStrip[] => {
    const own = seen.get(name)
    if (own?.placedMs === undefined || (own.readyMs === undefined && own.tooHardMs === undefined)) return []
    const fromMs = own.placedFromMs ?? own.placedMs
    const set = {
      ...{ weather: day.value.weather, thicknessM: begun.thicknessM, mix: begun.mix },
      shade: { fromMs: Date.parse(sun.startUtc), stepMs: sun.stepMin * 60_000, share: sun.share },
      placedMs: fromMs + readyShareOfStrip * (own.placedMs - fromMs),
      doseMin: own.doseMin,
      ...(own.batchedMs === undefined ? {} : { batchedMs: own.batchedMs }),
      ...(own.placedC === undefined ? {} : { placedC: own.placedC }),
      ...(site.settings === undefined ? {} : { settings: site.settings }),
    }
    return [
      {
        ...{ pour: numberOf(site, entry.pourId), strip: name, set },
        ...(own.readyMs === undefined ? {} : { readyMs: own.readyMs }),
        ...(own.tooHardMs === undefined ? {} : { tooHardMs: own.tooHardMs }),
      },
    ]
  })
}

const numberOf = (site: Site, pourId: string): string =>
  `Pour ${site.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === pourId)?.number ?? pourId}`

/**
 * From the logs of pours dated before `beforeDate`, each pour one voice. The pour under way teaches itself on the day and
 * is none of them.
 */
export function learnedSet(site: Site, beforeDate?: string): LearnedSet {
  const pours: LearnedPour[] = []
  const used: LoggedStrip[] = []
  for (const entry of site.log ?? []) {
    if (beforeDate !== undefined && entry.date >= beforeDate) continue
    const strips = loggedStrips(site, entry)
    if (strips.length === 0) continue
    const own = calibrateSet(strips, site.settings)
    const leftOut = entry.leftOut === true
    pours.push({
      ...{ logId: entry.id, pourId: entry.pourId, number: numberOf(site, entry.pourId).slice(5), date: entry.date },
      ...{ sightings: own.sightings, factor: Math.exp(own.loggedLn), leftOut },
    })
    if (!leftOut) used.push(...strips)
  }
  const calibration = calibrateSet(used, site.settings)
  return { calibration: calibration.pours === 0 ? null : calibration, pours }
}
