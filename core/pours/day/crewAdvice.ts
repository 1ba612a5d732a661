/** The people of the day and why each is there. */
import { type SettingOverrides, settingValue } from '../../../shared/settings'
import type { CrewSplit } from './crewSplit'

export interface CrewRole {
  readonly role: string
  readonly why: string
}

export interface CrewAdvice {
  /** One row a hand. */
  readonly crew: readonly CrewRole[]
  /** By common practice for this pour. */
  readonly wantedHands: number
  /** What asks for them. */
  readonly why: readonly string[]
}

export interface CrewAdviceInput {
  readonly split: CrewSplit
  readonly hands: number
  readonly areaM2: number
  readonly borderM: number
  readonly hardener: boolean
  readonly mostAirC: number
  readonly settings?: SettingOverrides
}

/**
 * Three place, strike off and stamp; one more throws color hardener above 200 ft², one prints borders alone, one more
 * above 90 °F: common practice, no source; the limits are settings.
 */
export function crewAdvice(input: CrewAdviceInput): CrewAdvice {
  const { split, hands, settings } = input
  const crew: CrewRole[] = []
  const add = (count: number, role: string, why: string): void => {
    for (let i = 0; i < count; i++) crew.push({ role, why })
  }
  add(split.placers, 'place, then stamp', 'pulls and strikes off until the last concrete is down, then sets mats')
  add(
    split.color,
    input.hardener ? 'color hardener' : 'float',
    input.hardener
      ? 'throws and floats in the color while others place; touches up behind the mats'
      : 'floats; touches up',
  )
  add(split.border, 'border', 'prints the border alone, so that the mats need not wait')
  add(hands - split.placers - split.color - split.border, 'spare', 'relieves, fetches, tests by finger, keeps the log')
  const why: string[] = []
  let wantedHands = 3
  if (input.hardener && input.areaM2 > settingValue(settings, 'hardenerHandOverM2')) {
    wantedHands++
    why.push('One to throw color hardener above 200 ft².')
  }
  if (input.borderM > 0) {
    wantedHands++
    why.push('One for the border alone.')
  }
  if (input.mostAirC > settingValue(settings, 'hotExtraHandC')) {
    wantedHands++
    why.push('One more above 90 °F.')
  }
  return { crew, wantedHands, why }
}
