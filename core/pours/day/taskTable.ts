/** The tasks of a strip in their order, each with who does it, how fast one hand is, and when it may begin. */
import type { Crew } from '../../../shared/document/day'
import type { Finish } from '../../../shared/document/materials'
import { defaults, type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'

export type TaskName =
  | 'place'
  | 'strikeOff'
  | 'bullFloat'
  | 'edge'
  | 'hardenerFirst'
  | 'wetOut'
  | 'float'
  | 'hardenerSecond'
  | 'floatAgain'
  | 'release'
  | 'stamp'
  | 'border'
  | 'touchUp'

/** Hands are told off to four jobs for the day; a hand does one task at a time. */
export type Job = 'placing' | 'color' | 'stamping' | 'border'

export interface TaskRow {
  readonly name: TaskName
  readonly label: string
  readonly job: Job
  /** Rate of one hand, or the wait; the setting carries its source. */
  readonly rate: SettingName
  /** Most hands that find room on one strip. */
  readonly mostHands: number
  readonly opens: 'placed' | 'bleedGone' | 'before' | 'ready'
}

export const taskTable: readonly TaskRow[] = [
  { name: 'place', label: 'place', job: 'placing', rate: 'placeM2H', mostHands: 8, opens: 'placed' },
  { name: 'strikeOff', label: 'strike off', job: 'placing', rate: 'strikeOffM2H', mostHands: 4, opens: 'before' },
  { name: 'bullFloat', label: 'bull-float', job: 'placing', rate: 'bullFloatM2H', mostHands: 2, opens: 'before' },
  { name: 'edge', label: 'edge', job: 'placing', rate: 'edgeMH', mostHands: 4, opens: 'before' },
  {
    name: 'hardenerFirst',
    label: 'hardener, first pass',
    job: 'color',
    rate: 'hardenerFirstM2H',
    mostHands: 4,
    opens: 'bleedGone',
  },
  { name: 'wetOut', label: 'wet out', job: 'color', rate: 'wetOutMin', mostHands: 4, opens: 'before' },
  { name: 'float', label: 'float', job: 'color', rate: 'floatM2H', mostHands: 4, opens: 'before' },
  {
    name: 'hardenerSecond',
    label: 'hardener, second pass',
    job: 'color',
    rate: 'hardenerSecondM2H',
    mostHands: 4,
    opens: 'before',
  },
  { name: 'floatAgain', label: 'float again', job: 'color', rate: 'floatM2H', mostHands: 4, opens: 'before' },
  { name: 'release', label: 'release', job: 'stamping', rate: 'releaseM2H', mostHands: 8, opens: 'ready' },
  { name: 'stamp', label: 'stamp', job: 'stamping', rate: 'stampM2H', mostHands: 8, opens: 'before' },
  { name: 'border', label: 'border', job: 'border', rate: 'borderMH', mostHands: 4, opens: 'ready' },
  { name: 'touchUp', label: 'touch up', job: 'color', rate: 'touchUpM2H', mostHands: 4, opens: 'before' },
]

export const sourceOfTask = (row: TaskRow): string => defaults[row.rate].source

/** What one hand does in an hour, this crew and this finish. */
export interface HandRates {
  readonly placeM2H: number
  readonly strikeOffM2H: number
  readonly strikeOffMostM2H: number
  readonly bullFloatM2H: number
  readonly edgeMH: number
  readonly hardenerFirstM2H: number
  readonly wetOutMin: number
  readonly floatM2H: number
  readonly hardenerSecondM2H: number
  readonly releaseM2H: number
  readonly stampM2H: number
  readonly borderMH: number
  readonly borderArcMH: number
  /** One hand, one miter. */
  readonly miterMin: number
  readonly touchUpM2H: number
  /** Mats in the set over the time one takes: no crew prints faster. */
  readonly matsM2H: number
  readonly frontM: number
  /** False where the color is in the mix: no hardener passes, one float. */
  readonly hardener: boolean
  /** False for plain and broomed work: no release, no mats. */
  readonly stamped: boolean
}

/**
 * Seamless skins print faster than mats set to a line; plain and broomed work only needs its surface closed. Own
 * assumption, tuned with the rest.
 */
const patternShare: Partial<Record<Finish['pattern'], number>> = { seamless: 1.2, plain: 2.5, broom: 2.5 }

export function handRates(
  experience: Crew['experience'],
  pattern: Finish['pattern'],
  hardener: boolean,
  settings?: SettingOverrides,
): HandRates {
  const value = (name: SettingName): number => settingValue(settings, name)
  const share =
    experience === 'new' ? value('newCrewShare') : experience === 'seasoned' ? value('seasonedCrewShare') : 1
  const stamped = pattern !== 'plain' && pattern !== 'broom'
  return {
    placeM2H: share * value('placeM2H'),
    strikeOffM2H: share * value('strikeOffM2H'),
    strikeOffMostM2H: value('strikeOffMostM2H'),
    bullFloatM2H: share * value('bullFloatM2H'),
    edgeMH: share * value('edgeMH'),
    hardenerFirstM2H: share * value('hardenerFirstM2H'),
    wetOutMin: value('wetOutMin'),
    floatM2H: share * value('floatM2H'),
    hardenerSecondM2H: share * value('hardenerSecondM2H'),
    releaseM2H: share * value('releaseM2H'),
    stampM2H: share * value('stampM2H') * (patternShare[pattern] ?? 1),
    borderMH: share * value('borderMH'),
    borderArcMH: share * value('borderMH') * value('borderArcShare'),
    miterMin: value('miterMin') / share,
    touchUpM2H: share * value('touchUpM2H'),
    matsM2H: stamped
      ? (value('stampMats') * value('stampMatM2') * 60) / value('stampCycleMin')
      : Number.POSITIVE_INFINITY,
    frontM: value('stampFrontM'),
    hardener,
    stamped,
  }
}
