/** How old the mix must be to be ready to stamp, and to be too hard: hours at 70 °F, counted from batching. */
import type { Mix } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { initialSetHours } from './slabModel'

/** What the log has taught about this mix. */
export interface SetLearned {
  /** ln of (true needed age / first guess). */
  readonly lnFactor: number
  /** Spread of ln needed age that is left for the next pour. */
  readonly spreadLn: number
}

export interface SetTargets {
  readonly readyAgeH: number
  readonly tooHardAgeH: number
  readonly spreadLn: number
  /** Where the two ages come from, the weakest first. */
  readonly from: 'default' | 'mix' | 'answers' | 'log'
  readonly findings: readonly Finding[]
}

/** Minutes from the plant of a mix, else the setting. */
export const rideMinutes = (mix: Mix, settings?: SettingOverrides): number =>
  mix.minutesFromPlant ?? settingValue(settings, 'minutesFromPlant')

/**
 * From the crew's two answers ("on a 70 °F morning, how long from truck arrival to the first mat, and to the last good
 * print?") where given: ride + answer. Else shares of initial set (settings `readyShare`, `tooHardShare`; common
 * practice, no source). ASTM C403 puts initial set at 500 psi and final set at 4,000 psi of penetration. What the log
 * has learned multiplies both ages. One answer alone gives the other by the ratio of the shares.
 */
export function setTargets(mix: Mix, settings?: SettingOverrides, learned?: SetLearned): SetTargets {
  const readyShare = settingValue(settings, 'readyShare')
  const tooHardShare = settingValue(settings, 'tooHardShare')
  const rideMin = rideMinutes(mix, settings)
  const laterMin = mix.setsLaterMin ?? 0
  const setH = initialSetHours(mix, settings)
  const { firstMatAt21CMin: firstMat, lastPrintAt21CMin: lastPrint } = mix
  const findings: Finding[] = []
  const disordered = firstMat !== undefined && lastPrint !== undefined && lastPrint <= firstMat
  if (disordered)
    findings.push({
      code: 'lastPrintBeforeFirstMat',
      severity: 'check',
      values: { firstMatMin: firstMat, lastPrintMin: lastPrint },
    })
  const answered = !disordered && (firstMat !== undefined || lastPrint !== undefined)
  let readyAgeH = readyShare * setH
  let tooHardAgeH = tooHardShare * setH
  if (answered) {
    const ratio = tooHardShare / readyShare
    const ready = firstMat === undefined ? (rideMin + lastPrint!) / ratio : rideMin + firstMat
    const tooHard = lastPrint === undefined ? ready * ratio : rideMin + lastPrint
    readyAgeH = (ready + readyShare * laterMin) / 60
    tooHardAgeH = (tooHard + tooHardShare * laterMin) / 60
  }
  const factor = Math.exp(learned?.lnFactor ?? 0)
  const asked = answered ? 'answers' : mix.initialSetAt21CMin === undefined ? 'default' : 'mix'
  return {
    readyAgeH: readyAgeH * factor,
    tooHardAgeH: tooHardAgeH * factor,
    spreadLn: learned?.spreadLn ?? settingValue(settings, 'setSpreadLn'),
    from: learned === undefined ? asked : 'log',
    findings,
  }
}
