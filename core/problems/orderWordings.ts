/** The findings of order, days and edits of joints in trade words. */

import type { orderCodes, ProblemValue } from '../../shared/problem'
import { capitalize } from '../units/capitalize'
import type { Measures } from '../units/measures'
import { printDay } from '../units/printDay'
import type { Wording } from './wording'

const told = (date: ProblemValue | undefined): string => printDay(String(date), 'short')

const days = (n: number): string => (n === 1 ? '1 day' : `${n} days`)

export const orderWordings: Record<(typeof orderCodes)[number], Wording> = {
  accessNowhere: () => ({
    message:
      'Nobody gets onto the slab: buildings, walls and areas to keep off close all of its edges, and no way in and out ends at it.',
    hint: 'Add a way in and out at an edge of the slab, or move the area to keep off.',
  }),
  pourUnreachable: ({ values }) => ({
    message: `Pour ${values.number} cannot be reached: none of its edges is open and no pour beside it leads outside.`,
    hint: 'Add a way in and out at its edge, or move the joints so that it meets open ground.',
  }),
  noPourDay: ({ values }) => ({
    message: `From ${told(values.from)} on there are too few days to pour: plant hours, noise hours and days off leave no hour in common.`,
    hint: 'Change the plant hours, the noise hours or the days off.',
  }),
  waysClosed: ({ values }) => ({
    message: `${values.until === values.date ? 'On' : 'From'} ${told(values.date)}${values.until === values.date ? '' : ` to ${told(values.until)}`} no way in and out stays usable: ${values.reason}.`,
    hint: 'Plan a plank over the fresh concrete, pour that day when the doors are not needed, or split the pour in front of one door.',
  }),
  finishLate: ({ values, print }) => ({
    message: `The last pour is open to feet and washed on ${told(values.finish)}, after the finish date ${told(values.finishBy)}${Number(values.weatherDays) > 0 ? ` (${days(Number(values.weatherDays))} kept for weather)` : ''}.`,
    hint: remedy(values, print),
  }),
  orderDiffers: ({ values }) => ({
    message: `The pours keep the accepted order and days: ${values.kept}. The planner would pour ${values.computed}.`,
    ...(Number(values.fewerDays) > 0 ? { hint: `That would save ${days(Number(values.fewerDays))}.` } : {}),
  }),
  orderGap: ({ values }) => ({
    message: `The order of the pours may cost up to ${(100 * Number(values.gap)).toFixed(1)} % more than the best possible: ${values.pours} pours are too many to try every order.`,
  }),
  neighborTooYoung: ({ values }) => ({
    message: `Pour ${values.number} on ${told(values.date)} touches pour ${values.other} of ${told(values.otherDate)}; a neighbor is at least ${days(Number(values.ageDays))} old.`,
    hint: 'Move one of them to another day.',
  }),
  pathThroughFresh: ({ values }) => ({
    message: `Pour ${values.number} on ${told(values.date)} is reached only through fresh concrete.`,
    hint: 'Pour it on an earlier day, or wait until the pours in front of it are hard.',
  }),
  notPourDay: ({ values }) => ({
    message: `Pour ${values.number} is set for ${told(values.date)}, when ${values.reason}.`,
    hint: 'Move it to another day, or change the calendar.',
  }),
  crewOverDay: ({ values }) => ({
    message: `${values.pours} pours are set for ${told(values.date)}; the crew places ${values.most} in a day.`,
    hint: 'Move a pour to another day, or plan another crew.',
  }),
  jointLocked: () => ({
    message: 'The joint is locked.',
    hint: 'Unlock it first.',
  }),
  pourLocked: ({ values }) => ({
    message: `The shape of pour ${values.number} is locked.`,
    hint: 'Unlock its shape first.',
  }),
  pourIsPoured: ({ values }) => ({
    message: `Pour ${values.number} is poured: its shape stays as built.`,
  }),
  splitMisses: ({ values }) => ({
    message: `This line does not divide pour ${values.number} in two.`,
    hint: 'Draw it from edge to edge of the pour.',
  }),
  notNeighbors: ({ values }) => ({
    message: `Pours ${values.number} and ${values.other} share no joint.`,
    hint: 'Choose two pours that touch.',
  }),
  numberTaken: ({ values }) => ({
    message: `Another pour has the number ${values.number}.`,
    hint: 'Choose a number that no other pour of the site has.',
  }),
  jointOffSlab: () => ({
    message: 'There the joint would not lie on the slab.',
    hint: 'Keep it between two edges of the slab.',
  }),
  nothingToPlan: () => ({
    message: 'Nothing is left to plan on this slab: all of it is poured or locked.',
  }),
}

function remedy(values: Readonly<Record<string, ProblemValue>>, print: Measures): string {
  const ways = [
    ...(values.twoADay ? [`two pours a day would finish on ${told(values.twoADay)}`] : []),
    ...(values.secondCrew ? [`another crew would finish on ${told(values.secondCrew)}`] : []),
    ...(values.largerM2 ? [`pours of up to ${print.area(Number(values.largerM2))} would be few enough`] : []),
    ...(values.startBy ? [`starting by ${told(values.startBy)} would meet it as planned`] : []),
  ]
  return ways.length === 0
    ? `Nothing of two pours a day, another crew or larger pours meets it: the earliest finish is ${told(values.earliest)}.`
    : `${capitalize(ways.join('; '))}.`
}
