import { DateTime } from 'luxon'
import type { concreteCodes } from '../../shared/problem'
import { capitalize } from '../units/capitalize'
import { printDay } from '../units/printDay'
import { printNumber } from '../units/printNumber'
import type { Told, Wording } from './wording'

const number = ({ values }: Told, name: string): number => Number(values[name])
const text = ({ values }: Told, name: string): string => String(values[name])

/** `8:00 on Fri Jun 12` by the clock of the site, else `2026-06-12 14:00 UTC`. */
const hour = (told: Told, name = 'startUtc'): string => {
  const utc = text(told, name)
  if (told.zone === undefined) return `${utc.slice(0, 16).replace('T', ' ')} UTC`
  const at = DateTime.fromISO(utc, { zone: told.zone })
  return `${told.print.time(at.toFormat('H:mm'))} on ${printDay(at.toFormat('yyyy-MM-dd'), 'short')}`
}
const temperature = (told: Told, name: string): string => told.print.temperature(number(told, name))
const percent = (told: Told): string => `${printNumber(number(told, 'percent'), 0)} %`
const hours = (told: Told, name = 'hours'): string => {
  const count = number(told, name)
  return `${printNumber(count, 0)} ${count === 1 ? 'hour' : 'hours'}`
}
/** Both units: the printer of a site has no speeds. */
const wind = (told: Told): string => {
  const speedMs = number(told, 'windMs')
  return `${printNumber(speedMs / 0.44704, 0)} mph (${printNumber(speedMs, 1)} m/s)`
}
const rain = (amountMm: number): string => `${printNumber(amountMm / 25.4, 2)} in (${printNumber(amountMm, 1)} mm)`
/** `Pour 2: drying up to …`, or `Drying up to …` where the finding is of no pour. */
const named = ({ values }: Told, words: string): string =>
  values.pour === undefined ? capitalize(words) : `Pour ${values.pour}: ${words}`
const minutes = (told: Told, name: string): string => `${printNumber(number(told, name), 0)} min`

export const concreteWordings: Record<(typeof concreteCodes)[number], Wording> = {
  weatherEmpty: () => ({
    message: 'There is no weather for this day.',
    hint: 'Enter the day in a few numbers, or paste the hourly table.',
  }),
  weatherGap: told => ({
    message: `The weather has a gap of ${hours(told)} from ${hour(told)}.`,
    hint: 'Fill in the missing hours; only one or two in a row are bridged.',
  }),
  weatherHourMissing: told => ({
    message: `${hours(told)} of weather missing from ${hour(told)}: taken from the hours beside ${number(told, 'hours') === 1 ? 'it' : 'them'}.`,
    hint: 'Check the weather table.',
  }),
  weatherHourRepeated: told => ({
    message: `The hour ${hour(told)} is in the weather twice, or is not a whole hour after the one before.`,
    hint: 'Keep one row an hour.',
  }),
  airOutOfRange: told => ({
    message: `Air of ${temperature(told, 'airC')} at ${hour(told)} is not weather to pour in.`,
    hint: 'Check the unit of the temperature.',
  }),
  humidityOutOfRange: told => ({
    message:
      told.values.startUtc === undefined
        ? `A humidity of ${percent(told)} is not possible: it lies from 0 to 100 %.`
        : `A humidity of ${percent(told)} at ${hour(told)} is not possible: it lies from 0 to 100 %.`,
    hint: 'Enter the relative humidity again.',
  }),
  humidityMissing: told => ({
    message: `${hours(told)} of weather have no humidity and no dew point: ${percent(told)} is used.`,
    hint: 'Enter the dew point of the day for a better drying rate.',
  }),
  dewPointOverAir: told => ({
    message: `A dew point of ${temperature(told, 'dewPointC')} does not go with air of ${temperature(told, 'airC')} at ${hour(told)}.`,
    hint: 'The dew point is at or under the air. Check both.',
  }),
  windOutOfRange: told => ({
    message: `A wind of ${wind(told)} at ${hour(told)} is not weather to pour in.`,
    hint: 'Check the unit of the wind; enter the average, not the gust.',
  }),
  windMissing: told => ({
    message: `${hours(told)} of weather have no wind: ${wind(told)} is used.`,
    hint: 'Enter the average wind; wind dries the slab.',
  }),
  cloudOutOfRange: told => ({
    message: `A sky cover of ${percent(told)} at ${hour(told)} is not possible: it lies from 0 to 100 %.`,
    hint: 'Enter the sky cover again.',
  }),
  cloudMissing: told => ({
    message: `${hours(told)} of weather have no sky cover: a sunny sky is used.`,
    hint: 'Sun is the safe side: the slab sets sooner.',
  }),
  rainOutOfRange: told => ({
    message:
      told.values.rainMm === undefined
        ? `A chance of rain of ${percent(told)} at ${hour(told)} is not possible: it lies from 0 to 100 %.`
        : `Rain of ${rain(number(told, 'rainMm'))} in the hour ${hour(told)} is not possible.`,
    hint: 'Check the rain of that hour.',
  }),
  highBelowLow: told => ({
    message: `The high of ${temperature(told, 'highC')} is under the low of ${temperature(told, 'lowC')}.`,
    hint: 'Swap them or enter them again.',
  }),
  dewPointOverLow: told => ({
    message: `The dew point of ${temperature(told, 'dewPointC')} is over the air for ${hours(told)}: those hours are taken as damp air at its dew point.`,
    hint: 'Expect dew or fog on the forms; check the dew point.',
  }),
  noSunrise: () => ({
    message:
      'The sun does not rise and set on this day, so the day has no daily curve: the mean of high and low is used.',
    hint: 'Paste an hourly table instead.',
  }),
  evaporationOutsideChart: told => ({
    message: `Concrete ${temperature(told, 'concreteC')}, air ${temperature(told, 'airC')}, wind ${wind(told)}: outside the chart the drying rate comes from (40–100 °F, up to 25 mph).`,
    hint: 'Take the drying rate as a direction only.',
  }),
  evaporationHigh: told => ({
    message: named(
      told,
      `drying up to ${printNumber(number(told, 'rateLbFt2H'), 2)} lb/ft²/h (${printNumber(number(told, 'rateKgM2H'), 1)} kg/m²/h), give or take 40 %: the surface can crack while still soft.`,
    ),
    hint: 'Damp base and forms, windbreak, sunshade, fog or evaporation retarder, cooler concrete, more hands, or pour earlier.',
  }),
  placedTempMissing: told => ({
    message: named(
      told,
      `no concrete temperature given: ${temperature(told, 'placedC')} is used, a little over the air of ${temperature(told, 'airC')}.`,
    ),
    hint: 'Measure each load; it tells more than any forecast.',
  }),
  placedTempOutOfRange: told => ({
    message: `Concrete at ${temperature(told, 'placedC')} is outside what can be placed.`,
    hint: 'Check the unit and the reading.',
  }),
  placedTooHot: told => ({
    message: `Concrete at ${temperature(told, 'placedC')} is over ${temperature(told, 'mostC')}, the limit at discharge of ACI 301 and ACI 305.1.`,
    hint: 'Ask the producer for chilled water or ice, or pour earlier. The order and the local specification decide.',
  }),
  placedTooCold: told => ({
    message: `Concrete at ${temperature(told, 'placedC')} is under ${temperature(told, 'leastC')}, the least for this thickness in ACI 306R.`,
    hint: 'Ask the producer for heated concrete, or wait for warmer weather.',
  }),
  coldWeather: told => ({
    message: `Air down to ${temperature(told, 'leastC')} at ${hour(told, 'atUtc')}: cold weather by ACI 306R (under ${temperature(told, 'limitC')}).`,
    hint: 'Plan protection. Blankets must not touch or wrinkle on colored concrete; no calcium chloride with color.',
  }),
  freezeAhead: told => ({
    message: `Frost of ${temperature(told, 'leastC')} at ${hour(told, 'atUtc')}, within ${hours(told)} of placing.`,
    hint: 'Fresh concrete must not freeze: protect it or choose another day.',
  }),
  doseOverHour: told => ({
    message: `A retarder dose for ${minutes(told, 'doseMin')} is more than on-site retarder usually buys (up to an hour, common practice).`,
    hint: 'Follow the label and the ready-mix producer; its effect ends suddenly.',
  }),
  setNotReached: told => ({
    message: `The weather ends at ${hour(told, 'endsUtc')}, before this strip is too hard.`,
    hint: 'Add the hours that follow.',
  }),
  crustLikely: told => ({
    message:
      number(told, 'dries') === 1
        ? 'Sun and wind dry the top faster than it bleeds: a crust looks ready while the slab is still soft.'
        : `The top sets about ${minutes(told, 'partMin')} ahead of the middle: a crust looks ready while the slab is still soft.`,
    hint: 'Shade it, keep it damp with evaporation retarder, and test by foot, not by looks.',
  }),
  lastPrintBeforeFirstMat: told => ({
    message: `Last good print after ${minutes(told, 'lastPrintMin')}, first mat after ${minutes(told, 'firstMatMin')}: the last comes before the first.`,
    hint: 'Enter both times again; the usual shares of set are used until then.',
  }),
  logTimesOutOfOrder: told => ({
    message: `${text(told, 'pour')} ${text(told, 'strip')}: the logged times are not in the order placed, ready, too hard.`,
    hint: 'Correct the log; this strip is left out of what the log teaches.',
  }),
  logFarFromPlan: told => ({
    message: `${text(told, 'pour')} ${text(told, 'strip')}: logged ${printNumber(number(told, 'factor'), 2)} times the time the plan expected.`,
    hint: 'Check the time and the load. It is left out of what the log teaches.',
  }),
  iceOverLimit: told => ({
    message: `Ice is ${percent(told)} of the batch water, over the ${printNumber(number(told, 'mostPercent'), 0)} % that can melt while mixing.`,
    hint: 'Use less ice, or chilled water.',
  }),
  coolingOverLimit: told => ({
    message: `Ice would cool the mix by ${printNumber(number(told, 'coolingK') * 1.8, 0)} °F (${printNumber(number(told, 'coolingK'), 0)} °C); about 20 °F (11 °C) is the most it does in practice.`,
    hint: 'Ask the producer what can be reached.',
  }),
  mixMassMissing: told => ({
    message: `The mix has no usable weight for ${text(told, 'part')}.`,
    hint: 'Enter the batch weights from the mix sheet.',
  }),
  rainWatch: told => ({
    message: `Up to ${percent(told)} chance of rain from ${hour(told, 'fromUtc')} while the work can still be marked.`,
    hint: 'Have covers, stakes and weights ready before the first truck.',
  }),
  rainNoGo: told => ({
    message: `Rain is likely while it sets (up to ${percent(told)}, ${rain(number(told, 'rainMm'))}).`,
    hint: `Call it off before the plant’s cancellation limit, or move the pour.`,
  }),
  rainUnknown: told => ({
    message: `The weather tells no chance of rain for ${hours(told)} in which the work lies open to rain.`,
    hint: 'Look at a forecast before calling the truck.',
  }),
  crewHeat: told => ({
    message: `It feels like ${temperature(told, 'feltC')} in the shade at ${hour(told, 'atUtc')}, more in the sun.`,
    hint: 'Cool water at hand (a quart an hour each), shade, and breaks; new hands get used to heat slowly. State rules may ask for more.',
  }),
  crewHeatHigh: told => ({
    message: `It feels like ${temperature(told, 'feltC')} in the shade at ${hour(told, 'atUtc')}, more in the sun: heat illness is a real danger.`,
    hint: 'Pour earlier. A 15-minute paid rest every 2 hours, a quart of water an hour each, shade, and nobody alone. State rules may ask for more.',
  }),
}
