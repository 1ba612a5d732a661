/** What the log of a pour begins with: the plan in words, and the weather, mix and shade it stood on. */
import { DateTime } from 'luxon'
import type { PourBegun } from '../../../shared/document/day'
import type { Site } from '../../../shared/document/site'
import type { PourStart } from '../../document/commands/logTaps'
import type { PourDayPlan } from '../day/pourDay'

const minuteMs = 60_000
/** Shares of the sun are kept to this. */
const sharePart = 1000

/** Null where the site has no weather: then there is no day plan either. */
export function pourStart(site: Site, { plan, input, date }: PourDayPlan): PourStart | null {
  const { conditions } = site
  if (!conditions) return null
  const clock = (ms: number): string => DateTime.fromMillis(ms, { zone: site.place.zone }).toFormat('H:mm')
  const begun: PourBegun = {
    ...{ conditions, mix: site.mix ?? {}, thicknessM: input.thicknessM },
    strips: input.strips.map(({ id, sun }, i) => {
      // The strip is ready when its shadier part is.
      const { fromMs, stepMs, share } = sun[0]!.history
      return {
        name: id,
        doseMin: plan.strips[i]?.doseMin ?? 0,
        sun: {
          startUtc: `${new Date(fromMs).toISOString().slice(0, 19)}Z`,
          stepMin: stepMs / minuteMs,
          share: Array.from(share, own => Math.round(own * sharePart) / sharePart),
        },
      }
    }),
  }
  const planned = plan.strips
    .map(strip => {
      const dose = strip.doseMin === 0 ? 'plain' : `+${strip.doseMin} min`
      return `${strip.id} ${dose}, placed ${clock(strip.placedMs)}, ready ${clock(strip.readyMs)}, too hard ${clock(strip.tooHardMs)}`
    })
    .join('; ')
  return { date, planned, begun }
}
