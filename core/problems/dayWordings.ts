import type { dayCodes } from '../../shared/problem'
import { printDay } from '../units/printDay'
import { printNumber } from '../units/printNumber'
import type { Told, Wording } from './wording'

const number = ({ values }: Told, name: string): number => Number(values[name])
const text = ({ values }: Told, name: string): string => String(values[name])
const clock = (told: Told, name: string): string => told.print.time(text(told, name))
const day = (told: Told, name: string): string => printDay(text(told, name), 'short')
const minutes = (told: Told, name: string): string => `${printNumber(number(told, name), 0)} min`
const people = (told: Told, name: string): string => {
  const count = number(told, name)
  return `${printNumber(count, 0)} ${count === 1 ? 'hand' : 'hands'}`
}
const pour = (told: Told): string => `Pour ${text(told, 'pour')}`

export const dayWordings: Record<(typeof dayCodes)[number], Wording> = {
  dayNotPlanned: told => ({
    message: `No day plan: ${text(told, 'missing')} not entered.`,
    hint: 'Enter the hands of the crew and the weather of the day.',
  }),
  dayWeatherShifted: told => ({
    message: `The weather is of ${day(told, 'weatherDate')}; ${pour(told).toLowerCase()} is poured on ${day(told, 'date')}. The same hours are used.`,
    hint: 'Look again when the forecast of that day is out.',
  }),
  shadeOfOtherDay: told => {
    const higherDeg = number(told, 'higherDeg')
    return {
      message: `${pour(told)} is poured on ${day(told, 'date')}; its sun and shade are those of ${day(told, 'shadeDate')}, when the sun at noon stands ${printNumber(Math.abs(higherDeg), 0)}° ${higherDeg > 0 ? 'lower' : 'higher'}.`,
      hint: 'Choose the day of the pour for the sun before its plan is used.',
    }
  },
  crewTooSmall: told => ({
    message: `A crew of ${printNumber(number(told, 'hands'), 0)} cannot place, color and stamp: ${people(told, 'leastHands')} at least.`,
    hint: 'Two strike off and stamp, one throws color.',
  }),
  truckEmpty: told => ({
    message: `A truck of ${told.print.volume(number(told, 'loadM3'))} carries nothing.`,
    hint: 'Enter what one truck brings.',
  }),
  doseOnEmptyLoad: told => ({
    message: `Load ${printNumber(number(told, 'load'), 0)} is empty and cannot be dosed for ${minutes(told, 'doseMin')}.`,
    hint: 'Give the dose to a load that has concrete in it.',
  }),
  startInDark: told => ({
    message: `${pour(told)} starts at ${clock(told, 'start')}, before it is light.`,
    hint: 'Set work lights, or start later.',
  }),
  startOutsideHours: told => ({
    message: `${pour(told)} starts at ${clock(told, 'start')}, outside the hours of the plant.`,
    hint: 'Ask the plant for an early truck, or start later.',
  }),
  darkBeforeDone: told => ({
    message: `${pour(told)} is stamped until ${clock(told, 'end')}; it is dark from ${clock(told, 'dark')}.`,
    hint: 'Start earlier, or set work lights.',
  }),
  quietBeforeDone: told => ({
    message: `${pour(told)} is stamped until ${clock(told, 'end')}; noise has to stop at ${clock(told, 'quiet')}.`,
    hint: 'Start earlier, or pour less.',
  }),
  slackNegative: told => ({
    message: `${pour(told)}: strip ${text(told, 'strip')} is too hard ${minutes(told, 'lateMin')} before it is stamped.`,
    hint: 'One more pour, an earlier start, one more hand, or more retarder as the label allows.',
  }),
  slackShort: told => ({
    message: `${pour(told)} has ${minutes(told, 'slackMin')} of slack in strip ${text(told, 'strip')}, less than the ${minutes(told, 'wantedMin')} wanted.`,
    hint: 'An earlier start, one more hand, or a smaller pour gives more.',
  }),
  setUnknown: told => ({
    message: `${pour(told)}: the weather ends before all strips are ready.`,
    hint: 'Add the hours that follow, or start earlier.',
  }),
  overPracticeCap: told => ({
    message: `${pour(told)} is ${told.print.area(number(told, 'areaM2'))}, more than the ${told.print.area(number(told, 'capM2'))} that is the most stamped at one time (common practice).`,
    hint: 'Split it, or be sure of the crew and the day.',
  }),
  overCrewCapacity: told => ({
    message: `${pour(told)} is ${told.print.area(number(told, 'areaM2'))}; this crew at this hour and weather takes about ${told.print.area(number(told, 'capacityM2'))}.`,
    hint: 'Split it, start earlier, or add a hand.',
  }),
  capacityBelowLeast: told => ({
    message: `${people(told, 'hands')} at the usual start take about ${told.print.area(number(told, 'crewM2'))} of this slab in that weather: less than ${told.print.area(number(told, 'leastM2'))} is no pour.`,
    hint: `The slab is split to ${told.print.area(number(told, 'capM2'))} instead. Another hour, another day or more hands are needed.`,
  }),
  outOfReach: told => ({
    message: `${pour(told)}: ${told.print.area(number(told, 'areaM2'))} of strip ${text(told, 'strips')} ${number(told, 'count') === 1 ? 'lies' : 'lie'} farther than ${told.print.length(number(told, 'reachM'))} from a place to stand.`,
    hint: 'Work from a bridge over the fresh concrete, or cut the pour so that each part is reached.',
  }),
  shortLoad: told => ({
    message: `${pour(told)}: a load of ${told.print.volume(number(told, 'volumeM3'))} is a short load.`,
    hint: 'Plants charge for it; see whether another split of the slab fills the trucks.',
  }),
  loadTooOld: told => ({
    message: `${pour(told)}: load ${printNumber(number(told, 'load'), 0)} is ${minutes(told, 'ageMin')} old when empty, over the ${minutes(told, 'limitMin')} of the order.`,
    hint: 'Two smaller loads, a pump or more hands empty it sooner. The order and the producer rule.',
  }),
  unloadTooLong: told => ({
    message: `${pour(told)}: load ${printNumber(number(told, 'load'), 0)} takes ${minutes(told, 'onSiteMin')} to empty; ${minutes(told, 'freeMin')} are free.`,
    hint: 'Two smaller loads, a pump or more hands save waiting charges.',
  }),
  haulTooFar: told => ({
    message: `${pour(told)} lies ${told.print.length(number(told, 'haulM'))} from the truck: no chute reaches it, so it goes by ${text(told, 'method')}.`,
    hint: 'Move the truck closer, or order a pump.',
  }),
  haulBeyondReach: told => ({
    message: `${pour(told)} lies ${told.print.length(number(told, 'haulM'))} from the truck, farther than the ${told.print.length(number(told, 'reachM'))} a ${text(told, 'method')} is good for.`,
    hint: 'Move the truck closer, or order a pump.',
  }),
  stripOverScreed: told => ({
    message: `${pour(told)}: strip ${text(told, 'strip')} is ${told.print.length(number(told, 'widthM'))} wide, more than a screed of ${told.print.length(number(told, 'screedM'))}.`,
    hint: 'Set a rail, or strike off in two passes over wet screeds.',
  }),
  crewShort: told => ({
    message: `${pour(told)} asks for ${people(told, 'wantedHands')} by common practice; the crew has ${printNumber(number(told, 'hands'), 0)}.`,
    hint: text(told, 'why'),
  }),
  retarderOffLabel: told => ({
    message: `${pour(told)}: a dose for ${minutes(told, 'doseMin')} is outside the label of ${text(told, 'name')}, ${minutes(told, 'leastMin')} to ${minutes(told, 'mostMin')}.`,
    hint: 'Pour less at once or earlier, or ask the ready-mix producer. The label and the producer rule.',
  }),
  retarderShort: told => ({
    message: `${pour(told)} takes ${printNumber(number(told, 'wanted'), 0)} packages of ${text(told, 'name')}; ${printNumber(number(told, 'onHand'), 0)} are in stock.`,
    hint: 'Buy more before the day, or enter what is on hand.',
  }),
  forecastBadAnswer: told => ({
    message: `The forecast cannot be used: ${text(told, 'reason')}.`,
    hint: 'Enter the day by hand, or try again later.',
  }),
  weatherRowUnread: told => ({
    message: `Line ${printNumber(number(told, 'line'), 0)} of the weather table cannot be read: “${text(told, 'found')}”.`,
    hint: 'One line an hour, with a time and a temperature.',
  }),
  weatherColumnsUnknown: told => ({
    message: `The weather table has no ${text(told, 'missing')}.`,
    hint: 'Name the columns in the first line: time, temperature, dew point or humidity, wind, sky cover, chance of rain.',
  }),
  weatherFileUnread: told => ({
    message: `The weather file cannot be read: ${text(told, 'reason')}.`,
    hint: 'Choose an hourly weather file (EPW).',
  }),
}
