/** The sentences of what helps at the slab. */

import { capitalize } from '../../units/capitalize'
import type { Measures } from '../../units/measures'
import { leastHands } from '../day/crewSplit'
import type { SlabFix } from './slabFixes'

export interface FixWords {
  readonly what: string
  /** On the button; null where nothing can be tapped. */
  readonly tap: string | null
}

const handWords = (count: number): string => (count === 1 ? 'one hand' : `${count} hands`)

function slackWords({ slackMin }: SlabFix, lead = ''): string {
  if (slackMin === null) return ''
  const min = Math.round(Math.abs(slackMin))
  const told = slackMin >= 0 ? `${min} min of slack` : `still ${min} min short`
  return lead === '' ? ` ${capitalize(told)} then.` : ` ${lead} ${told}.`
}

/** `isShort` = too few hands to go on: what does not bring them tells its slack as if they came. */
export function tellFix(fix: SlabFix, print: Measures, isShort: boolean): FixWords {
  const lead = isShort ? `With ${leastHands} hands by then,` : ''
  switch (fix.does) {
    case 'hands':
      return {
        what: `Get ${handWords(fix.more)} more, ${fix.hands} at work.${slackWords(fix)}`,
        tap: fix.areMissing ? `${fix.more === 1 ? 'One hand' : `${fix.more} hands`} back` : null,
      }
    case 'stop':
      return {
        what: `A smaller pour: set the header before strip ${fix.stripId} and finish there, ${print.area(fix.areaM2)}. Send the rest of the concrete back or hold it.${slackWords(fix)}`,
        tap: `Stop before strip ${fix.stripId}`,
      }
    case 'later':
      return {
        what: `Call the plant: load ${fix.load} ${fix.minutes} min later.${slackWords(fix, lead)}`,
        tap: `Load ${fix.load} ${fix.minutes} min later`,
      }
    case 'dose':
      return {
        what: `Retarder up to ${fix.doseMin} min in load ${fix.load}: ${fix.packages === 1 ? '1 package' : `${fix.packages} packages`}. The label and the producer rule.${slackWords(fix, lead)}`,
        tap: `${fix.packages === 1 ? '1 package' : `${fix.packages} packages`} in`,
      }
  }
}
