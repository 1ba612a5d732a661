/** What speaks for and against one way to split beside the others, in trade words. */

import type { Measures } from '../../units/measures'
import { printDay } from '../../units/printDay'
import { printNumber } from '../../units/printNumber'
import type { Alternative, AlternativeFigures } from './alternative'

export interface AlternativeSentence {
  readonly sign: '+' | '−'
  readonly words: string
}

type Counted = 'crewDays' | 'trucks' | 'shortLoads' | 'reentrantLeft' | 'cornersUnder60'

const nouns: Readonly<Record<Counted, readonly [one: string, many: string]>> = {
  crewDays: ['crew-day', 'crew-days'],
  trucks: ['truck', 'trucks'],
  shortLoads: ['short load', 'short loads'],
  reentrantLeft: ['re-entrant corner left inside a pour', 're-entrant corners left inside pours'],
  cornersUnder60: ['corner under 60°', 'corners under 60°'],
}

/** Differences too small to speak of: 1 ft of joint, 5 ft² (m, m²). */
const leastJointM = 0.3048
const leastAreaM2 = 0.4645
/** Half an hour. */
const leastMixedMin = 30

/** Each alternative is held against the one with the fewest pours, that one against the next. Equal figures are left out. */
export function wordAlternative(
  own: AlternativeFigures,
  beside: AlternativeFigures,
  print: Measures,
): readonly AlternativeSentence[] {
  const sentences: AlternativeSentence[] = []
  const say = (difference: number, amount: string, what: string): void => {
    const sign = difference < 0 ? '+' : '−'
    sentences.push({ sign, words: `${amount} ${difference < 0 ? 'less' : 'more'} ${what}` })
  }
  for (const name of Object.keys(nouns) as Counted[]) {
    const difference = (own[name] ?? 0) - (beside[name] ?? 0)
    if (difference === 0) continue
    const count = Math.abs(difference)
    sentences.push({
      sign: difference < 0 ? '+' : '−',
      words: `${count} ${difference < 0 ? 'fewer' : 'more'} ${nouns[name][count === 1 ? 0 : 1]}`,
    })
  }
  const jointM = own.jointM - beside.jointM
  if (Math.abs(jointM) >= leastJointM) say(jointM, print.length(Math.abs(jointM)), 'joint')
  const reachM2 = own.outOfReachM2 - beside.outOfReachM2
  if (Math.abs(reachM2) >= leastAreaM2) say(reachM2, print.area(Math.abs(reachM2)), 'out of reach from the edge')
  const chuteM2 = own.beyondChuteM2 - beside.beyondChuteM2
  if (Math.abs(chuteM2) >= leastAreaM2) say(chuteM2, print.area(Math.abs(chuteM2)), 'in pours beyond the chute')
  const mixedMin = (own.mixedSunMin ?? 0) - (beside.mixedSunMin ?? 0)
  if (Math.abs(mixedMin) >= leastMixedMin)
    say(mixedMin, `${printNumber(Math.abs(mixedMin) / 60, 1)} h`, 'of sun and shade on one pour, all pours added up')
  const largestM2 = own.largestM2 - beside.largestM2
  if (Math.abs(largestM2) >= leastAreaM2)
    sentences.push({
      sign: largestM2 < 0 ? '+' : '−',
      words: `Largest pour ${print.area(Math.abs(largestM2))} ${largestM2 < 0 ? 'smaller' : 'larger'}`,
    })
  if (own.lastPourDate !== null && beside.lastPourDate !== null && own.lastPourDate !== beside.lastPourDate)
    sentences.push(
      own.lastPourDate < beside.lastPourDate
        ? { sign: '+', words: `Last pour sooner, ${printDay(own.lastPourDate, 'short')}` }
        : { sign: '−', words: `Last pour later, ${printDay(own.lastPourDate, 'short')}` },
    )
  return sentences
}

/** The one that `at` is held against; undefined where it stands alone. */
export const heldAgainst = (all: readonly Alternative[], at: number): Alternative | undefined =>
  at === 0 ? all[1] : all[0]
